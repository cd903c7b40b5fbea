package org.printassay.sample;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import org.printassay.colour.Lab;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.Patch;

/**
 * The robust mean of a patch's pixels in linear light. Pixels far from the median in any channel
 * (dust, hairs, scratches) are left out, the same ones in all channels; the mean of the rest is
 * unbiased where noise and grain are symmetric. Its standard error comes from the means of blocks
 * of about a millimetre, because neighbouring pixels are correlated.
 */
final class RobustPatch {
    /** Robust standard deviations beyond which a pixel is left out. */
    private static final double CUT = 3.5;

    /** A median absolute deviation times this estimates a normal standard deviation. */
    private static final double MAD_TO_SIGMA = 1.4826;

    /**
     * Share of left-out pixels from which a patch counts as dusty; clean noise leaves out 0.05 %.
     */
    private static final double DUSTY = 0.06;

    private static final double CLIPPED = 0.02;

    /** Blocks of a flat patch span less than this, L*. */
    private static final double UNEVEN_L = 3.5;

    /** Pixels that medians are taken from. */
    private static final int MEDIAN_PIXELS = 4000;

    private RobustPatch() {}

    static PatchSample of(
            Patch patch,
            char[] codes,
            int[] places,
            int count,
            int channels,
            int codeStep,
            float[][] curves,
            boolean nearEdge) {
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        if (nearEdge) {
            flags.add(ReadingFlag.EDGE);
        }
        float[][] light = new float[channels][count];
        int clipped = 0;
        for (int i = 0; i < count; i++) {
            boolean end = false;
            for (int c = 0; c < channels; c++) {
                char code = codes[i * channels + c];
                light[c][i] = curves[c][code];
                end |= code == 0 || code == 0xffff;
            }
            clipped += end ? 1 : 0;
        }
        if (clipped > CLIPPED * count) {
            flags.add(ReadingFlag.CLIPPED);
        }
        boolean[] out = outliers(light, count, curves, codeStep);
        int left = 0;
        for (int i = 0; i < count; i++) {
            left += out[i] ? 0 : 1;
        }
        if (count - left > DUSTY * count) {
            flags.add(ReadingFlag.DUSTY);
        }
        double[] mean = new double[3];
        double[] error = new double[3];
        Blocks blocks = new Blocks(places, out, count);
        for (int c = 0; c < 3; c++) {
            float[] plane = light[channels == 1 ? 0 : c];
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += out[i] ? 0 : plane[i];
            }
            mean[c] = left == 0 ? Double.NaN : sum / left;
            error[c] = blocks.standardError(plane);
            if (blocks.spanL(plane) > UNEVEN_L) {
                flags.add(ReadingFlag.UNEVEN);
            }
        }
        return new PatchSample(
                patch,
                new LinearRgb(mean[0], mean[1], mean[2]),
                new LinearRgb(error[0], error[1], error[2]),
                blocks.full(),
                flags);
    }

    private static boolean[] outliers(float[][] light, int count, float[][] curves, int codeStep) {
        boolean[] out = new boolean[count];
        int step = Math.max(1, count / MEDIAN_PIXELS);
        for (int c = 0; c < light.length; c++) {
            float[] plane = light[c];
            float[] some = new float[(count + step - 1) / step];
            for (int i = 0; i < some.length; i++) {
                some[i] = plane[i * step];
            }
            float median = median(some);
            for (int i = 0; i < some.length; i++) {
                some[i] = Math.abs(some[i] - median);
            }
            // Where one code holds most pixels, most deviations are nil: a step is the least.
            double sigma = Math.max(MAD_TO_SIGMA * median(some), step(curves[c], median, codeStep));
            double limit = CUT * sigma;
            for (int i = 0; i < count; i++) {
                out[i] |= Math.abs(plane[i] - median) > limit;
            }
        }
        return out;
    }

    /** Light between neighbouring codes around a value. */
    private static double step(float[] curve, float light, int codeStep) {
        int at = Arrays.binarySearch(curve, light);
        int code = Math.min(at < 0 ? -at - 1 : at, curve.length - 1 - codeStep);
        return Math.max(curve[code + codeStep] - curve[code], 1e-6 + 5e-4 * light);
    }

    private static float median(float[] values) {
        if (values.length == 0) {
            return 0;
        }
        Arrays.sort(values);
        return values[values.length / 2];
    }

    /** Pixels by blocks of about a millimetre; blocks less than half full do not count. */
    private static final class Blocks {
        private final int[] block;
        private final int[] sizes;
        private final int count;
        private final int full;
        private final int least;

        Blocks(int[] places, boolean[] out, int count) {
            this.count = count;
            this.block = new int[count];
            int most = 0;
            for (int i = 0; i < count; i++) {
                most = Math.max(most, places[i]);
            }
            this.sizes = new int[most + 1];
            int[] whole = new int[most + 1];
            for (int i = 0; i < count; i++) {
                whole[places[i]]++;
                block[i] = out[i] ? -1 : places[i];
                if (!out[i]) {
                    sizes[places[i]]++;
                }
            }
            int largest = Arrays.stream(whole).max().orElse(0);
            this.least = Math.max(1, largest / 2);
            int n = 0;
            for (int size : sizes) {
                n += size >= least ? 1 : 0;
            }
            this.full = n;
        }

        int full() {
            return full;
        }

        private double[] means(float[] plane) {
            double[] sums = new double[sizes.length];
            for (int i = 0; i < count; i++) {
                if (block[i] >= 0) {
                    sums[block[i]] += plane[i];
                }
            }
            double[] means = new double[full];
            int n = 0;
            for (int b = 0; b < sums.length; b++) {
                if (sizes[b] >= least) {
                    means[n++] = sums[b] / sizes[b];
                }
            }
            return means;
        }

        /** Standard error of the patch mean; NaN when there are fewer than two blocks. */
        double standardError(float[] plane) {
            double[] means = means(plane);
            if (means.length < 2) {
                return Double.NaN;
            }
            double mean = Arrays.stream(means).average().orElse(0);
            double squares = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
            return Math.sqrt(squares / (means.length - 1) / means.length);
        }

        /** How far block means lie apart, in L* of the channel's light. */
        double spanL(float[] plane) {
            double[] means = means(plane);
            if (means.length < 2) {
                return 0;
            }
            double low = Arrays.stream(means).min().orElse(0);
            double high = Arrays.stream(means).max().orElse(0);
            return Lab.lightness(high) - Lab.lightness(low);
        }
    }
}
