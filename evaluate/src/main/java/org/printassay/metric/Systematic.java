package org.printassay.metric;

import org.printassay.colour.Lab;
import org.printassay.reading.Trust;

/**
 * Systematic parts of uncertainty by trust, 95 % half-widths. They cannot be seen in the spread of
 * twins, so they are stated: orders of magnitude of the trade (common practice, no source).
 */
public final class Systematic {
    private Systematic() {}

    /**
     * Absolute L*: for a scan, what a gain of 2.5 percent does to paper, or a profile's own error;
     * for a calibrated scan the instrument's part and a lamp that has changed by 1 percent since.
     * What the calibration itself is off by is a part of its own.
     */
    public static double lightness(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> 0.3;
            case CALIBRATED_SCAN -> 0.5;
            case PROFILED_SCAN -> 1.0;
            case PLAIN_SCAN -> 0;
        };
    }

    /**
     * Light that a scan adds everywhere alike, as a share of perfect white: no twins can show it.
     * What a profile or a calibration has not taken off moves dark colours most. Flatbeds add up to
     * 1 percent and more.
     */
    private static double veil(Trust trust) {
        return switch (trust) {
            case INSTRUMENT, PLAIN_SCAN -> 0;
            case CALIBRATED_SCAN -> 0.001;
            case PROFILED_SCAN -> 0.005;
        };
    }

    /**
     * Absolute L* of a neutral of this L*, with what light added everywhere does to it, or what a
     * profile or a calibration took off too much: whichever is more.
     */
    static double lightness(Trust trust, double l) {
        double factor = Lab.luminanceFactor(l);
        double lighter = Lab.lightness(factor + veil(trust)) - l;
        double darker = l - Lab.lightness(Math.max(0, factor - veil(trust)));
        return Math.hypot(lightness(trust), Math.max(lighter, darker));
    }

    /** Absolute a* and b*. */
    static double chroma(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> 0.3;
            case CALIBRATED_SCAN -> 0.4;
            case PROFILED_SCAN -> 1.0;
            case PLAIN_SCAN -> 0;
        };
    }

    /** L* between paper and black of the same print: gains cancel, curvature of the scale stays. */
    static double tone(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> 0.1;
            case CALIBRATED_SCAN -> 0.2;
            case PROFILED_SCAN -> 0.3;
            case PLAIN_SCAN -> 1.0;
        };
    }

    /**
     * L* of a tone curve held against its aim. A profile describes a scanner of its kind by another
     * print and may be off by as much in mid-tones as at paper; without any the scanner's own curve
     * is taken for sRGB's, while a gamma of 1.8 differs from that by up to 8.
     */
    static double curve(Trust trust) {
        return switch (trust) {
            case INSTRUMENT, CALIBRATED_SCAN -> tone(trust);
            case PROFILED_SCAN -> lightness(trust);
            case PLAIN_SCAN -> 6;
        };
    }

    /**
     * a* and b* of greys against the paper of the same print: gains cancel, but inks that look grey
     * to an eye need not to a scanner whose profile was made with others.
     */
    static double greys(Trust trust) {
        return switch (trust) {
            case INSTRUMENT -> 0.1;
            case CALIBRATED_SCAN -> 0.2;
            case PROFILED_SCAN -> 1.25;
            case PLAIN_SCAN -> 1.5;
        };
    }
}
