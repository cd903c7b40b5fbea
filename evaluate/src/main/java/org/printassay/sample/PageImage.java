package org.printassay.sample;

import java.util.Arrays;
import org.printassay.colour.LinearRgb;
import org.printassay.sheet.PointMm;

/**
 * A coarse image of the page and what lies around it, in page coordinates and linear device light:
 * what the neighbourhood of each patch looks like to the scanner. Cells outside the scan are NaN.
 */
public final class PageImage {
    private final double originX;
    private final double originY;
    private final double stepMm;
    private final int columns;
    private final int rows;
    private final float[][] light;

    /**
     * An image with every cell unknown.
     *
     * @param origin outer top left corner of the first cell, page millimetres (may be negative)
     * @param stepMm cell size
     */
    public PageImage(PointMm origin, double stepMm, int columns, int rows) {
        this.originX = origin.x();
        this.originY = origin.y();
        this.stepMm = stepMm;
        this.columns = columns;
        this.rows = rows;
        this.light = new float[3][columns * rows];
        for (float[] plane : light) {
            Arrays.fill(plane, Float.NaN);
        }
    }

    /** Sets the mean light of one cell. */
    public void set(int column, int row, LinearRgb value) {
        int at = row * columns + column;
        light[0][at] = (float) value.r();
        light[1][at] = (float) value.g();
        light[2][at] = (float) value.b();
    }

    /** Light by channel (0, 1 or 2) and place. */
    @FunctionalInterface
    public interface LightAt {
        double of(int channel, PointMm place);
    }

    /** The same image without some light. */
    public PageImage without(LightAt added) {
        PageImage less = new PageImage(new PointMm(originX, originY), stepMm, columns, rows);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                PointMm place = centre(column, row);
                for (int c = 0; c < light.length; c++) {
                    int at = row * columns + column;
                    less.light[c][at] = (float) (light[c][at] - added.of(c, place));
                }
            }
        }
        return less;
    }

    /** Light of a cell in channel 0, 1 or 2; NaN where the scan does not reach. */
    public float light(int channel, int column, int row) {
        return light[channel][row * columns + column];
    }

    /** Centre of a cell on the page. */
    public PointMm centre(int column, int row) {
        return new PointMm(originX + (column + 0.5) * stepMm, originY + (row + 0.5) * stepMm);
    }

    /** Column position of a page x (column centres at half-integers). */
    public double columnOf(double xMm) {
        return (xMm - originX) / stepMm;
    }

    /** Row position of a page y (row centres at half-integers). */
    public double rowOf(double yMm) {
        return (yMm - originY) / stepMm;
    }

    /** Cell size, millimetres. */
    public double stepMm() {
        return stepMm;
    }

    /** Number of columns. */
    public int columns() {
        return columns;
    }

    /** Number of rows. */
    public int rows() {
        return rows;
    }
}
