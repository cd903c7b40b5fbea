package org.printassay.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.RgbSpace;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.LocatingImage;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Marker;
import org.printassay.sheet.MarkerPattern;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Sheet;

/** Markers painted into pictures cell by cell, with light that is known (all simulated). */
class MarkerBlackTest {
    /** Light is kept in 65535 steps. */
    private static final double KEPT = 0.5 / 65535;

    private static final double PAPER = 0.9;
    private static final float[] EVEN = even();

    private final Chart chart =
            Charts.create(
                    Recipe.of(
                            Recipe.Kind.SHORT,
                            PageSize.parse("4x6in"),
                            Margins.all(5),
                            RgbSpace.SRGB));
    private final Sheet sheet = chart.sheets().get(0);

    MarkerBlackTest() throws Problem {}

    /** Codes that are light. */
    private static float[] even() {
        float[] even = new float[65536];
        for (int i = 0; i < even.length; i++) {
            even[i] = i / 65535f;
        }
        return even;
    }

    /**
     * A page laid into a picture: first moved, then turned by quarters, so that a place of it is
     * where the tests say.
     */
    private record Laid(double perMm, PointMm corner, boolean turned) implements Placement {
        @Override
        public PointPx toScan(PointMm page) {
            double x = (page.x() + corner.x()) * perMm;
            double y = (page.y() + corner.y()) * perMm;
            return turned ? new PointPx(y, x) : new PointPx(x, y);
        }

        @Override
        public PointMm toPage(PointPx scan) {
            double x = (turned ? scan.y() : scan.x()) / perMm - corner.x();
            double y = (turned ? scan.x() : scan.y()) / perMm - corner.y();
            return new PointMm(x, y);
        }

        @Override
        public double samplesPerMm() {
            return perMm;
        }

        @Override
        public double rotationDegrees() {
            return turned ? 90 : 0;
        }
    }

    /** Light of a black cell of a marker, or of its rim, in a channel. */
    private interface Cell {
        double light(int marker, int column, int row, int channel, boolean rim);
    }

    /** Light of markers that are all as black. */
    private static Cell black(double light) {
        return (marker, column, row, channel, rim) -> light;
    }

    /** What is told of markers on a picture of so many pixels. */
    private List<MarkerBlack> told(int width, int height, int channels, Laid laid, Cell cells)
            throws Problem {
        ScanInfo info =
                new ScanInfo(
                        "made.png",
                        "PNG",
                        width,
                        height,
                        channels,
                        16,
                        Optional.empty(),
                        Optional.empty(),
                        false);
        ScanImage scan =
                new ScanImage() {
                    @Override
                    public ScanInfo info() {
                        return info;
                    }

                    @Override
                    public void stream(RowSink sink) {
                        char[] row = new char[width * channels];
                        for (int y = 0; y < height; y++) {
                            for (int x = 0; x < width; x++) {
                                PointMm at = laid.toPage(new PointPx(x + 0.5, y + 0.5));
                                for (int c = 0; c < channels; c++) {
                                    double light = light(at, c, cells);
                                    row[x * channels + c] = (char) Math.round(65535 * light);
                                }
                            }
                            sink.row(y, row);
                        }
                    }
                };
        CodeLight codes = channel -> EVEN;
        LocatedSheet located =
                new LocatedSheet(chart, sheet, laid, Map.of(), 0, 0, true, List.of(), List.of());
        return MarkerBlack.of(located, LocatingImage.of(scan, codes));
    }

    /** Light at a place of the page. */
    private double light(PointMm at, int channel, Cell cells) {
        for (int k = 0; k < sheet.markers().size(); k++) {
            Marker marker = sheet.markers().get(k);
            double u = (at.x() - marker.area().x()) / marker.area().width() * MarkerPattern.CELLS;
            double v = (at.y() - marker.area().y()) / marker.area().height() * MarkerPattern.CELLS;
            if (u >= 0 && v >= 0 && u < MarkerPattern.CELLS && v < MarkerPattern.CELLS) {
                int column = (int) u;
                int row = (int) v;
                boolean rim = Math.max(Math.abs(u % 1 - 0.5), Math.abs(v % 1 - 0.5)) > 0.25;
                return MarkerPattern.of(marker.id()).black(column, row)
                        ? cells.light(k, column, row, channel, rim)
                        : PAPER;
            }
        }
        return PAPER;
    }

    /** The whole page in pixels. */
    private List<MarkerBlack> told(double perMm, int channels, Cell cells) throws Problem {
        int width = (int) Math.ceil(sheet.page().width() * perMm);
        int height = (int) Math.ceil(sheet.page().height() * perMm);
        Laid laid = new Laid(perMm, new PointMm(0, 0), false);
        return told(width, height, channels, laid, cells);
    }

