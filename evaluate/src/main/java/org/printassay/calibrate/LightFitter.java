package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * Estimates the light of one scan: illumination surface, returned light, glare and their width
 * together, by all twins of all channels. Rounds alternate between the fit and the map of the
 * neighbourhood, which is itself seen through stray light. What is not significant is left out.
 */
final class LightFitter {
    private static final int ROUNDS = 3;

    /** Fewer comparisons between twins than this tell nothing about stray light. */
    private static final int ENOUGH_FOR_STRAY = 30;

    private static final int ENOUGH_FOR_SURFACE = 12;

    /** Standard errors from which some stray light, in any channel, is taken for real. */
    private static final double SIGNIFICANT = 3.3;

    /** Standard errors from which one of its two parts is kept. */
    private static final double KEPT = 2.5;

    /** Chi-square for 5 and 4 degrees of freedom, 0.1 % level. */
    private static final double SURFACE_CHI2 = 20.52;

    private static final double CUBIC_CHI2 = 18.47;

    private static final Kind[] BOTH = {Kind.RETURNED, Kind.GLARE};
    private static final Kind[] NONE = {};

    private final ScanLight scan;
    private final int channels;
    private final Blur[] blurs = new Blur[Widths.TRIED.length];
    private int nearest = Widths.TRIED.length / 2;

    private LightFitter(ScanLight scan) {
        this.scan = scan;
        this.channels = scan.channels().size();
    }

    /**
     * What was found.
     *
     * @param kinds parts of the stray light that are in the model
     * @param blur the width they use; null when there are none
     * @param around for each channel and part, the neighbourhood of each patch
     * @param fits one a channel
     * @param search null when there is no stray light in the model
     * @param full the model with everything in it; null when the twins cannot carry it
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Outcome(
            Kind[] kinds,
            @Nullable Blur blur,
            double[][][] around,
            List<TwinFit.Result> fits,
            @Nullable WidthSearch search,
            @Nullable Outcome full) {
        int surfaceTerms() {
            return fits.get(0).surface().length;
        }

        private Outcome within(@Nullable Outcome everything) {
            return new Outcome(kinds, blur, around, fits, search, everything);
        }
    }

    static Outcome fit(ScanLight scan) {
        return new LightFitter(scan).run();
    }

    private Outcome run() {
        int comparisons = scan.channels().get(0).data().comparisons();
        Outcome full = null;
        if (comparisons >= ENOUGH_FOR_STRAY) {
            full = withStray(BOTH, Surface.QUADRATIC, ROUNDS);
            if (full != null && prefersCubic(full)) {
                Outcome cubic = withStray(BOTH, Surface.CUBIC, 1);
                full = cubic == null ? full : cubic;
            }
        }
        if (full != null && significant(full)) {
            Kind[] kept = kept(full);
            int surface = needsSurface(full) ? full.surfaceTerms() : 0;
            if (kept.length == full.kinds().length && surface == full.surfaceTerms()) {
                return full.within(full);
            }
            Outcome less = withStray(kept, surface, 1);
            return (less == null ? full : less).within(full);
        }
        return withoutStray(comparisons).within(full);
    }

    private @Nullable Outcome withStray(Kind[] kinds, int surfaceTerms, int rounds) {
        for (int round = 0; ; round++) {
            WidthSearch search =
                    WidthSearch.of(scan, kinds, surfaceTerms, aroundAtAllWidths(), nearest);
            if (search == null) {
                return null;
            }
            nearest = search.widths().nearest();
            Blur blur = new Blur(scan.grid(), search.widths().mm(), scan.anyMap());
            double[][][] around = new double[channels][][];
            for (int c = 0; c < channels; c++) {
                ChannelLight channel = scan.channels().get(c);
                around[c] = WidthSearch.neighbourhood(channel, kinds, channel.around(blur));
            }
            List<TwinFit.Result> fits = fitAll(kinds, around, surfaceTerms);
            if (fits == null) {
                return null;
            }
            if (round == rounds - 1) {
                return new Outcome(kinds, blur, around, fits, search, null);
            }
            for (int c = 0; c < channels; c++) {
                scan.channels().get(c).correct(fits.get(c), kinds, blur);
            }
        }
    }

    private double[][][] aroundAtAllWidths() {
        double[][][] around = new double[channels][blurs.length][];
        for (int w = 0; w < blurs.length; w++) {
            if (blurs[w] == null) {
                blurs[w] = new Blur(scan.grid(), Widths.TRIED[w], scan.anyMap());
            }
            for (int c = 0; c < channels; c++) {
                around[c][w] = scan.channels().get(c).around(blurs[w]);
            }
        }
        return around;
    }

    private @Nullable List<TwinFit.Result> fitAll(
            Kind[] kinds, double[][][] around, int surfaceTerms) {
        List<TwinFit.Result> fits = new ArrayList<>();
        for (int c = 0; c < channels; c++) {
            TwinFit.Result fit =
                    TwinFit.fit(
                            scan.channels().get(c).data(), kinds, around[c], surfaceTerms, null);
            if (fit == null) {
                return null;
            }
            fits.add(fit);
        }
        return fits;
    }

    /** Whether third-order terms explain more, in any channel, than chance would. */
    private boolean prefersCubic(Outcome square) {
        for (int c = 0; c < channels; c++) {
            TwinData data = scan.channels().get(c).data();
            TwinScales scales = square.fits().get(c).scales();
            double[][] around = square.around()[c];
            TwinFit.Result two =
                    TwinFit.fit(data, square.kinds(), around, Surface.QUADRATIC, scales);
            TwinFit.Result three = TwinFit.fit(data, square.kinds(), around, Surface.CUBIC, scales);
            if (two != null && three != null && two.misfit() - three.misfit() > CUBIC_CHI2) {
                return true;
            }
        }
        return false;
    }

