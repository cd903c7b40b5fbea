package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import boofcv.struct.image.GrayU8;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.sheet.MarkerPattern;

/**
 * Markers drawn here by area coverage at known sub-pixel places; the worst corner measured is 0.11
 * pixels off.
 */
class MarkerDetectorTest {
    private static final double CORNER_PX = 0.12;

    /** Draws a marker by area coverage, each pixel from 16 x 16 points. */
    private static GrayU8 drawn(int id, double left, double top, double side, double degrees) {
        MarkerPattern pattern = MarkerPattern.of(id);
        GrayU8 image = new GrayU8(200, 200);
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        for (int y = 0; y < image.height; y++) {
            for (int x = 0; x < image.width; x++) {
                int dark = 0;
                for (int k = 0; k < 256; k++) {
                    double px = x + (k % 16 + 0.5) / 16 - left;
                    int fine = k / 16;
                    double py = y + (fine + 0.5) / 16 - top;
                    double u = (cos * px + sin * py) / side * MarkerPattern.CELLS;
                    double v = (cos * py - sin * px) / side * MarkerPattern.CELLS;
                    if (u >= 0
                            && v >= 0
                            && u < MarkerPattern.CELLS
                            && v < MarkerPattern.CELLS
                            && pattern.black((int) u, (int) v)) {
                        dark++;
                    }
                }
                image.set(x, y, 240 - 220 * dark / 256);
            }
        }
        return image;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 17, 44, 90, 133, -90})
    void cornersAreWhereTheyWereDrawnClockwiseFromTheTopLeft(double degrees) {
        for (double offset : new double[] {0, 0.25, 0.5, 0.75}) {
            double left = 90 + offset;
            double top = 91 - offset;
            double side = 56.3;
            List<FoundMarker> found =
                    new MarkerDetector().detect(drawn(107, left, top, side, degrees), 1);
            assertEquals(1, found.size());
            assertEquals(107, found.get(0).id());
            double cos = Math.cos(Math.toRadians(degrees));
            double sin = Math.sin(Math.toRadians(degrees));
            double[][] corners = {{0, 0}, {side, 0}, {side, side}, {0, side}};
            for (int i = 0; i < 4; i++) {
                PointPx at = found.get(0).corners().get(i);
                double x = left + cos * corners[i][0] - sin * corners[i][1];
                double y = top + sin * corners[i][0] + cos * corners[i][1];
                assertEquals(x, at.x(), CORNER_PX, "x of corner " + i);
                assertEquals(y, at.y(), CORNER_PX, "y of corner " + i);
            }
        }
    }

    @Test
    void everyPatternIsReadAsItsOwnId() {
        for (int id = 100; id < 1000; id += 37) {
            List<FoundMarker> found = new MarkerDetector().detect(drawn(id, 60.3, 70.6, 57, 3), 1);
            assertEquals(List.of(id), found.stream().map(FoundMarker::id).toList());
        }
    }
}
