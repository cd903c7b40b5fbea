package org.printassay.calibrate.light;

import java.util.List;
import java.util.stream.IntStream;
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

    /** Chi-square for three more numbers, 0.1 % level: a width, an amount and the choice. */
    private static final double APART_CHI2 = 16.27;

    private static final StrayKind[] BOTH = {StrayKind.RETURNED, StrayKind.GLARE};
    private static final StrayKind[] TWICE = {StrayKind.GLARE, StrayKind.GLARE};
    private static final StrayKind[] NONE = {};

    private final int channels;
    private final @Nullable Blur[] blurs = new Blur[Widths.TRIED.length / Widths.COARSE + 1];

    /** The scan, its neighbourhood freed from uneven and stray light as far as it is known. */
    private ScanLight scan;

    /** Light around each patch by channel and width, for the neighbourhood as it is now. */
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
            StrayKind[] kinds,
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

    /**
     * A scan and the light that was found in it.
     *
     * @param scan with its neighbourhood as the model was fitted to it
     */
    record Fitted(ScanLight scan, Outcome outcome) {}

    static Fitted fit(ScanLight scan) {
        LightFitter fitter = new LightFitter(scan);
        Outcome outcome = fitter.run();
        return new Fitted(fitter.scan, outcome);
    }

    private Outcome run() {
        int comparisons = scan.channels().get(0).data().comparisons();
        Outcome full = null;
        if (comparisons >= ENOUGH_FOR_STRAY) {
            full = withStray(BOTH, LightSurface.QUADRATIC, ROUNDS);
            if (full != null && Significance.cubicIsSure(scan, full)) {
                Outcome cubic = withStray(BOTH, LightSurface.CUBIC, 1);
                full = cubic == null ? full : cubic;
            }
        }
        if (full == null || !Significance.strayIsSure(full)) {
            return withoutStray(comparisons).within(full);
        }
        Outcome apart = apart(full);
        if (apart != null) {
            return apart.within(full);
        }
        StrayKind[] kept = Significance.kept(full);
        int surface = Significance.surfaceIsSure(full) ? full.surfaceTerms() : 0;
        if (kept.length == full.kinds().length && surface == full.surfaceTerms()) {
            return full.within(full);
        }
        Outcome less = withStray(kept, surface, 1);
        return (less == null ? full : less).within(full);
    }

    /** All parts with one width; the map of the neighbourhood follows between rounds. */
    private @Nullable Outcome withStray(StrayKind[] kinds, int surfaceTerms, int rounds) {
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
            scan = scan.freed(outcome);
            around = null;
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
        for (StrayKind[] kinds : List.of(BOTH, TWICE)) {
            WidthSearch search =
                    WidthSearch.separate(
                            setting(kinds, common.surfaceTerms()), start, common.fits(), least);
            if (search == null || search.misfit() > least) {
                continue;
            }
            Outcome outcome = at(search, kinds, common.surfaceTerms());
            if (outcome != null && Significance.noneNegative(outcome)) {
                Outcome even = Significance.surfaceIsSure(outcome) ? null : at(search, kinds, 0);
                best = even == null ? outcome : even;
                least = search.misfit();
            }
        }
        return best;
    }

    /** The model at the widths that a search found. */
    private @Nullable Outcome at(WidthSearch search, StrayKind[] kinds, int surfaceTerms) {
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

    private WidthSearch.Setting setting(StrayKind[] kinds, int surfaceTerms) {
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
            StrayKind[] kinds, double[][][] around, int surfaceTerms) {
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

    private Outcome withoutStray(int comparisons) {
        double[][][] around = new double[channels][0][];
        if (comparisons >= ENOUGH_FOR_SURFACE) {
            TwinFit.Result[] fits = fitAll(NONE, around, LightSurface.QUADRATIC);
            if (fits != null) {
                Outcome square = plain(around, fits);
                TwinFit.Result[] cubic =
                        Significance.cubicIsSure(scan, square)
                                ? fitAll(NONE, around, LightSurface.CUBIC)
                                : null;
                if (cubic != null) {
                    return plain(around, cubic);
                }
                if (Significance.surfaceIsSure(square)) {
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
