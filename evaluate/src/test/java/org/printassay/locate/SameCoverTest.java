package org.printassay.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanImage;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Scans are simulated: codes of the file on a black that is not quite black, noise, and a cover.
 */
class SameCoverTest {
    private static final double PER_MM = 5.6;
    private static final int BLACK = 28;
    private static final int PAPER = 240;

    private static final CodeLight SRGB =
            channel -> {
                float[] curve = new float[65536];
                for (int i = 0; i < curve.length; i++) {
                    curve[i] = (float) RgbSpace.SRGB.decode(i / 65535.0);
                }
                return curve;
            };

    /** Nothing turned, nothing moved. */
    private static final Placement PLACED =
            new Placement() {
                @Override
                public PointPx toScan(PointMm page) {
                    return new PointPx(PER_MM * page.x(), PER_MM * page.y());
                }

                @Override
                public PointMm toPage(PointPx scan) {
                    return new PointMm(scan.x() / PER_MM, scan.y() / PER_MM);
                }

                @Override
                public double samplesPerMm() {
                    return PER_MM;
                }

                @Override
                public double rotationDegrees() {
                    return 0;
                }
            };

    private static Chart chart() throws Exception {
        return Charts.create(
                new Recipe(
                        Recipe.Kind.PAPER,
                        PageSize.parse("A4"),
                        Margins.of(List.of(10.0)),
                        RgbSpace.SRGB,
                        Recipe.Kind.PAPER.currentLayout()));
    }

    private static StepCheck.Result look(Chart chart, RectMm covered, int[] cover)
            throws Exception {
        return look(chart, covered, cover, 0);
    }

    /**
     * A look at a scan.
     *
     * @param grain of the cover, codes, in spots of a few millimetres
     */
    private static StepCheck.Result look(Chart chart, RectMm covered, int[] cover, double grain)
            throws Exception {
        Sheet sheet = chart.sheets().get(0);
        int width = (int) (PER_MM * sheet.page().width());
        int height = (int) (PER_MM * sheet.page().height());
        char[][] rows = new char[height][3 * width];
        for (char[] row : rows) {
            Arrays.fill(row, (char) (257 * PAPER));
        }
        for (Patch patch : sheet.patches()) {
            Rgb8 rgb = patch.rgb();
            int[] codes = {printed(rgb.r()), printed(rgb.g()), printed(rgb.b())};
            fill(rows, codes, patch.area());
        }
        fill(rows, cover, covered);
        roughen(rows, covered, grain);
        Random noise = new Random(7);
        for (char[] row : rows) {
            for (int i = 0; i < row.length; i++) {
                row[i] += (char) (257 * 1.5 * noise.nextGaussian());
            }
        }
        ScanInfo info =
                new ScanInfo(
                        "made.tif",
                        "TIFF",
                        width,
                        height,
                        3,
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
                        for (int y = 0; y < rows.length; y++) {
                            sink.row(y, rows[y]);
                        }
                    }
                };
        return StepCheck.of(LocatingImage.of(scan, SRGB), sheet, chart.space(), PLACED);
    }

    private static int printed(int code) {
        return BLACK + (PAPER - BLACK) * code / 255;
    }

    private static void fill(char[][] rows, int[] codes, RectMm area) {
        int bottom = Math.min(rows.length, (int) Math.round(PER_MM * area.bottom()));
        for (int y = (int) Math.round(PER_MM * area.y()); y < bottom; y++) {
            int right = Math.min(rows[y].length / 3, (int) Math.round(PER_MM * area.right()));
            for (int x = (int) Math.round(PER_MM * area.x()); x < right; x++) {
                for (int c = 0; c < 3; c++) {
                    rows[y][3 * x + c] = (char) (257 * codes[c]);
                }
            }
        }
    }

    /** Waves of several lengths in both directions. */
    private static void roughen(char[][] rows, RectMm area, double grain) {
        int bottom = Math.min(rows.length, (int) Math.round(PER_MM * area.bottom()));
        for (int y = (int) Math.round(PER_MM * area.y()); y < bottom && grain > 0; y++) {
            int right = Math.min(rows[y].length / 3, (int) Math.round(PER_MM * area.right()));
            for (int x = (int) Math.round(PER_MM * area.x()); x < right; x++) {
                double off = Math.sin(x / 11.0 + 2 * Math.sin(y / 23.0));
                off += Math.sin(y / 13.0 + 2 * Math.sin(x / 29.0));
                for (int c = 0; c < 3; c++) {
                    rows[y][3 * x + c] += (char) (257 * grain * off);
                }
            }
        }
    }

    /** A lid with spots, a cloth: nothing looks just like the next. */
    @ParameterizedTest
    @CsvSource({"63, 4", "158, 8", "100, 6"})
    void whatCoversNeedNotBeFlat(int code, double grain) throws Exception {
        Chart chart = chart();
        RectMm cover = new RectMm(185, 0, 25, 297);
        List<Patch> unlike = look(chart, cover, new int[] {code, code, code}, grain).unlike();
        long missed =
                chart.sheets().get(0).patches().stream()
                        .filter(patch -> patch.area().x() >= cover.x() && !unlike.contains(patch))
                        .count();
        assertTrue(missed <= 1, missed + " under it are not told");
    }

    @ParameterizedTest
    @CsvSource({
        "60, 120, 136, 196, 48, 48, 48",
        "60, 120, 136, 196, 232, 232, 230",
        "60, 120, 136, 196, 240, 210, 90",
        "0, 90, 66, 220, 180, 130, 115",
        "185, 0, 210, 297, 63, 63, 63",
        "185, 0, 210, 297, 231, 231, 231",
        "0, 0, 25, 297, 63, 63, 63",
        "0, 257, 210, 297, 247, 247, 247"
    })
    void whatLiesUnderACoverIsToldWhole(
            double left, double top, double right, double bottom, int r, int g, int b)
            throws Exception {
        Chart chart = chart();
        RectMm cover = new RectMm(left, top, right - left, bottom - top);
        List<Patch> unlike = look(chart, cover, new int[] {r, g, b}).unlike();
        List<String> missed = new ArrayList<>();
        int under = 0;
        for (Patch patch : chart.sheets().get(0).patches()) {
            PointMm at = patch.area().centre();
            if (cover.isNear(new RectMm(at.x(), at.y(), 0, 0), 0)) {
                under++;
                if (!unlike.contains(patch)) {
                    missed.add(patch.id());
                }
            }
        }
        assertEquals(List.of(), missed);
        int more = unlike.size() - under;
        assertTrue(more <= 0.3 * under, more + " more than " + under);
    }

    @Test
    void aSheetWithNothingOnItIsAllRight() throws Exception {
        assertEquals(List.of(), look(chart(), new RectMm(0, 0, 0, 0), new int[3]).unlike());
    }
}
