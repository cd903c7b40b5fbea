package org.printassay.calibrate.part;

import java.util.List;
import org.printassay.calibrate.codes.ToneEdit;
import org.printassay.reading.ContrastDoubt;

/** What edits of their tones leave unknown of scans. */
public final class ToneDoubt {
    private ToneDoubt() {}

    /**
     * What tones changed in 8 bits, or automatic contrast, leave unknown of lightness differences;
     * of a print whose scans are averaged, by any of them.
     */
    public static ContrastDoubt of(List<PartResult> results) {
        if (results.stream().anyMatch(result -> ToneEdit.told(result.part().samples()))) {
            return ContrastDoubt.EDITED;
        }
        return blackMoved(results) ? ContrastDoubt.BLACK_MOVED : ContrastDoubt.NONE;
    }

    /** Whether black was put at the end of the range, or beyond it, in any of the scans. */
    public static boolean blackMoved(List<PartResult> results) {
        return results.stream()
                .anyMatch(result -> result.blackCut() || RangeHealth.blackMoved(result));
    }
}
