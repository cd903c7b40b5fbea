package org.printassay.calibrate;

import java.util.List;
import org.printassay.locate.CodeCensus;
import org.printassay.reading.ContrastDoubt;
import org.printassay.sample.SheetSamples;

/** Whether the tones of a scan were edited after it was read from the sensor. */
final class ToneEdit {
    /** Codes missing from an unedited scan are fewer: noise and ramps fill them. */
    private static final double GAPS = 0.05;

    private ToneEdit() {}

    /** Whether a scan has no more than 8 bits, whatever its file claims. */
    static boolean eightBits(SheetSamples samples) {
        return samples.scan().bits() == 8 || disguised(samples);
    }

    /** Whether a scan of 16 bits uses only 8 of them. */
    static boolean disguised(SheetSamples samples) {
        CodeCensus census = samples.census();
        boolean counted = census.gaps() > 0 || samples.edges().edges() > 0;
        return samples.scan().bits() > 8
                && counted
                && (!census.finerThanEightBits() || census.editedFromEightBits());
    }

    /** Whether a scan of 8 bits was edited in 16. */
    static boolean afterwards(SheetSamples samples) {
        return samples.scan().bits() > 8 && samples.census().editedFromEightBits();
    }

    /** Whether so many codes are missing over the whole range as no scanner leaves out. */
    static boolean everywhere(SheetSamples samples) {
        return eightBits(samples) && samples.census().gaps() > GAPS;
    }

    /** The same in a part of the range. */
    static boolean inAThird(SheetSamples samples) {
        return eightBits(samples) && samples.census().gapsInAThird() > GAPS;
    }

    /** Whether tones were pulled apart in 8 bits. */
    static boolean leftGaps(SheetSamples samples) {
        return everywhere(samples) || inAThird(samples);
    }

    /** Whether tones were changed in 8 bits, or of 8 bits. */
    private static boolean told(SheetSamples samples) {
        return leftGaps(samples) || afterwards(samples);
    }

    /**
     * What that, or automatic contrast, leaves unknown of lightness differences; of a print whose
     * scans are averaged, by any of them.
     */
    static ContrastDoubt doubt(List<PartResult> results) {
        if (results.stream().anyMatch(result -> told(result.part().samples()))) {
            return ContrastDoubt.EDITED;
        }
        return blackMoved(results) ? ContrastDoubt.BLACK_MOVED : ContrastDoubt.NONE;
    }

    /** Whether black was put at the end of the range, or beyond it, in any of the scans. */
    static boolean blackMoved(List<PartResult> results) {
        return results.stream()
                .anyMatch(result -> result.blackCut() || RangeHealth.blackMoved(result));
    }
}
