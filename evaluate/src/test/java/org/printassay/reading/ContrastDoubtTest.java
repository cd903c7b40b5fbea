package org.printassay.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The factors hold what the named edits do to differences of L*, computed from the published
 * formulas alone: the encoding of sRGB (IEC 61966-2-1, 5.2) and L* (CIE 15, ISO/CIE 11664-4).
 */
class ContrastDoubtTest {
    private static final double STEP = 0.01;

    private double least = Double.POSITIVE_INFINITY;
    private double most;

    private static double encoded(double light) {
        return light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    }

    private static double decoded(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    private static double lightness(double y) {
        return y <= 216.0 / 24389 ? y * 24389 / 27 : 116 * Math.cbrt(y) - 16;
    }

    private static double luminance(double l) {
        return l <= 8 ? l * 27 / 24389 : Math.pow((l + 16) / 116, 3);
    }

    /** How many times larger an edit of light makes differences of L* at a lightness. */
    private void see(DoubleUnaryOperator edit, double l) {
        double high = lightness(edit.applyAsDouble(luminance(l + STEP)));
        double low = lightness(edit.applyAsDouble(luminance(l - STEP)));
        double factor = (high - low) / (2 * STEP);
        least = Math.min(least, factor);
        most = Math.max(most, factor);
    }

    private static DoubleUnaryOperator curve(double exponent) {
        return light -> decoded(Math.pow(encoded(light), exponent));
    }

    /** An S that lowers dark codes and raises light ones; below 0 the other way round. */
    private static DoubleUnaryOperator sShaped(double strength) {
        return light -> {
            double x = encoded(light);
            return decoded(x + strength * (3 * x * x - 2 * x * x * x - x));
        };
    }

    private void seeEdits(double l) {
        see(curve(0.7), l);
        see(curve(1.4), l);
        see(sShaped(-0.5), l);
        see(sShaped(1), l);
    }

    /** Codes or light drawn apart so that black and white come to lie elsewhere. */
    private static DoubleUnaryOperator moved(
            double black, double to, double white, boolean inCodes) {
        if (!inCodes) {
            double b = luminance(to);
            double gain = (1 - b) / (luminance(white) - luminance(black));
            return light -> b + (light - luminance(black)) * gain;
        }
        double b = encoded(luminance(to));
        double from = encoded(luminance(black));
        double gain = (1 - b) / (encoded(luminance(white)) - from);
        return light -> decoded(b + (encoded(light) - from) * gain);
    }

    /** Largest and smallest factors agree with those that the end states, to its rounding. */
    private void held(ContrastDoubt.End end, double slack) {
        assertTrue(most <= end.stretched() && most > end.stretched() - slack, "most " + most);
        double squeezed = 1 / least;
        assertTrue(
                squeezed <= end.squeezed() && squeezed > end.squeezed() - slack, "least " + least);
    }

    @Test
    void curvesBesideBlack() {
        for (double l = 4; l <= 16; l += 0.5) {
            seeEdits(l);
        }
        assertEquals(2.38, most, 0.01);
        assertEquals(0.252, least, 0.001);
        held(ContrastDoubt.EDITED.nearBlack(), 0.2);
    }

    /** Stretched far less than black, but an S makes them flatter still. */
    @Test
    void curvesBelowPaper() {
        for (double l = 88; l <= 97; l += 0.5) {
            seeEdits(l);
        }
        assertEquals(1.41, most, 0.01);
        assertEquals(0.196, least, 0.001);
        held(ContrastDoubt.EDITED.nearPaper(), 0.1);
    }

    private void moveBlack(boolean paper) {
        for (double black = 4; black <= 16; black += 1) {
            for (double to = 1.5; to <= 6; to += 0.5) {
                for (double white : new double[] {96, 100}) {
                    for (boolean inCodes : new boolean[] {true, false}) {
                        DoubleUnaryOperator edit = moved(black, to, white, inCodes);
                        for (double away = 2 * STEP; away <= 1; away += 0.49) {
                            see(edit, paper ? Math.min(white, 96) - 5 * away : black + away);
                        }
                    }
                }
            }
        }
    }

    @Test
    void blackPutAtTheEnd() {
        moveBlack(false);
        held(ContrastDoubt.BLACK_MOVED.nearBlack(), 0.1);
    }

    @Test
    void blackPutAtTheEndBelowPaper() {
        moveBlack(true);
        held(ContrastDoubt.BLACK_MOVED.nearPaper(), 0.05);
    }

    /** A difference read as 1, after an edit that made it 2 times larger or 4 times smaller. */
    @ParameterizedTest
    @CsvSource({"1, 0.5, 4", "-1, -4, -0.5", "0, 0, 0"})
    void boundsAreThoseOfThePrint(double read, double low, double high) {
        ContrastDoubt.End end = new ContrastDoubt.End(2, 4);
        assertEquals(low, end.low(read), 1e-12);
        assertEquals(high, end.high(read), 1e-12);
        assertEquals(read, end.readLow(end.low(read)), 1e-12);
        assertEquals(read, end.readHigh(end.high(read)), 1e-12);
    }
}
