package org.printassay.calibrate.light;

/**
 * Gaussian blur over a grid, as a normalised convolution: what lies beyond the scan is taken to
 * look like what is known nearby. One pass along rows, one along columns.
 */
final class Blur {
    /** Standard deviations that the kernel reaches. */
    private static final double REACH = 3.5;

    private final Cells grid;
    private final double sigmaMm;
    private final float[] alongRows;
    private final float[] alongColumns;

    /** Nothing is known beyond these cells, so that nothing is to be added from there. */
    private int left;

    private int right;
    private int top;
    private int bottom;

    /** Share of the kernel that falls on known cells, for each cell. */
    private final float[] known;

    Blur(Cells grid, double sigmaMm, float[] anyMap) {
        this(grid, sigmaMm, 1, anyMap);
    }

    /**
     * A blur that may reach farther one way.
     *
     * @param sigmaMm standard deviation, geometric mean of both ways
     * @param longer that along rows over this mean; that along columns is as much shorter
     * @param anyMap a map that shows which cells are known
     */
    Blur(Cells grid, double sigmaMm, double longer, float[] anyMap) {
        this.grid = grid;
        this.sigmaMm = sigmaMm;
        this.alongRows = kernel(sigmaMm * longer, grid.cellMm());
        this.alongColumns = kernel(sigmaMm / longer, grid.cellMm());
        this.left = grid.columns();
        this.top = grid.rows();
        float[] ones = new float[anyMap.length];
        for (int i = 0; i < ones.length; i++) {
            if (!Float.isNaN(anyMap[i])) {
                ones[i] = 1;
                int column = i % grid.columns();
                int row = i / grid.columns();
                left = Math.min(left, column);
                right = Math.max(right, column + 1);
                top = Math.min(top, row);
                bottom = Math.max(bottom, row + 1);
            }
        }
        this.known = convolve(ones);
    }

    /**
     * Cells are box averages, which widens by 1/12 of a cell squared; the kernel itself is made
     * that much narrower.
     */
    private static float[] kernel(double sigmaMm, double cellMm) {
        double sigma = Math.sqrt(Math.max(0.05, Math.pow(sigmaMm / cellMm, 2) - 1.0 / 12));
        int reach = (int) Math.ceil(REACH * sigma);
        float[] kernel = new float[2 * reach + 1];
        double sum = 0;
        for (int i = -reach; i <= reach; i++) {
            double weight = Math.exp(-0.5 * i * i / (sigma * sigma));
            kernel[i + reach] = (float) weight;
            sum += weight;
        }
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] /= (float) sum;
        }
        return kernel;
    }

    double sigmaMm() {
        return sigmaMm;
    }

    /** Share of the kernel that falls on known cells, at each cell. */
    float[] known() {
        return known;
    }

    /** The blurred map, known where all are; NaN where nothing within reach is known. */
    float[] of(float[] map) {
        float[] filled = new float[map.length];
        for (int i = 0; i < map.length; i++) {
            filled[i] = Float.isNaN(map[i]) ? 0 : map[i];
        }
        float[] sums = convolve(filled);
        for (int i = 0; i < sums.length; i++) {
            sums[i] = known[i] < 1e-4f ? Float.NaN : sums[i] / known[i];
        }
        return sums;
    }

    private float[] convolve(float[] map) {
        int columns = grid.columns();
        int rows = grid.rows();
        float[] across = new float[map.length];
        int reach = alongRows.length / 2;
        for (int row = top; row < bottom; row++) {
            int begin = row * columns;
            for (int k = -reach; k <= reach; k++) {
                int from = Math.max(0, left - k);
                int to = Math.min(columns, right - k);
                add(alongRows[k + reach], map, begin + from + k, across, begin + from, to - from);
            }
        }
        float[] down = new float[map.length];
        reach = alongColumns.length / 2;
        for (int row = 0; row < rows; row++) {
            int begin = row * columns;
            int last = Math.min(reach, bottom - 1 - row);
            for (int k = Math.max(-reach, top - row); k <= last; k++) {
                add(alongColumns[k + reach], across, begin + k * columns, down, begin, columns);
            }
        }
        return down;
    }

    /** Adds {@code count} values, weighed, to others (modified). */
    private static void add(float weight, float[] from, int at, float[] to, int begin, int count) {
        for (int i = 0; i < count; i++) {
            to[begin + i] += weight * from[at + i];
        }
    }
}
