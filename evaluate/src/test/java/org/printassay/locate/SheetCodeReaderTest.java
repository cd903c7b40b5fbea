package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import boofcv.struct.image.GrayU8;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.raster.SheetTiff;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/** Simulated scans of a real sheet at 200 samples an inch, on carriages that are not straight. */
class SheetCodeReaderTest {
    private static final double PER_MM = 200 / 25.4;

    /** Of the printable area, which lies in the middle of the page. */
    private static final double DRAWN_PER_MM = 360 / 25.4;

    private static final int SCANS = 16;

    private final Chart chart;
    private final Sheet sheet;
    private final BufferedImage drawn;

    SheetCodeReaderTest() throws Exception {
        chart =
                Charts.create(
                        Recipe.of(
                                Recipe.Kind.SHORT,
                                PageSize.parse("A6"),
                                Margins.all(5),
                                RgbSpace.SRGB));
        sheet = chart.sheets().get(0);
        ByteArrayOutputStream tiff = new ByteArrayOutputStream();
        SheetTiff.write(sheet, RgbSpace.SRGB, 360, tiff);
        drawn = ImageIO.read(new ByteArrayInputStream(tiff.toByteArray()));
    }

    /**
     * A scan turned by any angle, its lines 0.3 mm off at most with a period of 60 to 90 mm, its
     * marker's corners found to a pixel.
     */
    private final class Crooked {
        private final Random random;
        private final double cos;
        private final double sin;
        private final double scale;
        private final double off;
        private final double period;
        private final double phase;
        private final int side;

        Crooked(long seed, double off) {
            random = new Random(seed);
            double turn = 2 * Math.PI * random.nextDouble();
            cos = Math.cos(turn);
            sin = Math.sin(turn);
            scale = 0.95 + 0.1 * random.nextDouble();
            this.off = off;
            period = 60 + 30 * random.nextDouble();
            phase = 2 * Math.PI * random.nextDouble();
            side = (int) Math.ceil(1.1 * PER_MM * page().diagonal());
        }

        private Size page() {
            return new Size(sheet.page().width(), sheet.page().height());
        }

        private double shift(double mm) {
            return off * Math.sin(2 * Math.PI * mm / period + phase);
        }

        PointPx toScan(PointMm at) {
            double x = at.x() - page().width / 2;
            double y = at.y() - page().height / 2;
            double right = scale * (x * cos - y * sin);
            double down = scale * (x * sin + y * cos);
            return new PointPx(
                    side / 2.0 + PER_MM * right, side / 2.0 + PER_MM * (down + shift(down)));
        }

        private double down(double y) {
            double seen = (y - side / 2.0) / PER_MM;
            double down = seen;
            for (int i = 0; i < 10; i++) {
                down = seen - shift(down);
            }
            return down;
        }

        private double light(double x, double down) {
            double right = (x - side / 2.0) / PER_MM;
            double pageX = (right * cos + down * sin) / scale;
            double pageY = (-right * sin + down * cos) / scale;
            int column = (int) Math.floor(drawn.getWidth() / 2.0 + DRAWN_PER_MM * pageX);
            int row = (int) Math.floor(drawn.getHeight() / 2.0 + DRAWN_PER_MM * pageY);
            boolean on =
                    column >= 0 && row >= 0 && column < drawn.getWidth() && row < drawn.getHeight();
            return on ? 30 + 0.8 * drawn.getRaster().getSample(column, row, 1) : 200;
        }

        GrayU8 image() {
            GrayU8 image = new GrayU8(side, side);
            for (int y = 0; y < side; y++) {
                double[] down = {down(y + 0.25), down(y + 0.75)};
                for (int x = 0; x < side; x++) {
                    double sum = 0;
                    for (int k = 0; k < 4; k++) {
                        sum += light(x + (k % 2 + 0.5) / 2, down[k / 2]);
                    }
                    image.set(x, y, (int) Math.round(sum / 4));
                }
            }
            return image;
        }

        List<FoundMarker> markers() {
            List<FoundMarker> found = new ArrayList<>();
            for (Marker marker : sheet.markers()) {
                List<PointPx> corners = new ArrayList<>();
                RectMm area = marker.area();
                for (PointMm corner : PagePlacement.corners(area)) {
                    PointPx at = toScan(corner);
                    corners.add(
                            new PointPx(
                                    at.x() + 2 * random.nextDouble() - 1,
                                    at.y() + 2 * random.nextDouble() - 1));
                }
                found.add(new FoundMarker(marker.id(), corners));
            }
            return found;
        }
    }

    private record Size(double width, double height) {
        double diagonal() {
            return Math.hypot(width, height);
        }
    }

    /** A module is 0.7 mm; a marker's side is 14 of them, the code ends 43 away from it. */
    @Test
    void aCrookedCarriageHidesNoCode() throws Problem {
        List<Long> unread = new ArrayList<>();
        for (long seed = 0; seed < SCANS; seed++) {
            Crooked scan = new Crooked(seed, 0.3);
            List<SheetCodeReader.Read> codes =
                    SheetCodeReader.read(scan.image(), 1, scan.markers());
            if (codes.size() == 1 && codes.get(0).besideMarker()) {
                String text = codes.get(0).text();
                assertEquals(chart.id(), Charts.fromSheetCode("scan", text, Optional.empty()).id());
            } else {
                unread.add(seed);
            }
        }
        assertEquals(List.of(), unread);
    }
}
