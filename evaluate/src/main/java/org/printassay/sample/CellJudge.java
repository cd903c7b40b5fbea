package org.printassay.sample;

import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.robust.FastMedian;
import org.printassay.robust.Mad;

/**
 * Tells which cells of a patch show the patch and which show what lies on it. Cells far from the
 * median in any channel go, and the median is taken anew from the rest until nothing changes, so
 * that dirt which covers a good part does not widen the limit that should keep it out. Neighbours
 * of dirt go too, for its edges are soft. Where the far cells are the print's own dots, all stay.
 */
final class CellJudge {
    /** Robust standard deviations beyond which a cell is left out. */
    private static final double CUT = 2.8;

    /**
     * Cells nearer to the median than this, L*, are left out but are no dirt: where a scanner
     * smooths grain away, the print's own slow unevenness stands out of what is left.
     */
    private static final double LEAST_SEEN_L = 0.4;

    private static final int ROUNDS = 8;

    /** Share of cells that must be left for the neighbours of dirt to go as well. */
    private static final double ENOUGH = 0.3;

    private final PatchCells cells;
    private final boolean[] far;
    private final boolean[] blurred;
    private final boolean[] out;
    private final boolean grain;
    private final double shareFar;

    /**
     * One way of reading a patch.
     *
     * @param far cells that lie far from the others, with their neighbours
     * @param blurred of these what blur brings over the edges, with its neighbours
     * @param out cells that are left out
     * @param grain whether far cells are all taken for the patch's own, blocks of them too
     */
    private CellJudge(
            PatchCells cells,
            boolean[] far,
            boolean[] blurred,
            boolean[] out,
            boolean grain,
            double shareFar) {
        this.cells = cells;
        this.far = far;
        this.blurred = blurred;
        this.out = out;
        this.grain = grain;
        this.shareFar = shareFar;
    }

    /** The same patch where nothing lies on it: all of it shows but what blur brings in. */
    CellJudge showingAll() {
        return new CellJudge(cells, far, blurred, blurred, true, shareFar);
    }

    /** The same patch without its far cells, even if they are its own grain. */
    CellJudge withoutFar() {
        return new CellJudge(cells, far, blurred, far, false, shareFar);
    }

    static CellJudge of(PatchCells cells, float[][] curves, int[] codeSteps) {
        boolean[] out = new boolean[cells.columns() * cells.rows()];
        boolean[] seen = new boolean[out.length];
        for (int c = 0; c < cells.channels(); c++) {
            mark(cells, c, curves[c], codeSteps[c], out, seen);
        }
        boolean[] blurred = PatchEdges.far(cells, out);
        long dirty = 0;
        long inside = 0;
        long dust = 0;
        for (int i = 0; i < out.length; i++) {
            dirty += out[i] ? cells.size(i) : 0;
            inside += blurred[i] ? 0 : cells.size(i);
            dust += seen[i] && !blurred[i] ? cells.size(i) : 0;
        }
        double share = inside == 0 ? 0 : (double) dust / inside;
        // Channels that leave out different halves leave nothing: better all, and the flag.
        boolean[] kept = dirty == cells.count() ? new boolean[out.length] : out;
        boolean[] far = withNeighbours(cells, kept);
        boolean[] edges = withNeighbours(cells, blurred);
        return OwnGrain.is(cells, out)
                ? new CellJudge(cells, far, edges, new boolean[out.length], false, share)
                : new CellJudge(cells, far, edges, far, false, share);
    }

    /**
     * Marks what lies far from the median in one channel.
     *
     * @param out gets true where cells do
     * @param seen gets true where they do by so much that one would see it
     */
    private static void mark(
            PatchCells cells,
            int channel,
            float[] curve,
            int codeStep,
            boolean[] out,
            boolean[] seen) {
        float[] means = means(cells, channel);
        Middle middle = Middle.of(ofWhole(cells, means), curve, codeStep);
        for (int i = 0; i < out.length; i++) {
            // Cells cut by the patch's border hold few pixels: their noise is greater.
            int size = cells.size(i);
            double widen = Math.max(1, Math.sqrt((double) cells.fullSize() / Math.max(1, size)));
            if (size > 0 && Math.abs(means[i] - middle.median()) > widen * middle.limit()) {
                out[i] = true;
                seen[i] |=
                        Math.abs(Lab.lightness(means[i]) - Lab.lightness(middle.median()))
                                > widen * LEAST_SEEN_L;
            }
        }
    }

