package org.printassay.calibrate.light;

import org.printassay.sample.PageImage;

/**
 * The places of a {@link PageImage} on a grid coarse enough to be blurred quickly, and which of
 * them the scan reached. Values live in plain arrays, one number a cell, NaN where unknown.
 */
final class SurroundGrid implements Cells {
    /** Cells are made about this wide: fine enough for the narrowest blur looked for. */
    private static final double CELL_MM = 2;

    private final PageImage page;
    private final int factor;
    private final int columns;
    private final int rows;

    SurroundGrid(PageImage page) {
        this.page = page;
        this.factor = Math.max(1, (int) Math.round(CELL_MM / page.stepMm()));
        this.columns = (page.columns() + factor - 1) / factor;
        this.rows = (page.rows() + factor - 1) / factor;
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
        return factor * page.stepMm();
    }

    /** Page x of a column's centre. */
    double x(int column) {
        return page.centre(0, 0).x() + ((column + 0.5) * factor - 0.5) * page.stepMm();
    }

    /** Page y of a row's centre. */
    double y(int row) {
        return page.centre(0, 0).y() + ((row + 0.5) * factor - 0.5) * page.stepMm();
    }

    /** Mean light of the known parts of each cell over a paper level. */
    float[] values(int channel, double paper) {
        float[] values = new float[columns * rows];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                values[row * columns + column] = (float) (mean(channel, column, row) / paper);
            }
        }
        return values;
    }

    private double mean(int channel, int column, int row) {
        double sum = 0;
        int known = 0;
        int right = Math.min(page.columns(), (column + 1) * factor);
        int bottom = Math.min(page.rows(), (row + 1) * factor);
        for (int y = row * factor; y < bottom; y++) {
            for (int x = column * factor; x < right; x++) {
                float light = page.light(channel, x, y);
                if (!Float.isNaN(light)) {
                    sum += light;
                    known++;
                }
            }
        }
        return known == 0 ? Double.NaN : sum / known;
    }

    /** A place on the page, ready to be read from maps. */
    GridPlace place(double xMm, double yMm) {
        return new GridPlace(
                this, page.columnOf(xMm) / factor - 0.5, page.rowOf(yMm) / factor - 0.5);
    }
}
