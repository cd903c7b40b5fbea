package org.printassay.problem;

import org.jspecify.annotations.Nullable;

/**
 * Something from outside that cannot be used: one line that says what is wrong, where, and what to
 * do. The command line prints {@link #getMessage()} and exits with {@link Kind#exitCode}.
 */
public final class Problem extends Exception {
    private static final long serialVersionUID = 1L;

    /** What sort of problem it is; decides the exit code. */
    public enum Kind {
        /** Wrong use: options that contradict each other or make no sense. */
        USAGE(2),
        /** An input cannot be read or is not valid. */
        INPUT(3),
        /** No chart, or not the expected one, in the scan. */
        CHART(4),
        /** The output cannot be written. */
        OUTPUT(5);

        /** Exit code of the process. */
        public final int exitCode;

        Kind(int exitCode) {
            this.exitCode = exitCode;
        }
    }

    private final Kind kind;
    private final String where;
    private final String what;

    private Problem(Kind kind, String where, String what, @Nullable Throwable cause) {
        super(where.isEmpty() ? what : where + ": " + what, cause);
        this.kind = kind;
        this.where = where;
        this.what = what;
    }

    /**
     * An input that cannot be used.
     *
     * @param where file name, with a line, byte offset or key where known: {@code scan.tif, byte
     *     12}
     * @param what what is wrong, and after a full stop what to do
     */
    public static Problem input(String where, String what) {
        return new Problem(Kind.INPUT, where, what, null);
    }

    /** As {@link #input(String, String)}, keeping the cause for a debugger. */
    public static Problem input(String where, String what, Throwable cause) {
        return new Problem(Kind.INPUT, where, what, cause);
    }

    /** No chart, or not the expected one, was found in a scan. */
    public static Problem chart(String where, String what) {
        return new Problem(Kind.CHART, where, what, null);
    }

    /** An output that cannot be written. */
    public static Problem output(String where, String what) {
        return new Problem(Kind.OUTPUT, where, what, null);
    }

    /** Options that cannot be used together, or values out of range. */
    public static Problem usage(String what) {
        return new Problem(Kind.USAGE, "", what, null);
    }

    /** The same problem, for one who knows better what to call the place. */
    public Problem at(String place) {
        return new Problem(kind, place, what, this);
    }

    /** What sort of problem it is. */
    public Kind kind() {
        return kind;
    }

    /** File name, with a line, byte offset or key where known; empty for wrong use. */
    public String where() {
        return where;
    }

    /** What is wrong, without where. */
    public String what() {
        return what;
    }

    /** The one line: where and what. */
    @Override
    public String getMessage() {
        return where.isEmpty() ? what : where + ": " + what;
    }
}
