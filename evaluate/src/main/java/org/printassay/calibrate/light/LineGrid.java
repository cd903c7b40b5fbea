package org.printassay.calibrate.light;

import java.util.Arrays;

/**
 * A {@link SurroundGrid} turned so that its rows run along the lines of the scan: what a scanner
 * spreads farther one way than the other, it spreads along its lines or across them.
 */
final class LineGrid implements Cells {
    private final SurroundGrid page;
    private final double sine;
    private final double cosine;

    /** What is added to places of turned cells, so that none is below 0. */
    private final double right;

    private final double below;
    private final int columns;
    private final int rows;

    /**
     * @param turnDegrees clockwise turn of the page against the lines
     */
    LineGrid(SurroundGrid page, double turnDegrees) {
        this.page = page;
        this.sine = Math.sin(Math.toRadians(turnDegrees));
        this.cosine = Math.cos(Math.toRadians(turnDegrees));
        double[] along = new double[4];
        double[] down = new double[4];
        for (int corner = 0; corner < along.length; corner++) {
            double column = corner % 2 * (page.columns() - 1);
            double row = corner / 2 * (page.rows() - 1);
            along[corner] = column * cosine - row * sine;
            down[corner] = column * sine + row * cosine;
        }
        this.right = -Arrays.stream(along).min().orElseThrow();
        this.below = -Arrays.stream(down).min().orElseThrow();
        this.columns = (int) Math.ceil(right + Arrays.stream(along).max().orElseThrow()) + 1;
        this.rows = (int) Math.ceil(below + Arrays.stream(down).max().orElseThrow()) + 1;
    }

    @Override
    public int columns() {
        return columns;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public double cellMm() {
        return page.cellMm();
    }

    /** A map of the page, turned. */
    float[] turned(float[] map) {
        float[] turned = new float[columns * rows];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double along = column - right;
                double down = row - below;
                turned[row * columns + column] =
                        in(map, along * cosine + down * sine, down * cosine - along * sine);
            }
        }
        return turned;
    }

    private float in(float[] map, double across, double down) {
        int column = (int) Math.round(across);
        int row = (int) Math.round(down);
        if (column < 0 || row < 0 || column >= page.columns() || row >= page.rows()) {
            return Float.NaN;
        }
        float between = (float) new GridPlace(page, across, down).in(map);
        // Beside what is unknown, the nearest cell.
        return Float.isNaN(between) ? map[row * page.columns() + column] : between;
    }

    /** A place of the page on this grid. */
    GridPlace place(GridPlace onPage) {
        double across = onPage.across();
        double down = onPage.down();
        return new GridPlace(
                this, right + across * cosine - down * sine, below + across * sine + down * cosine);
    }
}
