package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** The printer sheet on every page that holds it. */
class PrinterSheetTest {
    private static final double HAIR = 1e-6;

    private static Chart chart(String page, String margins) throws Problem {
        return Charts.create(
                Recipe.of(
                        Recipe.Kind.PRINTER,
                        PageSize.parse(page),
                        Margins.parse(margins),
                        RgbSpace.SRGB));
    }

    private static List<Patch> tints(Sheet sheet, boolean along) {
        return sheet.patches().stream()
                .filter(patch -> patch.section() == Section.TINTS)
                .filter(patch -> along == patch.area().height() > patch.area().width())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            value = {
                "A4;10",
                "A4;25",
                "Letter;12",
                "A5;10",
                "A3;12",
                "13x19in;12.7",
                "A2;15",
                "8x10in;12",
                "297x210mm;12",
                "610x1200mm;15"
            },
            delimiter = ';')
    void holdsItsPartsOnOneSheet(String page, String margins) throws Problem {
        Chart chart = chart(page, margins);
        assertEquals(1, chart.sheets().size());
        Sheet sheet = chart.sheets().get(0);
        assertTrue(sheet.markers().size() >= 12, "markers " + sheet.markers().size());
        long windows = count(sheet, Section.PAPER);
        assertTrue(windows >= 8, "windows " + windows);
        for (boolean along : new boolean[] {true, false}) {
            List<Patch> tints = tints(sheet, along);
            assertEquals(14, tints.size());
            Set<Rgb8> colours = new HashSet<>();
            for (Patch tint : tints) {
                double shortSide = Math.min(tint.area().width(), tint.area().height());
                double longSide = Math.max(tint.area().width(), tint.area().height());
                assertTrue(shortSide >= 4.8, tint.toString());
                assertTrue(longSide >= 40, tint.toString());
                colours.add(tint.rgb());
            }
            assertEquals(14, colours.size(), "each tint once each way");
        }
        List<RectMm> even =
                sheet.patches().stream()
                        .filter(patch -> patch.section() == Section.EVENNESS)
                        .map(Patch::area)
                        .toList();
        assertTrue(even.size() >= 27, "evenness tints " + even.size());
        assertTrue(
                spread(even.stream().map(RectMm::x).toList()) > 0.75 * sheet.printable().width());
        assertTrue(
                spread(even.stream().map(RectMm::y).toList()) > 0.6 * sheet.printable().height());
        nothingOverlaps(sheet);
    }

    private static long count(Sheet sheet, Section section) {
        return sheet.patches().stream().filter(patch -> patch.section() == section).count();
    }

    private static double spread(List<Double> values) {
        return values.stream().max(Double::compare).orElseThrow()
                - values.stream().min(Double::compare).orElseThrow();
    }

    private static void nothingOverlaps(Sheet sheet) {
        List<RectMm> things = new ArrayList<>();
        sheet.patches().forEach(patch -> things.add(patch.area()));
        things.add(sheet.code());
        RectMm page = sheet.printable();
        double quiet = SheetLayout.MARKER_MM / SheetLayout.MARKER_MODULES;
        for (int i = 0; i < things.size(); i++) {
            RectMm one = things.get(i);
            assertTrue(one.x() >= page.x() - HAIR && one.right() <= page.right() + HAIR);
            assertTrue(one.y() >= page.y() - HAIR && one.bottom() <= page.bottom() + HAIR);
            for (int j = 0; j < i; j++) {
                assertTrue(Geometry.gap(one, things.get(j)) > -HAIR, one + " " + things.get(j));
            }
            for (Marker marker : sheet.markers()) {
                double gap = Geometry.gap(marker.area(), one);
                assertTrue(gap >= quiet - HAIR, marker + " next to " + one);
            }
        }
        Set<String> ids = new HashSet<>();
        sheet.patches().forEach(patch -> assertTrue(ids.add(patch.id()), patch.id()));
        sheet.patches().forEach(patch -> assertTrue(patch.id().matches("[0-9A-Z]{1,12}")));
    }

    @ParameterizedTest
    @CsvSource({"A6,10,A5", "4x6in,5,A5", "5x7in,12,A5"})
    void tooSmallAPageNamesTheSmallestThatFits(String page, String margin, String fits)
            throws Problem {
        Problem problem = assertThrows(Problem.class, () -> chart(page, margin));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        String message = String.valueOf(problem.getMessage());
        assertTrue(message.endsWith("margins is " + fits + "."), message);
        assertEquals(1, chart(fits, margin).sheets().size());
    }

    @Test
    void theSheetCodeAndTheChartFileRebuildIt() throws Problem {
        Chart third = Charts.create(chart("Letter", "12").recipe(), 3);
        String text = third.sheets().get(0).codeText();
        assertTrue(text.length() <= 35, "room for the strongest correction");
        assertEquals(third, Charts.fromSheetCode("scan.tif", text));
        assertEquals(third, ChartFile.parse("chart.json", ChartFile.write(third)));
    }
}
