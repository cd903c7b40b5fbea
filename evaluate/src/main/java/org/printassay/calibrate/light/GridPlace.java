package org.printassay.calibrate.light;

/**
 * One place on the page between the cells of a grid, ready to be read from many maps: the sixteen
 * cells around it and their weights.
 */
final class GridPlace {
    private static final int CELLS = 4;

    private final double across;
    private final double down;
    private final int[] columns = new int[CELLS];
    private final int[] begins = new int[CELLS];
    private final double[] acrossWeights = new double[CELLS];
    private final double[] downWeights = new double[CELLS];

    /**
     * A place by cubic convolution between cell centres (R. G. Keys, "Cubic convolution
     * interpolation for digital image processing", IEEE Trans. ASSP 29, 1981): a straight line
     * would widen a narrow blur. Beyond the outermost centres their values hold.
     *
     * @param across position between the centres of columns, 0 at the first
     * @param down the same for rows
     */
    GridPlace(Cells grid, double across, double down) {
        this.across = across;
        this.down = down;
        int column = (int) Math.floor(across);
        int row = (int) Math.floor(down);
        for (int i = 0; i < CELLS; i++) {
            columns[i] = held(column + i - 1, grid.columns());
            acrossWeights[i] = keys(across - column - (i - 1));
            begins[i] = held(row + i - 1, grid.rows()) * grid.columns();
            downWeights[i] = keys(down - row - (i - 1));
        }
    }

    /** Position between the centres of columns, 0 at the first. */
    double across() {
        return across;
    }

    /** Position between the centres of rows, 0 at the first. */
    double down() {
        return down;
    }

    private static int held(int at, int count) {
        return Math.max(0, Math.min(count - 1, at));
    }

    private static double keys(double distance) {
        double s = Math.abs(distance);
        return s < 1 ? (1.5 * s - 2.5) * s * s + 1 : ((2.5 - 0.5 * s) * s - 4) * s + 2;
    }

    /** Value of a map at this place. */
    double in(float[] map) {
        double sum = 0;
        for (int j = 0; j < CELLS; j++) {
            double line = 0;
            for (int i = 0; i < CELLS; i++) {
                line += acrossWeights[i] * map[begins[j] + columns[i]];
            }
            sum += downWeights[j] * line;
        }
        return sum;
    }
}
