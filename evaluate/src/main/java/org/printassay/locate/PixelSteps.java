package org.printassay.locate;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.printassay.robust.Median;

/**
 * How pixels step along rows, column by column. Pixels that were computed between fewer real ones,
 * by a scanner set beyond its optical resolution or by a resize, lie at distances from the real
 * ones that recur in a fixed period, and so does the size of the steps between them (A. C.
 * Gallagher, "Detection of linear and cubic interpolation in JPEG compressed images", Proc.
 * Canadian Conf. on Computer and Robot Vision, 2005; from memory). Blur, by a lens or a filter,
 * makes steps smaller everywhere alike.
 */
public final class PixelSteps {
    /** Where so many pixels to both sides differ by more, 16 bit codes, is an edge of a patch. */
    private static final int EDGE = 2048;

    private static final int AROUND = 6;

    private static final int MOST_COLUMNS = 8192;
    private static final int FEWEST_COLUMNS = 512;

    /** Periods of interpolation are shorter, pixels: longer ones are patches' edges. */
    private static final double LONGEST_PERIOD = 6.25;

    /** Least share of their mean by which steps go up and down; good scans stay below 0.03. */
    private static final double MODULATION = 0.08;

    /** How far a period stands out of all others; edges of patches reach 6, interpolation 18. */
    private static final double PROMINENCE = 12;

    /**
     * Bends (second differences) over steps (first ones): 1.73 where each pixel has its own normal
     * noise, up to 1.8 with codes of 8 bits; smaller where neighbours have it in common. A scan
     * made smaller may have a period too, but not this.
     */
    private static final double OWN_NOISE = 1.71;

    /** Repeated pixels: every second step or so is none at all. */
    private static final double REPEATED = 0.6;

    /** Blocks of lossy coding have this period, and its odd overtones, which no enlarging has. */
    private static final int CODING_BLOCK = 8;

    private final double[] steps;
    private final double[] bends;
    private final int[] counts;

    PixelSteps(int columns) {
        this.steps = new double[columns];
        this.bends = new double[columns];
        this.counts = new int[columns];
    }

    /** Nothing seen. */
    public static PixelSteps none() {
        return new PixelSteps(0);
    }

    /** Adds a row, by its green where there is one. */
    void add(char[] row, int channels) {
        int at = channels == 1 ? 0 : 1;
        int reach = AROUND * channels;
        for (int x = AROUND + 1; x + AROUND < steps.length; x++, at += channels) {
            // The first pixel looked at is AROUND to the left.
            int here = at + reach + channels;
            char pixel = row[here];
            char last = row[here - channels];
            char lastButOne = row[here - 2 * channels];
            boolean clipped = isClipped(pixel) || isClipped(last) || isClipped(lastButOne);
            if (!clipped && Math.abs(row[here + reach] - row[here - reach - channels]) < EDGE) {
                int before = last - lastButOne;
                int step = pixel - last;
                steps[x] += Math.abs(step);
                bends[x] += Math.abs(step - before);
                counts[x]++;
            }
        }
    }

    /** Where light ended the codes, pixels do not step: what is left would be the chart's own. */
    private static boolean isClipped(char code) {
        return code == 0 || code == 0xffff;
    }

    /** The period, in pixels, in which pixels were computed between others; empty when not. */
    public OptionalDouble interpolationPeriod() {
        int columns = Integer.highestOneBit(Math.min(steps.length, MOST_COLUMNS));
        if (columns < FEWEST_COLUMNS) {
            return OptionalDouble.empty();
        }
        double[] ofSteps = spectrum(steps, columns);
        double[] ofBends = spectrum(bends, columns);
        double most = ofSteps[peak(ofSteps)];
        double[] spectrum = most >= ofBends[peak(ofBends)] ? ofSteps : ofBends;
        int at = peak(spectrum);
        boolean repeated = most > REPEATED;
        boolean shared = Arrays.stream(bends).sum() < OWN_NOISE * Arrays.stream(steps).sum();
        boolean stands =
                spectrum[at] >= MODULATION
                        && spectrum[at]
                                >= PROMINENCE
                                        * Median.of(
                                                Arrays.copyOfRange(
                                                        spectrum,
                                                        first(spectrum),
                                                        spectrum.length));
        return stands && (repeated || shared) && !coded(spectrum, spectrum[at])
                ? OptionalDouble.of((double) columns / at)
                : OptionalDouble.empty();
    }

    /** Amplitudes, as shares of the mean, of all periods of the columns' means. */
    private double[] spectrum(double[] sums, int columns) {
        double[] means = new double[columns];
        int from = (sums.length - columns) / 2;
        double all = Arrays.stream(sums).sum() / Math.max(1, Arrays.stream(counts).sum());
        for (int i = 0; i < columns; i++) {
            int n = counts[from + i];
            double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / columns);
            means[i] = n == 0 ? 0 : window * (sums[from + i] / n - all);
        }
        Complex[] transformed =
                new FastFourierTransformer(DftNormalization.STANDARD)
                        .transform(means, TransformType.FORWARD);
        double[] spectrum = new double[columns / 2 + 1];
        for (int k = 0; k < spectrum.length && all > 0; k++) {
            double sides = k == columns / 2 ? 2 : 4;
            spectrum[k] = sides * transformed[k].abs() / columns / all;
        }
        return spectrum;
    }

    private static int first(double[] spectrum) {
        return (int) Math.ceil(2 * (spectrum.length - 1) / LONGEST_PERIOD);
    }

    private static int peak(double[] spectrum) {
        int best = spectrum.length - 1;
        for (int k = first(spectrum); k < spectrum.length; k++) {
            best = spectrum[k] > spectrum[best] ? k : best;
        }
        return best;
    }

    private static boolean coded(double[] spectrum, double most) {
        int block = 2 * (spectrum.length - 1) / CODING_BLOCK;
        return Math.max(spectrum[block], spectrum[3 * block]) > most / 2;
    }
}
