package org.printassay.calibrate.light;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The widths of the stray light: every tried width on every channel.
 *
 * @param widths for each part, its best width and how sure; parts that share one width have the
 *     same object
 * @param amounts for each width that was varied, channel and part: the amount at each tried width
 * @param misfit robust sum of squares at the best tried widths, mean of the channels: they share
 *     the printer's spread, so that three are not three times the evidence
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record WidthSearch(Widths[] widths, double[][][][] amounts, double misfit) {

    /** What is searched: the scan, the parts, the terms of the surface, light around at widths. */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Setting(ScanLight scan, StrayKind[] kinds, int surfaceTerms, double[][][] around) {
        int channels() {
            return scan.channels().size();
        }

        /** Fits a channel with each part at one of the tried widths. */
        TwinFit.@Nullable Result fit(int channel, int[] at, TwinFit.@Nullable Result like) {
            double[][] parts = new double[kinds.length][];
            for (int t = 0; t < parts.length; t++) {
                parts[t] = scan.channels().get(channel).part(kinds[t], around[channel][at[t]]);
            }
            return TwinFit.fit(
                    scan.channels().get(channel).data(), kinds, parts, surfaceTerms, like);
        }

        TwinFit.Result @Nullable [] fits(int[] at) {
            TwinFit.Result[] fits = new TwinFit.Result[channels()];
            for (int c = 0; c < fits.length; c++) {
                TwinFit.Result fit = fit(c, at, null);
                if (fit == null) {
                    return null;
                }
                fits[c] = fit;
            }
            return fits;
        }
    }

    /**
     * One width for all parts.
     *
     * @param start index of the width that the spread of twins is estimated with
     * @param fine whether to look between the widths that are blurred for
     * @return null when the twins do not determine the numbers asked for
     */
    static @Nullable WidthSearch common(Setting setting, int start, boolean fine) {
        int[] at = new int[setting.kinds().length];
        Arrays.fill(at, start);
        TwinFit.Result[] first = setting.fits(at);
        return first == null ? null : common(setting, start, fine, first);
    }

    /**
     * One width for all parts.
     *
     * @param held fits whose spread of twins is used throughout
     */
    static @Nullable WidthSearch common(
            Setting setting, int start, boolean fine, TwinFit.Result[] held) {
        int parts = setting.kinds().length;
        int[] at = new int[parts];
        Arrays.fill(at, start);
        int[] all = new int[parts];
        Arrays.setAll(all, t -> t);
        return of(Series.of(setting, held, at, all, fine), parts);
    }

    /**
     * A width for the first part alone.
     *
     * @param start index of each part's width; that of the others stays
     * @param held fits whose spread of twins is used throughout
     * @return null when the twins do not determine the numbers asked for
     */
    static @Nullable WidthSearch first(Setting setting, int[] start, TwinFit.Result[] held) {
        return of(Series.of(setting, held, start, new int[] {0}, true), start.length);
    }

    private static @Nullable WidthSearch of(@Nullable Series series, int parts) {
        if (series == null) {
            return null;
        }
        Widths[] each = new Widths[parts];
        Arrays.fill(each, Widths.of(series.misfits()));
        return new WidthSearch(
                each, new double[][][][] {series.amounts()}, series.misfits()[series.best()]);
    }

    /**
     * A width for each part, from a start towards the best, one part at a time.
     *
     * @param start index of each part's width
     * @param held fits whose spread of twins is used throughout
     * @param limit when a rough look finds no misfit below this, there is no finer one
     */
    static @Nullable WidthSearch separate(
            Setting setting, int[] start, TwinFit.Result[] held, double limit) {
        int parts = setting.kinds().length;
        int[] at = start.clone();
        Widths[] widths = new Widths[parts];
        double[][][][] amounts = new double[parts][][][];
        double misfit = 0;
        for (int pass = 0; pass < 2; pass++) {
            if (pass > 0 && misfit > limit) {
                return null;
            }
            for (int t = 0; t < parts; t++) {
                Series series = Series.of(setting, held, at, new int[] {t}, pass > 0);
                if (series == null) {
                    return null;
                }
                at[t] = series.best();
                widths[t] = Widths.of(series.misfits());
                amounts[t] = series.amounts();
                misfit = series.misfits()[at[t]];
            }
        }
        return new WidthSearch(widths, amounts, misfit);
    }

    /** Misfit and amounts along the tried widths. */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    private record Series(double[] misfits, double[][][] amounts) {
        static @Nullable Series of(
                Setting setting, TwinFit.Result[] held, int[] start, int[] varied, boolean fine) {
            int count = Widths.TRIED.length;
            Series series =
                    new Series(
                            new double[count],
                            new double[setting.channels()][setting.kinds().length][count]);
            Arrays.fill(series.misfits, Double.NaN);
            IntStream.range(0, count)
                    .filter(w -> w % Widths.COARSE == 0)
                    .parallel()
                    .forEach(w -> series.compute(w, setting, held, start, varied));
            if (fine) {
                int middle = series.best();
                IntStream.range(middle - Widths.COARSE + 1, middle + Widths.COARSE)
                        .filter(w -> w >= 0 && w < count && w != middle)
                        .parallel()
                        .forEach(w -> series.compute(w, setting, held, start, varied));
            }
            for (double[][] channel : series.amounts) {
                for (double[] amount : channel) {
                    for (int w = 0; w < count; w++) {
                        amount[w] = Double.isNaN(series.misfits[w]) ? Double.NaN : amount[w];
                    }
                    Widths.fill(amount);
                }
            }
            Widths.fill(series.misfits);
            return Double.isFinite(series.misfits[series.best()]) ? series : null;
        }

        private void compute(
                int width, Setting setting, TwinFit.Result[] held, int[] start, int[] varied) {
            int[] at = start.clone();
            for (int t : varied) {
                at[t] = width;
            }
            double misfit = 0;
            for (int c = 0; c < amounts.length; c++) {
                TwinFit.Result fit = setting.fit(c, at, held[c]);
                if (fit == null) {
                    // Two parts of one kind cannot have the same width.
                    misfit = Double.POSITIVE_INFINITY;
                    break;
                }
                misfit += fit.misfit() / amounts.length;
                for (int t = 0; t < fit.amounts().length; t++) {
                    amounts[c][t][width] = fit.amounts()[t];
                }
            }
            misfits[width] = misfit;
        }

        int best() {
            int best = 0;
            for (int w = 1; w < misfits.length; w++) {
                // NaN where not computed.
                best = misfits[w] < misfits[best] ? w : best;
            }
            return best;
        }
    }

    /** Standard error of an amount, the errors of the widths included. */
    double error(TwinFit.Result fit, int channel, int part) {
        double error = fit.error(part);
        for (int v = 0; v < amounts.length; v++) {
            error = Math.hypot(error, widths[v].errorOf(amounts[v][channel][part]));
        }
        return error;
    }

    /** Standard error of all glare together, from that at fixed widths. */
    double sumError(double atFixedWidths, int channel, StrayKind[] kinds) {
        double error = atFixedWidths;
        for (int v = 0; v < amounts.length; v++) {
            double[] sum = new double[Widths.TRIED.length];
            for (int t = 0; t < kinds.length; t++) {
                for (int w = 0; w < sum.length && kinds[t] == StrayKind.GLARE; w++) {
                    sum[w] += amounts[v][channel][t][w];
                }
            }
            error = Math.hypot(error, widths[v].errorOf(sum));
        }
        return error;
    }
}
