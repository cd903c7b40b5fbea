package org.printassay.sample;

import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/**
 * A patch by blocks of about a millimetre, from the cells that show it. What is too faint for the
 * cells, a fingerprint or a rubbed spot, moves a block well beyond the spread of the others: such
 * blocks are left out. Blocks less than half full do not count for the spread.
 */
final class BlockMeans {
    /** Robust standard deviations beyond which a block is left out. */
    private static final double CUT = 5;

    /** Blocks nearer to the others than this stay, L*. */
    private static final double LEAST_L = 0.4;

    /**
     * Code steps from the others within which a block stays. Where a scan is smoothed, most blocks
     * hold one code and spread by nothing, and the next code of 8 bits is half an L* away in the
     * dark.
     */
    private static final double ROUNDED = 1.05;

    /** Fewer blocks tell no spread of their own. */
    private static final int FEWEST = 9;

    /** Share of blocks that may be left out: beyond it there is no telling which are right. */
    private static final double MOST_OUT = 0.4;

    private final int[] sizes;
    private final double[][] sums;
    private final boolean[] out;
    private final int least;

    BlockMeans(PatchCells cells, CellJudge judge, float[][] curves, int[] codeSteps) {
        int per = cells.perBlock();
        int across = (cells.columns() + per - 1) / per;
        int down = (cells.rows() + per - 1) / per;
        int[] blockOf = new int[cells.columns() * cells.rows()];
        for (int cell = 0; cell < blockOf.length; cell++) {
            blockOf[cell] = cell / cells.columns() / per * across + cell % cells.columns() / per;
        }
        sizes = new int[across * down];
        int[] whole = new int[sizes.length];
        for (int cell = 0; cell < blockOf.length; cell++) {
            whole[blockOf[cell]] += cells.size(cell);
            sizes[blockOf[cell]] += judge.shows(cell) ? cells.size(cell) : 0;
        }
        sums = new double[cells.channels()][];
        for (int c = 0; c < sums.length; c++) {
            sums[c] = sums(cells, judge, c, blockOf);
        }
        least = Math.max(1, Arrays.stream(whole).max().orElse(0) / 2);
        out = judge.isAllItsOwn() ? new boolean[sizes.length] : outliers(curves, codeSteps);
    }

    private double[] sums(PatchCells cells, CellJudge judge, int channel, int[] blockOf) {
        double[] sums = new double[sizes.length];
        for (int cell = 0; cell < blockOf.length; cell++) {
            if (judge.shows(cell)) {
                sums[blockOf[cell]] += cells.sum(channel, cell);
            }
        }
        return sums;
    }

    private boolean[] outliers(float[][] curves, int[] codeSteps) {
        boolean[] far = new boolean[sizes.length];
        if (full(far) < FEWEST) {
            return far;
        }
        boolean[] none = new boolean[sizes.length];
        for (int c = 0; c < sums.length; c++) {
            double[] sum = sums[c];
            double[] light = means(sum, none);
            double median = Median.upper(light);
            double[] away = Arrays.stream(light).map(m -> Math.abs(m - median)).toArray();
            double spread = CUT * Mad.TO_SIGMA * Median.upper(away);
            double step = CodeSteps.around(curves[c], (float) median, codeSteps[c]);
            double limit = Math.max(spread, ROUNDED * step);
            for (int b = 0; b < far.length; b++) {
                if (sizes[b] > 0) {
                    double mean = sum[b] / sizes[b];
                    far[b] |=
                            Math.abs(mean - median) > limit
                                    && Math.abs(Lab.lightness(mean) - Lab.lightness(median))
                                            > LEAST_L;
                }
            }
        }
        int left = full(far);
        return left < (1 - MOST_OUT) * full(none) ? none : far;
    }

    private int full(boolean[] leftOut) {
        int n = 0;
        for (int b = 0; b < sizes.length; b++) {
            n += sizes[b] >= least && !leftOut[b] ? 1 : 0;
        }
        return n;
    }

    private double[] means(double[] sum, boolean[] leftOut) {
        double[] means = new double[full(leftOut)];
        int n = 0;
        for (int b = 0; b < sizes.length; b++) {
            if (sizes[b] >= least && !leftOut[b]) {
                means[n++] = sum[b] / sizes[b];
            }
        }
        return means;
    }

    /** How many blocks are at least half full and count. */
    int full() {
        return full(out);
    }

    /** Pixels that the mean rests on. */
    long pixels() {
        long n = 0;
        for (int b = 0; b < sizes.length; b++) {
            n += out[b] ? 0 : sizes[b];
        }
        return n;
    }

    /** Share of the pixels that show the patch which were left out with their blocks. */
    double shareOut() {
        long all = Arrays.stream(sizes).asLongStream().sum();
        return all == 0 ? 0 : 1 - (double) pixels() / all;
    }

    /** Mean light of a channel over all pixels that count; NaN when there are none. */
    double mean(int channel) {
        double sum = 0;
        for (int b = 0; b < sizes.length; b++) {
            sum += out[b] ? 0 : sums[channel][b];
        }
        return sum / pixels();
    }

    /** Standard error of the patch mean; NaN when there are fewer than two blocks. */
    double standardError(int channel) {
        double[] means = means(sums[channel], out);
        if (means.length < 2) {
            return Double.NaN;
        }
        double mean = Arrays.stream(means).average().orElse(0);
        double squares = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
        return Math.sqrt(squares / (means.length - 1) / means.length);
    }

    /** How far block means lie apart, left-out ones too, in L* of the channel's light. */
    double spanL(int channel) {
        double[] means = means(sums[channel], new boolean[sizes.length]);
        if (means.length < 2) {
            return 0;
        }
        double low = Arrays.stream(means).min().orElse(0);
        double high = Arrays.stream(means).max().orElse(0);
        return Lab.lightness(high) - Lab.lightness(low);
    }
}
