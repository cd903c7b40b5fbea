package org.printassay.demo.flatbed;

import java.util.Arrays;
import java.util.List;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.RenderedSheet;
import org.printassay.sheet.RectMm;

/**
 * The printed sheet in linear device light, cut out in rectangles of cells. A cell is the mean of
 * {@code perCell} x {@code perCell} dots of the print.
 */
final class Raster {
    private static final float[] NO_LIGHT = new float[3];

    private final Print print;
    private final RenderedSheet sheet;
    private final Inks inks;
    private final float[] lid;
    private final int perCell;
    private final double cellsPerMm;
    private final List<Departure> departures;
    private final boolean uneven;

    /** What makes one patch differ from its code: a factor on light per channel. */
    @SuppressWarnings("ArrayRecordComponent") // Stays inside this class.
    private record Departure(RectMm onPage, float[] factors) {}

    /**
     * A rectangle of cells.
     *
     * @param x column of the first cell
     * @param y row of the first cell
     * @param wanted cells that were filled; the others are 0
     * @param planes red, green, blue, row by row
     */
    @SuppressWarnings("ArrayRecordComponent") // Pixels, handed on once.
    record Cut(int x, int y, int width, Spans wanted, float[][] planes) {
        void fill(int from, int to, float[] light) {
            for (int c = 0; c < 3; c++) {
                Arrays.fill(planes[c], from, Math.max(from, to), light[c]);
            }
        }
    }

    Raster(Print print, Inks inks, double lid, int perCell) {
        this.print = print;
        this.sheet = print.sheet();
        this.inks = inks;
        this.lid = new float[] {(float) lid, (float) lid, (float) lid};
        this.perCell = perCell;
        this.cellsPerMm = sheet.dotsPerInch() / 25.4 / perCell;
        this.departures =
                print.patches().stream()
                        .filter(patch -> !patch.spread().equals(patch.expected()))
                        .map(this::departure)
                        .toList();
        var surface = print.paper().surface();
        this.uneven =
                surface.grain() > 0
                        || surface.texture() > 0
                        || surface.drift() != 0
                        || !print.printing().bands().isEmpty()
                        || !print.printing().lines().isEmpty();
    }

    private Departure departure(PrintedPatch patch) {
        float[] expected = inks.light(patch.expected());
        float[] spread = inks.light(patch.spread());
        float[] factors = new float[3];
        for (int c = 0; c < 3; c++) {
            factors[c] = expected[c] == 0 ? 1 : spread[c] / expected[c];
        }
        return new Departure(patch.patch().area(), factors);
    }

    double cellX(double sheetXMm) {
        return print.pageX(sheetXMm) * cellsPerMm;
    }

    double cellY(double sheetYMm) {
        return print.pageY(sheetYMm) * cellsPerMm;
    }

    Cut cut(int x, int y, int width, Spans wanted) {
        Cut cut = new Cut(x, y, width, wanted, new float[3][width * wanted.rows()]);
        Dots dots = uneven ? new UnevenDots(cut) : new FlatDots(cut);
        double pitch = 1 / cellsPerMm;
        int left = 0;
        int right = 0;
        for (int i = 0; i < width; i++) {
            double sheetX = print.sheetX((x + i + 0.5) * pitch);
            left += sheetX < 0 ? 1 : 0;
            right += sheetX <= sheet.widthMm() ? 1 : 0;
        }
        int firstPrinted = Math.max(left, -x);
        int afterPrinted = Math.min(right, (sheet.width() + perCell - 1) / perCell - x);
        for (int j = 0; j < wanted.rows(); j++) {
            int row = j * width;
            int from = wanted.from(j);
            int to = wanted.to(j);
            double sheetY = print.sheetY((y + j + 0.5) * pitch);
            cut.fill(row + from, row + to, lid);
            if (sheetY < 0 || sheetY > sheet.heightMm()) {
                continue;
            }
            cut.fill(row + Math.max(from, left), row + Math.min(to, right), inks.paper);
            int start = Math.max(from, firstPrinted);
            int end = Math.min(to, afterPrinted);
            if (y + j >= 0 && (y + j) * perCell < sheet.height() && start < end) {
                cut.fill(row + start, row + end, NO_LIGHT);
                dots.add(j, start, end);
            }
        }
        departures.forEach(departure -> apply(departure, cut));
        return cut;
    }

