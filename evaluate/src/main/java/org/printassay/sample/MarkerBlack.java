package org.printassay.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.LinearRgb;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.PointPx;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;
import org.printassay.sheet.Marker;
import org.printassay.sheet.MarkerPattern;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * How dark the cells of a marker were read. All markers of a sheet are printed in its black, and
 * stand along its edges: they tell whether black is the same there.
 *
 * @param area of the marker, page millimetres
 * @param light median of its black cells, each read in its middle
 * @param standardError of it, from how far the cells are apart
 */
public record MarkerBlack(RectMm area, LinearRgb light, LinearRgb standardError) {
    /** With fewer black cells in the scan nothing is said; patterns have 28 and more. */
    private static final int FEWEST = 12;

    /** Standard error of a median over that of a mean, of normal errors. */
    private static final double OF_MEDIAN = 1.2533;

    /** What the markers of a sheet tell, as far as the scan shows them. */
    static List<MarkerBlack> of(LocatedSheet located, LocatingImage image) {
        List<MarkerBlack> blacks = new ArrayList<>();
        for (Marker marker : located.sheet().markers()) {
            List<float[]> cells = cells(marker, located, image);
            if (cells.size() >= FEWEST) {
                double[] light = new double[3];
                double[] error = new double[3];
                for (int c = 0; c < light.length; c++) {
                    int channel = c;
                    double[] of = cells.stream().mapToDouble(cell -> cell[channel]).toArray();
                    double middle = Median.of(of);
                    double sigma = Mad.sigma(Arrays.stream(of).map(v -> v - middle).toArray());
                    light[c] = middle;
                    error[c] = OF_MEDIAN * sigma / Math.sqrt(of.length);
                }
                blacks.add(
                        new MarkerBlack(
                                marker.area(),
                                new LinearRgb(light[0], light[1], light[2]),
                                new LinearRgb(error[0], error[1], error[2])));
            }
        }
        return blacks;
    }

    private static List<float[]> cells(Marker marker, LocatedSheet located, LocatingImage image) {
        MarkerPattern pattern = MarkerPattern.of(marker.id());
        RectMm area = marker.area();
        List<float[]> cells = new ArrayList<>();
        for (int row = 0; row < MarkerPattern.CELLS; row++) {
            for (int column = 0; column < MarkerPattern.CELLS; column++) {
                PointMm middle =
                        new PointMm(
                                area.x() + (column + 0.5) / MarkerPattern.CELLS * area.width(),
                                area.y() + (row + 0.5) / MarkerPattern.CELLS * area.height());
                PointPx at = located.placement().toScan(middle);
                int x = (int) Math.floor(at.x() / image.factor());
                int y = (int) Math.floor(at.y() / image.factor());
                boolean inside = x >= 0 && y >= 0 && x < image.width() && y < image.height();
                if (inside && pattern.black(column, row)) {
                    cells.add(
                            new float[] {
                                image.light(0, x, y), image.light(1, x, y), image.light(2, x, y)
                            });
                }
            }
        }
        return cells;
    }
}
