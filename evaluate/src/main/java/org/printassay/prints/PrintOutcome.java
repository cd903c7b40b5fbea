package org.printassay.prints;

import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What came of one print: a result, or a failure.
 *
 * @param print which
 * @param result null when it failed
 * @param failure null when it did not
 * @param note what should be known besides; may be empty
 */
public record PrintOutcome<R>(
        OnePrint print, @Nullable R result, @Nullable Failure failure, String note) {
    private static final int[] GRAVEST_FIRST = {70, 5, 3, 4, 6, 1, 0};
    private static final int OUR_FAULT = 70;

    /**
     * Why there is no result.
     *
     * @param exitCode as the print alone would have ended with
     * @param text one line
     */
    public record Failure(int exitCode, String text) {}

    static <R> PrintOutcome<R> of(OnePrint print, R result) {
        return new PrintOutcome<>(print, result, null, "");
    }

    static <R> PrintOutcome<R> failed(OnePrint print, int exitCode, String text) {
        return new PrintOutcome<>(print, null, new Failure(exitCode, text), "");
    }

    PrintOutcome<R> noting(String words) {
        return new PrintOutcome<>(print, result, failure, words);
    }

    /** Exit code of this print where it failed, else 0. */
    public int exitCode() {
        return failure == null ? 0 : failure.exitCode();
    }

    /**
     * The exit code of many: the first of 70, 5, 3, 4, 6, 1, 0 that occurred.
     *
     * @param codes of each; others than these count as 70
     */
    public static int exitCode(IntStream codes) {
        int gravest = GRAVEST_FIRST.length - 1;
        for (int code : codes.toArray()) {
            gravest = Math.min(gravest, rank(code));
        }
        return GRAVEST_FIRST[gravest];
    }

    private static int rank(int code) {
        for (int i = 0; i < GRAVEST_FIRST.length; i++) {
            if (GRAVEST_FIRST[i] == code) {
                return i;
            }
        }
        return rank(OUR_FAULT);
    }
}