    /**
     * Each marker has a black of its own here, each channel too, and the rims of cells are lighter,
     * as blur makes them.
     *
     * @param perMm at 25 a millimetre the picture is made smaller before it is read
     */
    @ParameterizedTest
    @CsvSource({"8, false", "8, true", "25, false"})
    void theMiddlesOfCellsGiveTheBlackOfEachMarker(double perMm, boolean turned) throws Problem {
        Cell own =
                (marker, column, row, channel, rim) ->
                        0.005 + 0.002 * marker + 0.0003 * channel + (rim ? 0.1 : 0);
        PointMm corner = new PointMm(3, 1.5);
        int across = (int) Math.ceil((sheet.page().width() + 2 * corner.x()) * perMm);
        int down = (int) Math.ceil((sheet.page().height() + 2 * corner.y()) * perMm);
        List<MarkerBlack> told =
                told(
                        turned ? down : across,
                        turned ? across : down,
                        3,
                        new Laid(perMm, corner, turned),
                        own);
        assertEquals(sheet.markers().size(), told.size());
        for (int k = 0; k < told.size(); k++) {
            assertEquals(sheet.markers().get(k).area(), told.get(k).area());
            for (int c = 0; c < 3; c++) {
                double truth = 0.005 + 0.002 * k + 0.0003 * c;
                assertEquals(truth, told.get(k).light().channel(c), 2 * KEPT, k + ", " + c);
                assertEquals(0, told.get(k).standardError().channel(c), 2 * KEPT);
            }
        }
    }

    @Test
    void aGreyScanSaysTheSameInAllChannels() throws Problem {
        for (MarkerBlack marker : told(8, 1, black(0.02))) {
            assertEquals(0.02, marker.light().r(), 2 * KEPT);
            assertEquals(marker.light().r(), marker.light().g());
            assertEquals(marker.light().r(), marker.light().b());
        }
    }

    /** Of 28 black cells and more, the nine of the corner are fewer than half. */
    @Test
    void dustOnSomeCellsIsNotItsBlack() throws Problem {
        Cell dusty = (marker, column, row, channel, rim) -> column < 3 && row < 3 ? 0.3 : 0.01;
        for (MarkerBlack marker : told(8, 3, dusty)) {
            assertEquals(0.01, marker.light().g(), 2 * KEPT);
        }
    }

    /**
     * The error is told as large as it is: over 720 markers, whose root mean square is itself off
     * by 2.6 % (one standard error).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.0005, 0.004})
    void theErrorIsThatOfTheMedian(double sigma) throws Problem {
        double truth = 0.03;
        List<Double> off = new ArrayList<>();
        double told = 0;
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            double[][][] noise =
                    new double[sheet.markers().size()][MarkerPattern.CELLS][MarkerPattern.CELLS];
            for (double[][] marker : noise) {
                for (double[] row : marker) {
                    for (int i = 0; i < row.length; i++) {
                        row[i] = sigma * random.nextGaussian();
                    }
                }
            }
            Cell noisy = (marker, column, row, channel, rim) -> truth + noise[marker][row][column];
            for (MarkerBlack marker : told(4, 1, noisy)) {
                off.add(marker.light().g() - truth);
                told += Math.pow(marker.standardError().g(), 2);
            }
        }
        double is = off.stream().mapToDouble(v -> v * v).sum();
        assertEquals(720, off.size());
        assertEquals(1, Math.sqrt(told / is), 0.1);
        double bias = off.stream().mapToDouble(v -> v).average().orElseThrow();
        assertEquals(0, bias, 3 * Math.sqrt(is) / off.size());
    }

    /** The frame has 28 cells: a picture that ends after one column and a half of it has eight. */
    @Test
    void aMarkerOfWhichLittleIsSeenSaysNothing() throws Problem {
        double right = sheet.markers().stream().mapToDouble(m -> m.area().right()).max().orElse(0);
        List<Marker> outer =
                sheet.markers().stream().filter(m -> m.area().right() > right - 1).toList();
        double cell = outer.get(0).area().width() / MarkerPattern.CELLS;
        double left = outer.get(0).area().x();
        int perMm = 8;
        int height = (int) Math.ceil(sheet.page().height() * perMm);
        Laid laid = new Laid(perMm, new PointMm(0, 0), false);
        int little = (int) Math.round((left + 1.4 * cell) * perMm);
        List<MarkerBlack> few = told(little, height, 3, laid, black(0.02));
        assertEquals(sheet.markers().size() - outer.size(), few.size());
        assertTrue(few.stream().noneMatch(black -> black.area().right() > right - 1));
        // Seen but for its last column, its black is that of the rest.
        Cell lastIsLighter = (marker, column, row, channel, rim) -> column == 7 ? 0.5 : 0.02;
        int most = (int) Math.round((left + 7.2 * cell) * perMm);
        List<MarkerBlack> all = told(most, height, 3, laid, lastIsLighter);
        assertEquals(sheet.markers().size(), all.size());
        for (MarkerBlack black : all) {
            assertEquals(0.02, black.light().g(), 2 * KEPT);
        }
    }

    /** And beyond its top left corner no light is made up. */
    @Test
    void aMarkerBeyondTheCornerSaysNothing() throws Problem {
        Laid laid = new Laid(8, new PointMm(-50, -70), false);
        List<MarkerBlack> told = told(500, 700, 3, laid, black(0.02));
        assertTrue(!told.isEmpty() && told.size() < sheet.markers().size(), told.toString());
        for (MarkerBlack black : told) {
            assertTrue(black.area().right() > 50 && black.area().bottom() > 70, black.toString());
            assertEquals(0.02, black.light().g(), 2 * KEPT);
        }
    }
}
