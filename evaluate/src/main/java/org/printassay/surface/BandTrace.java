package org.printassay.surface;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Lightness along a tint in bins of a tenth of a millimetre, lines cut off, slow changes taken out;
 * its spectrum against the noise around each frequency.
 */
final class BandTrace {
    static final double BIN_MM = 0.1;

    /** Bands of interest, as the design has them. */
    static final double SHORTEST_MM = 0.5;

    static final double LONGEST_MM = 13;

    /** Fewer periods than this in a tint are a gradient, not bands. */
    static final double FEWEST_PERIODS = 5;

    /** Spectrum interpolated this much by zeros, at least. */
    private static final int ZEROS = 4;

    /** Departures beyond this many robust deviations are lines, and cut off. */
    private static final double CUT = 5;

    /** Bins of the spectrum on either side that the noise is taken from, in units of 1/length. */
    private static final int AROUND = 20;

    /** A Hann window makes so many neighbouring cells of 1/length one. */
    private static final double HANN_CELLS = 1.5;

    private static final FastFourierTransformer FOURIER =
            new FastFourierTransformer(DftNormalization.STANDARD);

    private final TintTrace tint;
    private final double[] deltaL;
    private final double[] power;
    private final double frequencyStep;

    /** Lightness departures of a tint, L*. */
    static BandTrace of(TintTrace tint) {
        double[][] strips = new double[tint.strips()][];
        for (int s = 0; s < strips.length; s++) {
            strips[s] = tint.luminance(s);
        }
        double[] fine = RunningMedian.middle(strips);
        int count = (int) (tint.lengthMm() / BIN_MM);
        double[] sums = new double[count];
        double[] weights = new double[count];
        for (int i = 0; i < fine.length; i++) {
            double at = (i + 0.5) * tint.stepMm() / BIN_MM - 0.5;
            int left = (int) Math.floor(at);
            for (int b = Math.max(0, left); b <= Math.min(count - 1, left + 1); b++) {
                double weight = 1 - Math.abs(at - b);
                sums[b] += weight * fine[i];
                weights[b] += weight;
            }
        }
        double perContrast = (tint.lightness() + 16) / 3;
        double[] deltaL = new double[count];
        for (int b = 0; b < count; b++) {
            deltaL[b] = weights[b] > 0 ? perContrast * (sums[b] / weights[b] - 1) : 0;
        }
        return new BandTrace(tint, cut(flat(deltaL)));
    }

