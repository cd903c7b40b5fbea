package org.printassay.sample;

import org.printassay.colour.LinearRgb;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** Turns the small image of a scan into page coordinates. */
final class PageImageBuilder {
    private static final double STEP_MM = 1;
    private static final double AROUND_MM = 30;
    private static final int POINTS = 4;

    /** A cell whose centre is further out of the scan than this has no part in it. */
    private static final double OUT_MM = 4;

    private PageImageBuilder() {}

    static PageImage build(LocatingImage image, Placement placement, RectMm page) {
        int columns = (int) Math.ceil((page.width() + 2 * AROUND_MM) / STEP_MM);
        int rows = (int) Math.ceil((page.height() + 2 * AROUND_MM) / STEP_MM);
        PageImage result =
                new PageImage(new PointMm(-AROUND_MM, -AROUND_MM), STEP_MM, columns, rows);
        double[] sums = new double[3];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                if (mean(image, placement, result.centre(column, row), sums)) {
                    result.set(column, row, new LinearRgb(sums[0], sums[1], sums[2]));
                }
            }
        }
        return result;
    }

    /** Mean light of a cell into {@code sums} (modified); false when the scan does not reach it. */
    private static boolean mean(
            LocatingImage image, Placement placement, PointMm centre, double[] sums) {
        PointPx middle = placement.toScan(centre);
        double out = OUT_MM * placement.samplesPerMm();
        if (middle.x() < -out
                || middle.y() < -out
                || middle.x() > image.width() * image.factor() + out
                || middle.y() > image.height() * image.factor() + out) {
            return false;
        }
        int known = 0;
        sums[0] = 0;
        sums[1] = 0;
        sums[2] = 0;
        for (int j = 0; j < POINTS; j++) {
            for (int i = 0; i < POINTS; i++) {
                PointPx at =
                        placement.toScan(
                                new PointMm(
                                        centre.x() + ((i + 0.5) / POINTS - 0.5) * STEP_MM,
                                        centre.y() + ((j + 0.5) / POINTS - 0.5) * STEP_MM));
                int x = (int) Math.floor(at.x() / image.factor());
                int y = (int) Math.floor(at.y() / image.factor());
                if (x < 0 || y < 0 || x >= image.width() || y >= image.height()) {
                    continue;
                }
                known++;
                for (int c = 0; c < 3; c++) {
                    sums[c] += image.light(c, x, y);
                }
            }
        }
        for (int c = 0; c < 3 && known > 0; c++) {
            sums[c] /= known;
        }
        return known > 0;
    }
}