    /** Mean light of each cell; 0 for one without pixels. */
    private static float[] means(PatchCells cells, int channel) {
        float[] means = new float[cells.columns() * cells.rows()];
        for (int i = 0; i < means.length; i++) {
            int size = cells.size(i);
            means[i] = size == 0 ? 0 : (float) (cells.sum(channel, i) / size);
        }
        return means;
    }

    /** The means of cells that lie in the patch by half or more. */
    private static float[] ofWhole(PatchCells cells, float[] means) {
        float[] whole = new float[means.length];
        int full = 0;
        for (int i = 0; i < means.length; i++) {
            if (2 * cells.size(i) >= cells.fullSize()) {
                whole[full++] = means[i];
            }
        }
        return Arrays.copyOf(whole, full);
    }

    /** Median of what is not far from it, and the distance from which a value is. */
    private record Middle(double median, double limit) {
        static Middle of(float[] values, float[] curve, int codeStep) {
            if (values.length == 0) {
                return new Middle(0, 0);
            }
            float[] work = new float[values.length];
            Middle middle = new Middle(0, Double.POSITIVE_INFINITY);
            int before = -1;
            for (int round = 0; round < ROUNDS; round++) {
                int kept = middle.near(values, work);
                if (kept == before || kept == 0) {
                    break;
                }
                before = kept;
                double median = FastMedian.upper(work, kept);
                deviations(work, kept, median);
                // Where one code holds most pixels, most deviations are nil: a step is the least.
                double sigma =
                        Math.max(
                                Mad.TO_SIGMA * FastMedian.upper(work, kept),
                                CodeSteps.around(curve, (float) median, codeStep));
                middle = new Middle(median, CUT * sigma);
            }
            return middle;
        }

        /** Copies what is not far into {@code near} (modified) and returns how many. */
        private int near(float[] values, float[] near) {
            double low = median - limit;
            double high = median + limit;
            int kept = 0;
            for (float value : values) {
                if (value >= low && value <= high) {
                    near[kept++] = value;
                }
            }
            return kept;
        }

        private static void deviations(float[] values, int count, double from) {
            for (int i = 0; i < count; i++) {
                values[i] = (float) Math.abs(values[i] - from);
            }
        }
    }

    private static boolean[] withNeighbours(PatchCells cells, boolean[] out) {
        boolean[] wide = out.clone();
        int columns = cells.columns();
        for (int i = 0; i < out.length; i++) {
            if (!out[i]) {
                continue;
            }
            int x = i % columns;
            int y = i / columns;
            for (int v = Math.max(0, y - 1); v <= Math.min(cells.rows() - 1, y + 1); v++) {
                for (int u = Math.max(0, x - 1); u <= Math.min(columns - 1, x + 1); u++) {
                    wide[v * columns + u] = true;
                }
            }
        }
        long left = 0;
        for (int i = 0; i < wide.length; i++) {
            left += wide[i] ? 0 : cells.size(i);
        }
        return left >= ENOUGH * cells.count() ? wide : out;
    }

    /** Whether a cell lies far from the others, or beside one that does. */
    boolean isFar(int cell) {
        return far[cell];
    }

    /** Whether blur brings what lies beside the patch into a cell. */
    boolean isBlurred(int cell) {
        return blurred[cell];
    }

    /** Whether a cell shows the patch. */
    boolean shows(int cell) {
        return !out[cell] && cells.size(cell) > 0;
    }

    /**
     * Share of the patch's pixels in cells that something lies on, neighbours not counted, nor what
     * blur brings over the patch's edges.
     */
    double shareOut() {
        return out == far ? shareFar : 0;
    }

    /** Share of it in cells that lie visibly far from the others, whatever they are. */
    double shareFar() {
        return shareFar;
    }

    /** Whether nothing is taken for dirt, blocks neither. */
    boolean isAllItsOwn() {
        return grain;
    }
}