    private BandTrace(TintTrace tint, double[] deltaL) {
        this.tint = tint;
        this.deltaL = deltaL;
        int n = deltaL.length;
        int size = Integer.highestOneBit(Math.max(1, ZEROS * n - 1)) * 2;
        double[] padded = new double[size];
        double gain = 0;
        for (int i = 0; i < n; i++) {
            double hann = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n);
            padded[i] = hann * deltaL[i];
            gain += hann;
        }
        Complex[] spectrum = FOURIER.transform(padded, TransformType.FORWARD);
        this.frequencyStep = 1 / (size * BIN_MM);
        int last = (int) Math.ceil(1 / SHORTEST_MM / frequencyStep) + 2;
        this.power = new double[Math.min(last, size / 2)];
        for (int k = 0; k < power.length; k++) {
            // Amplitude of a sine, squared.
            power[k] = Math.pow(2 * spectrum[k].abs() / gain, 2);
        }
    }

    /** The mean of several traces on the same axis, weighted alike where they overlap. */
    static BandTrace mean(List<BandTrace> traces) {
        TintTrace first = traces.get(0).tint;
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (BandTrace trace : traces) {
            from = Math.min(from, trace.startMm());
            to = Math.max(to, trace.startMm() + BIN_MM * trace.deltaL.length);
        }
        int count = (int) Math.round((to - from) / BIN_MM);
        double[] sums = new double[count];
        int[] known = new int[count];
        for (BandTrace trace : traces) {
            int shift = (int) Math.round((trace.startMm() - from) / BIN_MM);
            for (int i = 0; i < trace.deltaL.length && i + shift < count; i++) {
                sums[i + shift] += trace.deltaL[i];
                known[i + shift]++;
            }
        }
        for (int i = 0; i < count; i++) {
            sums[i] = known[i] > 0 ? sums[i] / known[i] : 0;
        }
        return new BandTrace(first, sums);
    }

    private double startMm() {
        return tint.positionMm(-0.5);
    }

    TintTrace tint() {
        return tint;
    }

    double lengthMm() {
        return deltaL.length * BIN_MM;
    }

    double frequencyStep() {
        return frequencyStep;
    }

    /** Squared amplitude (L*) of sines by frequency, steps of {@link #frequencyStep}. */
    double[] power() {
        return power;
    }

    /** Bins of the spectrum that a single sine fills on either side of its peak. */
    int lobe() {
        return (int) Math.ceil(2 / (lengthMm() * frequencyStep));
    }

    /** Squared amplitude of the noise around a bin, and what it is known from. */
    Noise noise(int bin) {
        int lobe = lobe();
        double cell = lengthMm() * frequencyStep;
        int around = (int) Math.ceil(AROUND / cell);
        int low = Math.max(lobe, bin - around);
        int high = Math.min(power.length - 1, bin + around);
        double[] beside = new double[Math.max(0, high - low + 1)];
        int n = 0;
        for (int k = low; k <= high; k++) {
            if (Math.abs(k - bin) > lobe) {
                beside[n++] = power[k];
            }
        }
        return Noise.of(Arrays.copyOf(beside, n), n * cell / HANN_CELLS);
    }

    /**
     * Noise of a spectrum: powers of normal noise are exponential. The largest fifth, where other
     * bands may be, is only counted (censored maximum likelihood: B. Epstein, M. Sobel, "Life
     * testing", J. Am. Stat. Assoc. 48, 1953; from memory).
     *
     * @param mean power
     * @param cells how many independent powers it is known from
     */
    record Noise(double mean, double cells) {
        private static final double KEPT = 0.8;

        static Noise of(double[] powers, double independent) {
            double[] sorted = powers.clone();
            Arrays.sort(sorted);
            int kept = (int) Math.ceil(KEPT * sorted.length);
            if (kept == 0) {
                return new Noise(Double.NaN, 0);
            }
            double sum = (sorted.length - kept) * sorted[kept - 1];
            for (int i = 0; i < kept; i++) {
                sum += sorted[i];
            }
            return new Noise(sum / kept, KEPT * independent);
        }

        /**
         * The power that noise exceeds with a probability of exp(-rarity): F with 2 and 2 n degrees
         * of freedom, for the mean itself is known from n powers alone.
         */
        double exceeded(double rarity) {
            return mean * cells * Math.expm1(rarity / cells);
        }
    }

    /** Amplitude, L*, of the sine of a period by least squares. */
    double amplitude(double periodMm) {
        double[] fit = fit(periodMm);
        return Math.hypot(fit[0], fit[1]);
    }

    /** Cosine and sine part of a period, in page position, L*. */
    double[] fit(double periodMm) {
        double cc = 0;
        double ss = 0;
        double cs = 0;
        double c = 0;
        double s = 0;
        for (int i = 0; i < deltaL.length; i++) {
            double angle = 2 * Math.PI * (startMm() + (i + 0.5) * BIN_MM) / periodMm;
            double cos = Math.cos(angle);
            double sin = Math.sin(angle);
            cc += cos * cos;
            ss += sin * sin;
            cs += cos * sin;
            c += cos * deltaL[i];
            s += sin * deltaL[i];
        }
        double determinant = cc * ss - cs * cs;
        return new double[] {(c * ss - s * cs) / determinant, (s * cc - c * cs) / determinant};
    }

    /** Takes out a parabola. */
    private static double[] flat(double[] values) {
        int n = values.length;
        double[][] basis = new double[3][n];
        double[] out = values.clone();
        for (int i = 0; i < n; i++) {
            double t = 2 * (i + 0.5) / n - 1;
            basis[0][i] = 1;
            basis[1][i] = t;
            basis[2][i] = t * t - 1 / 3.0;
        }
        for (double[] one : basis) {
            double product = 0;
            double squares = 0;
            for (int i = 0; i < n; i++) {
                product += one[i] * out[i];
                squares += one[i] * one[i];
            }
            for (int i = 0; i < n; i++) {
                out[i] -= product / squares * one[i];
            }
        }
        return out;
    }

    private static double[] cut(double[] values) {
        double most = CUT * RunningMedian.deviation(values);
        double[] out = values.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] = Math.max(-most, Math.min(most, out[i]));
        }
        return out;
    }
}
