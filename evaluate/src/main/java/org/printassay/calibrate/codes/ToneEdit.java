package org.printassay.calibrate.codes;

import org.printassay.locate.CodeCensus;
import org.printassay.sample.SheetSamples;

/** Whether the tones of a scan were edited after it was read from the sensor. */
public final class ToneEdit {
    /** Codes missing from an unedited scan are fewer: noise and ramps fill them. */
    private static final double GAPS = 0.05;

    private ToneEdit() {}

    /** Whether a scan has no more than 8 bits, whatever its file claims. */
    static boolean eightBits(SheetSamples samples) {
        return samples.scan().bits() == 8 || disguised(samples);
    }

    /** Whether a scan of 16 bits uses only 8 of them. */
    public static boolean disguised(SheetSamples samples) {
        CodeCensus census = samples.census();
        boolean counted = census.gaps() > 0 || samples.edges().edges() > 0;
        return samples.scan().bits() > 8
                && counted
                && (!census.finerThanEightBits() || census.editedFromEightBits());
    }

    /** Whether a scan of 8 bits was edited in 16. */
    public static boolean afterwards(SheetSamples samples) {
        return samples.scan().bits() > 8 && samples.census().editedFromEightBits();
    }

    /** Whether so many codes are missing over the whole range as no scanner leaves out. */
    public static boolean everywhere(SheetSamples samples) {
        return eightBits(samples) && samples.census().gaps() > GAPS;
    }

    /** The same in a part of the range. */
    public static boolean inAThird(SheetSamples samples) {
        return eightBits(samples) && samples.census().gapsInAThird() > GAPS;
    }

    /** Whether tones were pulled apart in 8 bits. */
    static boolean leftGaps(SheetSamples samples) {
        return everywhere(samples) || inAThird(samples);
    }

    /** Whether tones were changed in 8 bits, or of 8 bits. */
    public static boolean told(SheetSamples samples) {
        return leftGaps(samples) || afterwards(samples);
    }
}
