package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.scannermodel.Circumstances;

/**
 * What a calibration was made with, held against this print.
 *
 * @param was paper that it was made on: its family where both are known, else its name; null where
 *     it is not said
 * @param is the same of this print
 * @param others what else is known to be another, in words: "printer (that one, not this one)"
 */
record CalibrationMatch(@Nullable String was, @Nullable String is, List<String> others) {
    static CalibrationMatch of(Circumstances made, PrintDetails details) {
        boolean family = made.family() != null && details.family() != null;
        List<String> others = new ArrayList<>();
        other("printer", made.printer(), details.printer(), others);
        other("scanner", made.scanner(), details.scanner(), others);
        return new CalibrationMatch(
                family ? made.family() : made.paper(),
                family ? details.family() : details.paper(),
                List.copyOf(others));
    }

    private static void other(
            String what, @Nullable String was, @Nullable String is, List<String> others) {
        if (was != null && is != null && !PrintDetails.same(was, is)) {
            others.add(what + " (" + was + ", not " + is + ")");
        }
    }

    /** Whether paper, printer or scanner are known to be another. */
    boolean foreign() {
        return otherPaper() || !others.isEmpty();
    }

    boolean otherPaper() {
        return was != null && is != null && !PrintDetails.same(was, is);
    }

    /** Whether it is not said on which paper either was made. */
    boolean unsaid() {
        return was == null || is == null;
    }
}
