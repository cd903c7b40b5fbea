package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Codes of made scans (simulated): stretched by what drivers do, and as scanners give them. */
class RangeEndsTest {
    private static final int TOP = 65535;
    private static final int PIXELS = 600_000;

    /** Codes from 0 to 1 of patches of many colours on white, with noise; three a pixel. */
    private static double[] sheet(double dark, double light, double noise) {
        Random random = new Random(3);
        double[] codes = new double[3 * PIXELS];
        double[] colour = new double[3];
        for (int i = 0; i < PIXELS; i++) {
            if (i % 2000 == 0) {
                boolean paper = i % 4000 == 0;
                for (int c = 0; c < 3; c++) {
                    double tint = light - 0.01 * c;
                    colour[c] = paper ? tint : dark + (tint - dark) * random.nextDouble();
                }
            }
            for (int c = 0; c < 3; c++) {
                codes[3 * i + c] = colour[c] + noise * random.nextGaussian();
            }
        }
        return codes;
    }

    private static double[] sheet() {
        return sheet(0.15, 0.93, 0.004);
    }

    /** Every channel from its own codes at two shares of its pixels, 0 for the outermost. */
    private static double[] stretched(double[] codes, int step, double dark, double light) {
        double[] stretched = new double[codes.length];
        for (int c = 0; c < 3; c++) {
            double[] sorted = new double[PIXELS / step];
            for (int i = 0; i < sorted.length; i++) {
                sorted[i] = codes[3 * i * step + c];
            }
            Arrays.sort(sorted);
            double low = sorted[(int) (dark * (sorted.length - 1))];
            double high = sorted[(int) ((1 - light) * (sorted.length - 1))];
            for (int i = c; i < codes.length; i += 3) {
                stretched[i] = (codes[i] - low) / (high - low);
            }
        }
        return stretched;
    }

    private static boolean told(double[] codes, int levels) {
        RangeEnds ends = new RangeEnds();
        char[] row = new char[3000];
        for (int from = 0; from < codes.length; from += row.length) {
            for (int i = 0; i < row.length; i++) {
                double code = Math.max(0, Math.min(1, codes[from + i]));
                row[i] = (char) (Math.round(code * levels) * (TOP / levels));
            }
            ends.add(row, row.length);
        }
        return ends.stretched(levels > 255);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0015, 0.005, 0.02})
    void sharesCutOffAreTold(double share) {
        assertTrue(told(stretched(sheet(), 1, share, share), TOP));
        assertTrue(told(stretched(sheet(), 1, share / 2, share), TOP), "another at each end");
        assertTrue(told(stretched(sheet(), 9, share, share), TOP), "by every ninth pixel");
    }

    @Test
    void theOutermostCodesPutAtTheEndsAreTold() {
        assertTrue(told(stretched(sheet(), 1, 0, 0), TOP));
        assertTrue(told(stretched(sheet(), 9, 0, 0), TOP), "by every ninth pixel");
    }

    /** One channel, or one end, is where a colour or an exposure may lie by itself. */
    @Test
    void oneChannelOrOneEndTellsNothing() {
        double[] plain = sheet();
        double[] all = stretched(plain, 1, 0.001, 0.001);
        for (int c = 0; c < 3; c++) {
            double[] one = all.clone();
            for (int i = c; i < one.length; i += 3) {
                one[i] = plain[i];
            }
            assertFalse(told(one, TOP), "channel " + c + " is not stretched");
        }
        assertFalse(told(Arrays.stream(all).map(v -> 0.05 + 0.95 * v).toArray(), TOP));
        assertFalse(told(Arrays.stream(all).map(v -> 0.95 * v).toArray(), TOP));
    }

    @ParameterizedTest
    @ValueSource(ints = {255, 65535})
    void aPlainScanReachesNoEnd(int levels) {
        assertFalse(told(sheet(), levels));
    }

    /** A saturated lid and a dark frame: the same pixels in all channels, and alike shares. */
    @ParameterizedTest
    @ValueSource(ints = {255, 65535})
    void aWhiteLidAndADarkFrameAreTheirOwn(int levels) {
        for (double noise : new double[] {0, 0.002}) {
            Random random = new Random(4);
            double[] codes = sheet();
            int edge = codes.length / 60;
            for (int i = 0; i < edge; i++) {
                codes[i] = 1.01 + noise * random.nextGaussian();
                codes[codes.length - 1 - i] = noise * random.nextGaussian();
            }
            assertFalse(told(codes, levels), "noise " + noise);
        }
    }

    /** A few glints, and holes as dark. */
    @ParameterizedTest
    @ValueSource(ints = {255, 65535})
    void glintsAndHolesAreTheirOwn(int levels) {
        for (int each : new int[] {1, 5, 700}) {
            Random random = new Random(5);
            double[] codes = sheet();
            for (int n = 0; n < 2 * each; n++) {
                int pixel = random.nextInt(PIXELS);
                Arrays.fill(codes, 3 * pixel, 3 * pixel + 3, n % 2 == 0 ? 1.2 : -0.2);
            }
            assertFalse(told(codes, levels), each + " of each");
        }
    }

    /** Colours that the space of the scan does not hold, with a lid that saturates by its noise. */
    @ParameterizedTest
    @ValueSource(ints = {255, 65535})
    void coloursOutOfGamutAreTheirOwn(int levels) {
        Random random = new Random(6);
        double[] codes = sheet();
        int patch = 3 * 2000;
        int[] patches = {7, 1, 3};
        int at = 0;
        for (int c = 0; c < 3; c++) {
            for (int n = 0; n < patches[c] * patch; n += 3) {
                codes[at + n + c] = -0.01;
            }
            at += patches[c] * patch;
        }
        for (int i = codes.length - 9 * patch; i < codes.length; i++) {
            codes[i] = 0.995 - 0.001 * (i % 3) + 0.002 * random.nextGaussian();
        }
        assertFalse(told(codes, levels));
    }

    /** In 8 bits a little noise reaches both ends, if black and lid lie near them. */
    @Test
    void noiseInEightBitsReachesTheEnds() {
        for (double black : new double[] {0.008, 0.011, 0.014}) {
            assertFalse(told(sheet(black, 0.998, 0.004), 255), "black at " + black);
        }
    }

    @Test
    void nothingCountedTellsNothing() {
        assertEquals(false, new RangeEnds().stretched(true));
        assertFalse(CodeCensus.empty().stretched());
    }
}
