package org.printassay.demo.flatbed;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.RenderedSheet;

/**
 * The reflectance of the neighbourhood at every place of a sheet, weighted with the kernel of the
 * stray light, per channel. Cells of 1 mm; what lies beyond the sheet is lid, without end.
 */
final class StrayField {
    private static final double CELL_MM = 1;

    /** Cells beyond the sheet on all sides: the field is wanted a little outside of it. */
    private static final int BORDER = 40;

    private final int side;
    private final double[][] planes = new double[3][];

    StrayField(Print print, Inks inks, Optics optics, double lid) {
        RenderedSheet sheet = print.sheet();
        int columns = (int) Math.ceil(sheet.widthMm() / CELL_MM);
        int rows = (int) Math.ceil(sheet.heightMm() / CELL_MM);
        int reach = (int) (5 * optics.tailMm() / CELL_MM);
        int need = Math.max(columns, rows) + 2 * BORDER + reach;
        this.side = Integer.highestOneBit(Math.max(64, need - 1)) * 2;
        double[] kernel = kernel(optics);
        Fourier fourier = new Fourier(side);
        for (int channel = 0; channel < 3; channel++) {
            double[] plane = new double[side * side];
            Arrays.fill(plane, lid);
            int c = channel;
            IntStream.range(0, rows)
                    .parallel()
                    .forEach(row -> fillRow(plane, row, columns, c, print, inks));
            fourier.convolve(plane, kernel);
            planes[channel] = plane;
        }
    }

    private void fillRow(
            double[] plane, int row, int columns, int channel, Print print, Inks inks) {
        RenderedSheet sheet = print.sheet();
        double dotsPerMm = sheet.dotsPerInch() / 25.4;
        int[] index = sheet.index();
        int tries = 6;
        for (int column = 0; column < columns; column++) {
            double sum = 0;
            for (int j = 0; j < tries; j++) {
                double sheetY = (row + (j + 0.5) / tries) * CELL_MM;
                int dotY = (int) Math.floor(print.pageY(sheetY) * dotsPerMm);
                for (int i = 0; i < tries; i++) {
                    double sheetX = (column + (i + 0.5) / tries) * CELL_MM;
                    int dotX = (int) Math.floor(print.pageX(sheetX) * dotsPerMm);
                    boolean printed =
                            dotX >= 0 && dotY >= 0 && dotX < sheet.width() && dotY < sheet.height();
                    sum +=
                            printed
                                    ? inks.light[3 * index[dotY * sheet.width() + dotX] + channel]
                                    : inks.paper[channel];
                }
            }
            plane[(row + BORDER) * side + column + BORDER] = sum / (tries * tries);
        }
    }

    /** Core and tail, each with sum 1 over the field, mixed by the tail's share. */
    private double[] kernel(Optics optics) {
        double[] core = new double[side * side];
        double[] tail = new double[side * side];
        double coreSum = 0;
        double tailSum = 0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int dx = Math.min(x, side - x);
                int dy = Math.min(y, side - y);
                int at = y * side + x;
                double a = optics.coreMm();
                core[at] =
                        optics.core() == Optics.Core.GAUSSIAN
                                ? mean(dx, dy, r -> Math.exp(-r * r / (2 * a * a)))
                                : mean(dx, dy, r -> Math.exp(-r / a));
                double b = optics.tailMm();
                tail[at] = mean(dx, dy, r -> Math.pow(1 + r * r / (b * b), -1.5));
                coreSum += core[at];
                tailSum += tail[at];
            }
        }
        for (int i = 0; i < core.length; i++) {
            core[i] =
                    (1 - optics.tailShare()) * core[i] / coreSum
                            + optics.tailShare() * tail[i] / tailSum;
        }
        return core;
    }

    private interface Radial {
        double at(double r);
    }

    /** Mean over a cell: the middle serves far out, a grid of points near the peak. */
    private static double mean(int dx, int dy, Radial kernel) {
        if (dx + dy > 12) {
            return kernel.at(CELL_MM * Math.hypot(dx, dy));
        }
        double sum = 0;
        int n = 5;
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                double x = dx + (i + 0.5) / n - 0.5;
                double y = dy + (j + 0.5) / n - 0.5;
                sum += kernel.at(CELL_MM * Math.hypot(x, y));
            }
        }
        return sum / (n * n);
    }

    /** Neighbourhood at a place of the sheet, straight lines between cells. */
    double at(int channel, double sheetXMm, double sheetYMm) {
        double x = clamp(sheetXMm / CELL_MM - 0.5 + BORDER);
        double y = clamp(sheetYMm / CELL_MM - 0.5 + BORDER);
        int column = (int) x;
        int row = (int) y;
        double fx = x - column;
        double fy = y - row;
        double[] p = planes[channel];
        int at = row * side + column;
        return (1 - fy) * ((1 - fx) * p[at] + fx * p[at + 1])
                + fy * ((1 - fx) * p[at + side] + fx * p[at + side + 1]);
    }

    private double clamp(double position) {
        return Math.min(side - 1.001, Math.max(0, position));
    }
}
