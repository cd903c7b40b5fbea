package org.printassay.demo.flatbed;

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
    private final Print print;
    private final RenderedSheet sheet;
    private final Inks inks;
    private final float lid;
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
     * @param planes red, green, blue, row by row
     */
    @SuppressWarnings("ArrayRecordComponent") // Pixels, handed on once.
    record Cut(int x, int y, int width, int height, float[][] planes) {}

    Raster(Print print, Inks inks, double lid, int perCell) {
        this.print = print;
        this.sheet = print.sheet();
        this.inks = inks;
        this.lid = (float) lid;
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

    Cut cut(int x, int y, int width, int height) {
        Cut cut = new Cut(x, y, width, height, new float[3][width * height]);
        Unevenness on = uneven ? new Unevenness(cut) : null;
        double pitch = 1 / cellsPerMm;
        for (int j = 0; j < height; j++) {
            double sheetY = print.sheetY((y + j + 0.5) * pitch);
            boolean onSheetY = sheetY >= 0 && sheetY <= sheet.heightMm();
            for (int i = 0; i < width; i++) {
                double sheetX = print.sheetX((x + i + 0.5) * pitch);
                int at = j * width + i;
                if (!onSheetY || sheetX < 0 || sheetX > sheet.widthMm()) {
                    fill(cut, at, lid, lid, lid);
                } else if (x + i < 0
                        || y + j < 0
                        || (x + i) * perCell >= sheet.width()
                        || (y + j) * perCell >= sheet.height()) {
                    fill(cut, at, inks.paper[0], inks.paper[1], inks.paper[2]);
                } else if (on == null) {
                    flat(cut, at, x + i, y + j);
                } else {
                    on.cell(at, i, j);
                }
            }
        }
        departures.forEach(departure -> apply(departure, cut));
        return cut;
    }

    private static void fill(Cut cut, int at, float r, float g, float b) {
        cut.planes[0][at] = r;
        cut.planes[1][at] = g;
        cut.planes[2][at] = b;
    }

    private void flat(Cut cut, int at, int cellX, int cellY) {
        int[] index = sheet.index();
        float[] light = inks.light;
        float r = 0;
        float g = 0;
        float b = 0;
        for (int j = 0; j < perCell; j++) {
            int row = Math.min(cellY * perCell + j, sheet.height() - 1) * sheet.width();
            for (int i = 0; i < perCell; i++) {
                int n = 3 * index[row + Math.min(cellX * perCell + i, sheet.width() - 1)];
                r += light[n];
                g += light[n + 1];
                b += light[n + 2];
            }
        }
        float share = 1f / (perCell * perCell);
        fill(cut, at, r * share, g * share, b * share);
    }

    private void apply(Departure departure, Cut cut) {
        RectMm area = departure.onPage;
        int left = Math.max(cut.x, (int) Math.round(area.x() * cellsPerMm));
        int right = Math.min(cut.x + cut.width, (int) Math.round(area.right() * cellsPerMm));
        int top = Math.max(cut.y, (int) Math.round(area.y() * cellsPerMm));
        int bottom = Math.min(cut.y + cut.height, (int) Math.round(area.bottom() * cellsPerMm));
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                int at = (y - cut.y) * cut.width + x - cut.x;
                for (int c = 0; c < 3; c++) {
                    cut.planes[c][at] *= departure.factors[c];
                }
            }
        }
    }

    /** Grain, texture, drift, bands and lines at every dot of one cut. */
    private final class Unevenness {
        private final Cut cut;
        private final int[][] grainX;
        private final int[][] grainY;
        private final int[][] textureX;
        private final int[][] textureY;
        private final float[] inkX;
        private final float[] inkY;
        private final float[] lineX;
        private final float[] lineY;

        Unevenness(Cut cut) {
            this.cut = cut;
            double dotMm = 1 / cellsPerMm / perCell;
            int columns = cut.width * perCell;
            int rows = cut.height * perCell;
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
        }

        void cell(int at, int cellX, int cellY) {
            int[] index = sheet.index();
            float r = 0;
            float g = 0;
            float b = 0;
            for (int j = cellY * perCell; j < (cellY + 1) * perCell; j++) {
                int row = Math.min(cut.y * perCell + j, sheet.height() - 1) * sheet.width();
                for (int i = cellX * perCell; i < (cellX + 1) * perCell; i++) {
                    int n = index[row + Math.min(cut.x * perCell + i, sheet.width() - 1)];
                    float grain =
                            print.grain()
                                    .at(grainX[0][i], grainY[0][j], grainX[1][i], grainY[1][j]);
                    float texture =
                            print.texture()
                                    .at(
                                            textureX[0][i],
                                            textureY[0][j],
                                            textureX[1][i],
                                            textureY[1][j]);
                    float factor =
                            1
                                    + inks.grain[n] * grain
                                    + inks.texture[n] * texture
                                    + inks.ink[n] * (inkX[i] + inkY[j])
                                    + inks.line[n] * (lineX[i] + lineY[j]);
                    factor = Math.max(0, factor);
                    r += inks.light[3 * n] * factor;
                    g += inks.light[3 * n + 1] * factor;
                    b += inks.light[3 * n + 2] * factor;
                }
            }
            float share = 1f / (perCell * perCell);
            fill(cut, at, r * share, g * share, b * share);
        }
    }
}