    private void apply(Departure departure, Cut cut) {
        RectMm area = departure.onPage;
        int left = Math.max(cut.x, (int) Math.round(area.x() * cellsPerMm));
        int right = Math.min(cut.x + cut.width, (int) Math.round(area.right() * cellsPerMm));
        int top = Math.max(cut.y, (int) Math.round(area.y() * cellsPerMm));
        int bottom =
                Math.min(cut.y + cut.wanted.rows(), (int) Math.round(area.bottom() * cellsPerMm));
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                int at = (y - cut.y) * cut.width + x - cut.x;
                for (int c = 0; c < 3; c++) {
                    cut.planes[c][at] *= departure.factors[c];
                }
            }
        }
    }

    /** Prints rows of cells of one cut: each the mean of its dots. */
    private abstract class Dots {
        final Cut cut;
        private final float share = 1f / (perCell * perCell);

        Dots(Cut cut) {
            this.cut = cut;
        }

        /** Adds the light of one row of dots to its cells. */
        abstract void addDots(int dotRow, int to, int from, int after, int sheetRow);

        /**
         * Fills the cells of a row, 0 before.
         *
         * @param row of the cut
         * @param from first cell
         * @param after cell after the last
         */
        final void add(int row, int from, int after) {
            int at = row * cut.width;
            for (int j = row * perCell; j < (row + 1) * perCell; j++) {
                int sheetRow = Math.min(cut.y * perCell + j, sheet.height() - 1) * sheet.width();
                addDots(j, at, from, after, sheetRow);
            }
            for (float[] plane : cut.planes) {
                for (int i = at + from; i < at + after; i++) {
                    plane[i] *= share;
                }
            }
        }

        /** The dot of a row whose code counts at a place: the last one beyond the sheet's edge. */
        final int dot(int i) {
            return Math.min(cut.x * perCell + i, sheet.width() - 1);
        }
    }

    private final class FlatDots extends Dots {
        FlatDots(Cut cut) {
            super(cut);
        }

        @Override
        void addDots(int dotRow, int to, int from, int after, int sheetRow) {
            int[] index = sheet.index();
            float[] light = inks.light;
            for (int cell = from; cell < after; cell++) {
                float r = cut.planes[0][to + cell];
                float g = cut.planes[1][to + cell];
                float b = cut.planes[2][to + cell];
                for (int i = cell * perCell; i < (cell + 1) * perCell; i++) {
                    int n = 3 * index[sheetRow + dot(i)];
                    r += light[n];
                    g += light[n + 1];
                    b += light[n + 2];
                }
                cut.planes[0][to + cell] = r;
                cut.planes[1][to + cell] = g;
                cut.planes[2][to + cell] = b;
            }
        }
    }

    /** Grain, texture, drift, bands and lines at every dot. */
    private final class UnevenDots extends Dots {
        private final int[][] grainX;
        private final int[][] grainY;
        private final int[][] textureX;
        private final int[][] textureY;
        private final float[] inkX;
        private final float[] inkY;
        private final float[] lineX;
        private final float[] lineY;
        private final float[] grain;
        private final float[] texture;

        UnevenDots(Cut cut) {
            super(cut);
            double dotMm = 1 / cellsPerMm / perCell;
            int columns = cut.width * perCell;
            int rows = cut.wanted.rows() * perCell;
            double left = print.sheetX((cut.x * perCell + 0.5) * dotMm);
            double top = print.sheetY((cut.y * perCell + 0.5) * dotMm);
            double stepX = print.printing().scaleX() * dotMm;
            double stepY = print.printing().scaleY() * dotMm;
            grainX = print.grain().cells(left, stepX, columns);
            grainY = print.grain().cells(top, stepY, rows);
            textureX = print.texture().cells(left, stepX, columns);
            textureY = print.texture().cells(top, stepY, rows);
            inkX = new float[columns];
            lineX = new float[columns];
            for (int i = 0; i < columns; i++) {
                inkX[i] = (float) print.inkAlongX(left + i * stepX);
                lineX[i] = (float) print.lines(Printing.Across.X, left + i * stepX);
            }
            inkY = new float[rows];
            lineY = new float[rows];
            for (int j = 0; j < rows; j++) {
                inkY[j] = (float) print.inkAlongY(top + j * stepY);
                lineY[j] = (float) print.lines(Printing.Across.Y, top + j * stepY);
            }
            grain = new float[columns];
            texture = new float[columns];
        }

        @Override
        void addDots(int dotRow, int to, int from, int after, int sheetRow) {
            int first = from * perCell;
            int last = after * perCell;
            print.grain().along(grainX, grainY[0][dotRow], grainY[1][dotRow], first, last, grain);
            print.texture()
                    .along(
                            textureX,
                            textureY[0][dotRow],
                            textureY[1][dotRow],
                            first,
                            last,
                            texture);
            int[] index = sheet.index();
            float[] light = inks.light;
            float[] moves = inks.moves;
            float ink = inkY[dotRow];
            float line = lineY[dotRow];
            for (int cell = from; cell < after; cell++) {
                float r = cut.planes[0][to + cell];
                float g = cut.planes[1][to + cell];
                float b = cut.planes[2][to + cell];
                for (int i = cell * perCell; i < (cell + 1) * perCell; i++) {
                    int n = index[sheetRow + dot(i)];
                    float factor =
                            1
                                    + moves[4 * n] * grain[i]
                                    + moves[4 * n + 1] * texture[i]
                                    + moves[4 * n + 2] * (inkX[i] + ink)
                                    + moves[4 * n + 3] * (lineX[i] + line);
                    factor = Math.max(0, factor);
                    r += light[3 * n] * factor;
                    g += light[3 * n + 1] * factor;
                    b += light[3 * n + 2] * factor;
                }
                cut.planes[0][to + cell] = r;
                cut.planes[1][to + cell] = g;
                cut.planes[2][to + cell] = b;
            }
        }
    }
}