    private boolean significant(Outcome outcome) {
        for (int t = 0; t < outcome.kinds().length; t++) {
            if (largestRatio(outcome, t) > SIGNIFICANT) {
                return true;
            }
        }
        return false;
    }

    private Kind[] kept(Outcome outcome) {
        List<Kind> kept = new ArrayList<>();
        for (int t = 0; t < outcome.kinds().length; t++) {
            if (largestRatio(outcome, t) > KEPT) {
                kept.add(outcome.kinds()[t]);
            }
        }
        return kept.toArray(NONE);
    }

    /** Largest amount of a part over its standard error, of all channels. */
    private double largestRatio(Outcome outcome, int part) {
        WidthSearch search = outcome.search();
        double largest = 0;
        for (int c = 0; c < channels && search != null; c++) {
            TwinFit.Result fit = outcome.fits().get(c);
            largest = Math.max(largest, fit.amounts()[part] / search.error(fit, c, part));
        }
        return largest;
    }

    /** Whether any channel's surface differs from none (Wald's test). */
    private static boolean needsSurface(Outcome outcome) {
        int k = outcome.surfaceTerms();
        for (TwinFit.Result fit : outcome.fits()) {
            double[][] block = new double[k][];
            for (int i = 0; i < k; i++) {
                block[i] = Arrays.copyOf(fit.covariance()[i], k);
            }
            if (k > 0) {
                ArrayRealVector surface = new ArrayRealVector(fit.surface());
                double chi2 =
                        surface.dotProduct(
                                new LUDecomposition(new Array2DRowRealMatrix(block, false))
                                        .getSolver()
                                        .solve(surface));
                if (chi2 > SURFACE_CHI2 * k / Surface.QUADRATIC) {
                    return true;
                }
            }
        }
        return false;
    }

    private Outcome withoutStray(int comparisons) {
        double[][][] around = new double[channels][0][];
        if (comparisons >= ENOUGH_FOR_SURFACE) {
            List<TwinFit.Result> fits = fitAll(NONE, around, Surface.QUADRATIC);
            if (fits != null) {
                Outcome square = new Outcome(NONE, null, around, fits, null, null);
                List<TwinFit.Result> cubic =
                        prefersCubic(square) ? fitAll(NONE, around, Surface.CUBIC) : null;
                if (cubic != null) {
                    return new Outcome(NONE, null, around, cubic, null, null);
                }
                if (needsSurface(square)) {
                    return square;
                }
            }
        }
        List<TwinFit.Result> even = fitAll(NONE, around, 0);
        if (even == null) {
            throw new IllegalStateException("a fit of nothing cannot fail");
        }
        return new Outcome(NONE, null, around, even, null, null);
    }
}
