package org.printassay.sample;

import java.util.Arrays;
import org.printassay.robust.Median;

/**
 * Tells the print's own dots from what lies on it. Few drops on paper, or few gaps in a solid, make
 * a distribution so skewed that cells which hold them lie far from the median: left out, highlights
 * would read as bare paper. Dots stand all over the patch and apart from each other; dust, hairs,
 * scratches and pencil stand in places, their cells side by side.
 */
final class OwnGrain {
    /** Least share of far cells in the middle block; noise and even grain have half of it. */
    private static final double LEAST = 0.03;

    /**
     * By how much more often than any cell the neighbour of a far cell may be far. Drops that
     * straddle cells reach 0.15, dirt begins at 0.23 (simulated patches).
     */
    private static final double MOST_BESIDE = 0.2;

    /** The same as a share of what is left to 1: where most cells are far, so are neighbours. */
    private static final double MOST_OF_REST = 0.5;

    private OwnGrain() {}

    /**
     * Whether cells that lie far from the median are grain of the print.
     *
     * @param far for each cell, not modified
     */
    static boolean is(PatchCells cells, boolean[] far) {
        long whole = 0;
        long out = 0;
        long beside = 0;
        long pairs = 0;
        for (int i = 0; i < far.length; i++) {
            if (!isWhole(cells, i)) {
                continue;
            }
            whole++;
            out += far[i] ? 1 : 0;
            int right = i % cells.columns() + 1 < cells.columns() ? i + 1 : i;
            int below = i / cells.columns() + 1 < cells.rows() ? i + cells.columns() : i;
            for (int other : new int[] {right, below}) {
                if (other != i && isWhole(cells, other)) {
                    beside += (far[i] ? 1 : 0) + (far[other] ? 1 : 0);
                    pairs += far[i] && far[other] ? 2 : 0;
                }
            }
        }
        if (out == 0 || out == whole || middleShare(cells, far) < LEAST) {
            return false;
        }
        double share = (double) out / whole;
        double more = (double) pairs / Math.max(1, beside) - share;
        return more < Math.min(MOST_BESIDE, MOST_OF_REST * (1 - share));
    }

    /** Share of far cells in the block of about a millimetre that has the middle one. */
    private static double middleShare(PatchCells cells, boolean[] far) {
        int per = cells.perBlock();
        int across = (cells.columns() + per - 1) / per;
        int down = (cells.rows() + per - 1) / per;
        int[] sizes = new int[across * down];
        int[] out = new int[sizes.length];
        for (int i = 0; i < far.length; i++) {
            if (isWhole(cells, i)) {
                int row = i / cells.columns() / per;
                int block = row * across + i % cells.columns() / per;
                sizes[block]++;
                out[block] += far[i] ? 1 : 0;
            }
        }
        double[] shares = new double[sizes.length];
        int n = 0;
        for (int b = 0; b < sizes.length; b++) {
            if (2 * sizes[b] >= per * per) {
                shares[n++] = (double) out[b] / sizes[b];
            }
        }
        return n == 0 ? 0 : Median.upper(Arrays.copyOf(shares, n));
    }

    private static boolean isWhole(PatchCells cells, int cell) {
        return 2 * cells.size(cell) >= cells.fullSize();
    }
}
