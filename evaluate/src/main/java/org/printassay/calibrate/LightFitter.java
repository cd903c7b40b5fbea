package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
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

    /** Chi-square for three more numbers, 0.1 % level: a width, an amount and the choice. */
    private static final double APART_CHI2 = 16.27;

    private static final Kind[] BOTH = {Kind.RETURNED, Kind.GLARE};
    private static final Kind[] TWICE = {Kind.GLARE, Kind.GLARE};
    private static final Kind[] NONE = {};

    private final ScanLight scan;
    private final int channels;
    private final @Nullable Blur[] blurs = new Blur[Widths.TRIED.length / Widths.COARSE + 1];

    /** Light around each patch by channel and width, for the maps as they are now. */
    private double @Nullable [][][] around;

    private int nearest = Widths.TRIED.length / 2;

    private LightFitter(ScanLight scan) {
        this.scan = scan;
        this.channels = scan.channels().size();
    }

    /**
     * What was found.
     *
     * @param kinds parts of the stray light that are in the model
     * @param blurs the width of each
     * @param around for each channel and part, the neighbourhood of each patch
     * @param fits one a channel
     * @param search how the widths were found; null when there is no stray light in the model
     * @param alongLines whether its glare comes from the line of the scan instead of around
     * @param full the model with everything in it; null when the twins cannot carry it
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Outcome(
            Kind[] kinds,
            Blur[] blurs,
            double[][][] around,
            TwinFit.Result[] fits,
            @Nullable WidthSearch search,
            boolean alongLines,
            @Nullable Outcome full) {
        int surfaceTerms() {
            return fits[0].surface().length;
        }

        /** What the error of the width adds to that of an amount, as a factor. */
        double widening(int channel, int part) {
            return search == null
                    ? 1
                    : search.error(fits[channel], channel, part) / fits[channel].error(part);
        }

        Outcome with(TwinFit.Result[] others) {
            return new Outcome(kinds, blurs, around, others, search, alongLines, full);
        }

        private Outcome within(@Nullable Outcome everything) {
            return new Outcome(kinds, blurs, around, fits, search, alongLines, everything);
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
        if (full == null || !significant(full)) {
            return withoutStray(comparisons).within(full);
        }
        Outcome apart = apart(full);
        if (apart != null) {
            return apart.within(full);
        }
        Kind[] kept = kept(full);
        int surface = needsSurface(full) ? full.surfaceTerms() : 0;
        if (kept.length == full.kinds().length && surface == full.surfaceTerms()) {
            return full.within(full);
        }
        Outcome less = withStray(kept, surface, 1);
        return (less == null ? full : less).within(full);
    }

    /** All parts with one width; the map of the neighbourhood follows between rounds. */
    private @Nullable Outcome withStray(Kind[] kinds, int surfaceTerms, int rounds) {
        for (int round = 0; ; round++) {
            WidthSearch search =
                    WidthSearch.common(setting(kinds, surfaceTerms), nearest, round == rounds - 1);
            if (search == null) {
                return null;
            }
            nearest = search.widths()[0].nearest();
            Outcome outcome = at(search, kinds, surfaceTerms);
            if (outcome == null || round == rounds - 1) {
                return outcome;
            }
            correctMaps(outcome);
        }
    }

    /** Two widths where the data clearly tell them apart; null where they do not. */
    private @Nullable Outcome apart(Outcome common) {
        WidthSearch one = common.search();
        if (one == null) {
            return null;
        }
        Outcome best = null;
        double least = one.misfit() - APART_CHI2;
        int[] start = {
            Math.max(0, nearest - 2 * Widths.COARSE),
            Math.min(Widths.TRIED.length - 1, nearest + 2 * Widths.COARSE)
        };
        for (Kind[] kinds : List.of(BOTH, TWICE)) {
            WidthSearch search =
                    WidthSearch.separate(
                            setting(kinds, common.surfaceTerms()), start, common.fits(), least);
            if (search == null || search.misfit() > least) {
                continue;
            }
            Outcome outcome = at(search, kinds, common.surfaceTerms());
            if (outcome != null && positive(outcome)) {
                Outcome even = needsSurface(outcome) ? null : at(search, kinds, 0);
                best = even == null ? outcome : even;
                least = search.misfit();
            }
        }
        return best;
    }

    private void correctMaps(Outcome outcome) {
        for (int c = 0; c < channels; c++) {
            scan.channels().get(c).correct(outcome.fits()[c], outcome.kinds(), outcome.blurs());
        }
        around = null;
    }

    /** The model at the widths that a search found. */
    private @Nullable Outcome at(WidthSearch search, Kind[] kinds, int surfaceTerms) {
        Blur[] widths = new Blur[kinds.length];
        double[][][] around = new double[channels][kinds.length][];
        for (int t = 0; t < kinds.length; t++) {
            boolean same = t > 0 && search.widths()[t] == search.widths()[t - 1];
            widths[t] =
                    same
                            ? widths[t - 1]
                            : new Blur(scan.grid(), search.widths()[t].mm(), scan.anyMap());
            for (int c = 0; c < channels; c++) {
                ChannelLight channel = scan.channels().get(c);
                around[c][t] = channel.part(kinds[t], channel.around(widths[t]));
            }
        }
        TwinFit.Result[] fits = fitAll(kinds, around, surfaceTerms);
        return fits == null ? null : new Outcome(kinds, widths, around, fits, search, false, null);
    }

    private WidthSearch.Setting setting(Kind[] kinds, int surfaceTerms) {
        double[][][] now = around;
        if (now == null) {
            now = aroundAtAllWidths();
            around = now;
        }
        return new WidthSearch.Setting(scan, kinds, surfaceTerms, now);
    }

    private double[][][] aroundAtAllWidths() {
        double[][][] all = new double[channels][Widths.TRIED.length][];
        IntStream.range(0, blurs.length)
                .parallel()
                .forEach(
                        i -> {
                            int w = i * Widths.COARSE;
                            Blur blur = blurs[i];
                            if (blur == null) {
                                blur = new Blur(scan.grid(), Widths.TRIED[w], scan.anyMap());
                                blurs[i] = blur;
                            }
                            for (int c = 0; c < channels; c++) {
                                all[c][w] = scan.channels().get(c).around(blur);
                            }
                        });
        for (double[][] channel : all) {
            Widths.interpolate(channel);
        }
        return all;
    }

    private TwinFit.Result @Nullable [] fitAll(
            Kind[] kinds, double[][][] around, int surfaceTerms) {
        TwinFit.Result[] fits = new TwinFit.Result[channels];
        for (int c = 0; c < channels; c++) {
            TwinFit.Result fit =
                    TwinFit.fit(
                            scan.channels().get(c).data(), kinds, around[c], surfaceTerms, null);
            if (fit == null) {
                return null;
            }
            fits[c] = fit;
        }
        return fits;
    }

    private static boolean positive(Outcome outcome) {
        for (TwinFit.Result fit : outcome.fits()) {
            for (int t = 0; t < fit.amounts().length; t++) {
                if (fit.amounts()[t] < -2 * fit.error(t)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether third-order terms explain more, in any channel, than chance would. */
    private boolean prefersCubic(Outcome square) {
        for (int c = 0; c < channels; c++) {
            TwinData data = scan.channels().get(c).data();
            TwinFit.Result like = square.fits()[c];
            double[][] around = square.around()[c];
            TwinFit.Result two = TwinFit.fit(data, square.kinds(), around, Surface.QUADRATIC, like);
            TwinFit.Result three = TwinFit.fit(data, square.kinds(), around, Surface.CUBIC, like);
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
            TwinFit.Result fit = outcome.fits()[c];
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
            TwinFit.Result[] fits = fitAll(NONE, around, Surface.QUADRATIC);
            if (fits != null) {
                Outcome square = plain(around, fits);
                TwinFit.Result[] cubic =
                        prefersCubic(square) ? fitAll(NONE, around, Surface.CUBIC) : null;
                if (cubic != null) {
                    return plain(around, cubic);
                }
                if (needsSurface(square)) {
                    return square;
                }
            }
        }
        TwinFit.Result[] even = fitAll(NONE, around, 0);
        if (even == null) {
            throw new IllegalStateException("a fit of nothing cannot fail");
        }
        return plain(around, even);
    }

    private static Outcome plain(double[][][] around, TwinFit.Result[] fits) {
        return new Outcome(NONE, new Blur[0], around, fits, null, false, null);
    }
}
