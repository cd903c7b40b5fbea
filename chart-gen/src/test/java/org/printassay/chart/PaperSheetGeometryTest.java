package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.ThrowingConsumer;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** What every sheet of every page must keep to. */
class PaperSheetGeometryTest {
    private static final List<String> PAGES =
            List.of(
                    "A4;10",
                    "A4;12",
                    "A4;25",
                    "A4;12,12,40,12",
                    "Letter;12",
                    "A3;12",
                    "13x19in;12.7",
                    "A2;15",
                    "8x10in;12",
                    "297x210mm;12",
                    "420x297mm;12");

    /** Below this, a difference is arithmetic. */
    private static final double HAIR = 1e-6;

    private static List<DynamicTest> forEachSheet(ThrowingConsumer<Sheet> test) throws Problem {
        List<DynamicTest> tests = new ArrayList<>();
        for (String page : PAGES) {
            String[] parts = page.split(";", -1);
            for (Sheet sheet : PaperSheetFitTest.chart(parts[0], parts[1]).sheets()) {
                tests.add(
                        DynamicTest.dynamicTest(
                                page + " sheet " + sheet.number(), () -> test.accept(sheet)));
            }
        }
        return tests;
    }

    @TestFactory
    List<DynamicTest> patchEdgesAreWholeDotsOfThe300DpiPicture() throws Problem {
        return forEachSheet(
                sheet -> {
                    RectMm from = sheet.printable();
                    assertWhole(from.width());
                    assertWhole(from.height());
                    for (Patch patch : sheet.patches()) {
                        RectMm area = patch.area();
                        assertWhole(area.x() - from.x());
                        assertWhole(area.y() - from.y());
                        assertWhole(area.width());
                        assertWhole(area.height());
                    }
                });
    }

    private static void assertWhole(double mm) {
        double dots = mm * 300 / 25.4;
        assertEquals(Math.rint(dots), dots, HAIR);
    }

    @TestFactory
    List<DynamicTest> nothingOverlapsAndNothingLeavesThePrintableArea() throws Problem {
        return forEachSheet(
                sheet -> {
                    List<RectMm> things = new ArrayList<>();
                    sheet.patches().forEach(patch -> things.add(patch.area()));
                    sheet.markers().forEach(marker -> things.add(marker.area()));
                    things.add(sheet.code());
                    for (Artwork thing : sheet.artwork()) {
                        if (thing instanceof Artwork.Vignette vignette) {
                            things.add(vignette.area());
                        } else if (thing instanceof Artwork.SlantedSquare edges) {
                            things.add(edges.area());
                        }
                    }
                    RectMm page = sheet.printable();
                    for (int i = 0; i < things.size(); i++) {
                        RectMm one = things.get(i);
                        assertTrue(one.x() >= page.x() - HAIR && one.y() >= page.y() - HAIR);
                        assertTrue(one.right() <= page.right() + HAIR, one.toString());
                        assertTrue(one.bottom() <= page.bottom() + HAIR, one.toString());
                        for (int j = 0; j < i; j++) {
                            assertTrue(
                                    Geometry.gap(one, things.get(j)) > -HAIR,
                                    one + " overlaps " + things.get(j));
                        }
                    }
                });
    }

    @TestFactory
    List<DynamicTest> markersAndCodeHaveTheirQuietBorder() throws Problem {
        return forEachSheet(
                sheet -> {
                    List<RectMm> ink = ink(sheet);
                    double markerQuiet = SheetLayout.MARKER_MM / SheetLayout.MARKER_MODULES;
                    for (Marker marker : sheet.markers()) {
                        for (RectMm area : ink) {
                            double gap = Geometry.gap(marker.area(), area);
                            assertTrue(gap >= markerQuiet - HAIR, marker + " next to " + area);
                        }
                    }
                    // ISO/IEC 18004: four modules of quiet zone.
                    double codeQuiet = 4 * SheetLayout.CODE_MM / SheetLayout.CODE_MODULES;
                    List<RectMm> around = new ArrayList<>(ink);
                    sheet.markers().forEach(marker -> around.add(marker.area()));
                    for (RectMm area : around) {
                        assertTrue(Geometry.gap(sheet.code(), area) >= codeQuiet - HAIR);
                    }
                });
    }

    /** Everything dark or coloured; text by a generous box. */
    private static List<RectMm> ink(Sheet sheet) {
        List<RectMm> ink = new ArrayList<>();
        for (Patch patch : sheet.patches()) {
            if (patch.section() != Section.PAPER) {
                ink.add(patch.area());
            }
        }
        for (Artwork thing : sheet.artwork()) {
            if (thing instanceof Artwork.Field field) {
                ink.add(field.area());
            } else if (thing instanceof Artwork.Vignette vignette) {
                ink.add(vignette.area());
            } else if (thing instanceof Artwork.SlantedSquare edges) {
                ink.add(edges.area());
            } else if (thing instanceof Artwork.Text text) {
                double height = text.sizePt() * 25.4 / 72;
                double width = 0.62 * height * text.text().length();
                ink.add(
                        new RectMm(
                                text.anchor().x() - width * (text.align() + 1) / 2,
                                text.anchor().y() - height * 0.75,
                                width,
                                height));
            } else if (thing instanceof Artwork.Rule rule) {
                ink.add(
                        new RectMm(
                                Math.min(rule.from().x(), rule.to().x()),
                                Math.min(rule.from().y(), rule.to().y()),
                                Math.abs(rule.from().x() - rule.to().x()),
                                Math.abs(rule.from().y() - rule.to().y())));
            }
        }
        return ink;
    }

    @TestFactory
    List<DynamicTest> markersAreManyLargeAndTellTheirSheet() throws Problem {
        return forEachSheet(
                sheet -> {
                    assertTrue(sheet.markers().size() >= 12, sheet.markers().size() + " markers");
                    for (int i = 0; i < sheet.markers().size(); i++) {
                        Marker marker = sheet.markers().get(i);
                        assertEquals(SheetLayout.markerId(sheet.number(), i), marker.id());
                        assertEquals(sheet.number(), SheetLayout.sheetOfMarker(marker.id()));
                        assertTrue(marker.id() < 1000, "the dictionary has 1000");
                        assertTrue(marker.area().width() >= 8 && marker.area().width() <= 10);
                        assertEquals(i == 0, SheetLayout.isCodeMarker(marker.id()));
                    }
                    RectMm area = sheet.printable();
                    for (PointMm corner : corners(area)) {
                        double nearest =
                                sheet.markers().stream()
                                        .mapToDouble(m -> Geometry.distance(corner, m.area()))
                                        .min()
                                        .orElseThrow();
                        assertTrue(nearest < 6, "a marker near " + corner + ": " + nearest);
                    }
                });
    }

    @TestFactory
    List<DynamicTest> sheetCodeStandsInTheSamePlaceBesideItsMarker() throws Problem {
        return forEachSheet(
                sheet -> {
                    RectMm marker = sheet.markers().get(0).area();
                    RectMm code = sheet.code();
                    assertEquals(SheetLayout.CODE_RIGHT_OF_MARKER_MM, code.x() - marker.x(), HAIR);
                    assertEquals(SheetLayout.CODE_BELOW_MARKER_MM, code.y() - marker.y(), HAIR);
                    assertEquals(SheetLayout.CODE_MM, code.width(), HAIR);
                    assertEquals(20, code.width(), 0.5);
                    assertEquals(SheetLayout.MARKER_MM, marker.width(), HAIR);
                });
    }

    @TestFactory
    List<DynamicTest> paperWindowsAreManyAndEverywhere() throws Problem {
        return forEachSheet(
                sheet -> {
                    List<Patch> windows =
                            sheet.patches().stream()
                                    .filter(patch -> patch.section() == Section.PAPER)
                                    .toList();
                    assertTrue(windows.size() >= 16, windows.size() + " windows");
                    RectMm area = sheet.printable();
                    double reach = 0.25 * Math.hypot(area.width(), area.height());
                    List<PointMm> places = new ArrayList<>(corners(area));
                    places.add(area.centre());
                    for (int i = 1; i < 8; i++) {
                        double y = area.y() + area.height() * i / 8;
                        places.add(new PointMm(area.x(), y));
                        places.add(new PointMm(area.right(), y));
                        places.add(new PointMm(area.centre().x(), y));
                    }
                    for (PointMm place : places) {
                        double nearest =
                                windows.stream()
                                        .mapToDouble(w -> Geometry.distance(place, w.area()))
                                        .min()
                                        .orElseThrow();
                        assertTrue(nearest < reach, "no window near " + place + ": " + nearest);
                    }
                });
    }

    private static List<PointMm> corners(RectMm area) {
        return List.of(
                new PointMm(area.x(), area.y()),
                new PointMm(area.right(), area.y()),
                new PointMm(area.x(), area.bottom()),
                new PointMm(area.right(), area.bottom()));
    }

    /** More wet ink than this makes paper cockle: common practice, no source. */
    @TestFactory
    List<DynamicTest> solidBlackCoversAtMostTwelvePercent() throws Problem {
        return forEachSheet(
                sheet -> {
                    double black = sheet.code().width() * sheet.code().height();
                    for (Marker marker : sheet.markers()) {
                        black += marker.area().width() * marker.area().height();
                    }
                    for (Patch patch : sheet.patches()) {
                        if (patch.rgb().equals(Rgb8.grey(0))) {
                            black += patch.area().width() * patch.area().height();
                        }
                    }
                    for (Artwork thing : sheet.artwork()) {
                        if (thing instanceof Artwork.Field field
                                && field.rgb().equals(Rgb8.grey(0))) {
                            black += field.area().width() * field.area().height();
                        }
                    }
                    double page = sheet.page().width() * sheet.page().height();
                    assertTrue(black / page <= 0.12, "black " + black / page);
                });
    }

    /** Scanners spread light over 3-15 mm; copies must not share a neighbourhood. */
    @TestFactory
    List<DynamicTest> copiesOfALevelAreFarApart() throws Problem {
        return forEachSheet(
                sheet -> {
                    Map<Rgb8, List<PointMm>> copies = new HashMap<>();
                    for (Patch patch : sheet.patches()) {
                        if (patch.section() == Section.SHADOWS
                                || patch.section() == Section.HIGHLIGHTS
                                || patch.section() == Section.NEUTRAL_RAMP) {
                            copies.computeIfAbsent(patch.rgb(), rgb -> new ArrayList<>())
                                    .add(patch.area().centre());
                        }
                    }
                    copies.forEach(
                            (rgb, places) -> {
                                for (int i = 0; i < places.size(); i++) {
                                    for (int j = 0; j < i; j++) {
                                        double distance =
                                                Geometry.distance(places.get(i), places.get(j));
                                        assertTrue(distance > 35, rgb + " twice in " + distance);
                                    }
                                }
                            });
                });
    }

    /** No scattered patch stands in a corner that is nearly all dark or nearly all light. */
    @TestFactory
    List<DynamicTest> neighbourhoodsOfScatteredPatchesAreMixed() throws Problem {
        return forEachSheet(
                sheet -> {
                    for (Patch patch : sheet.patches()) {
                        boolean scattered =
                                (patch.section() == Section.SHADOWS
                                                || patch.section() == Section.HIGHLIGHTS)
                                        && !patch.id().endsWith("A");
                        if (!scattered) {
                            continue;
                        }
                        double light = 0;
                        int count = 0;
                        for (Patch other : sheet.patches()) {
                            double distance =
                                    Geometry.distance(patch.area().centre(), other.area().centre());
                            if (distance > 0 && distance < 2.3 * patch.area().width()) {
                                light += lightness(other.rgb());
                                count++;
                            }
                        }
                        double mean = light / count;
                        assertTrue(count >= 4, patch.id() + " stands alone");
                        assertTrue(mean > 15 && mean < 92, patch.id() + " among " + mean);
                    }
                });
    }

    private static double lightness(Rgb8 rgb) {
        return Lab.lightness(RgbSpace.SRGB.toXyz(rgb).y() / 100);
    }

    /** Of patches whose place matters none stands at the outermost left or right of the mosaic. */
    @TestFactory
    List<DynamicTest> endsOfRowsHoldColours() throws Problem {
        return forEachSheet(
                sheet -> {
                    double left = Double.POSITIVE_INFINITY;
                    double right = 0;
                    for (Patch patch : sheet.patches()) {
                        left = Math.min(left, patch.area().x());
                        right = Math.max(right, patch.area().right());
                    }
                    for (Patch patch : sheet.patches()) {
                        boolean atEnd =
                                patch.area().x() < left + HAIR
                                        || patch.area().right() > right - HAIR;
                        if (atEnd) {
                            assertTrue(
                                    List.of(Section.CUBE, Section.SKIN, Section.HUE_RAMPS)
                                                    .contains(patch.section())
                                            || isAtHead(sheet, patch),
                                    patch.toString());
                        }
                    }
                });
    }

    /** The black field of narrow pages ends at the right; its patches stand inside it. */
    private static boolean isAtHead(Sheet sheet, Patch patch) {
        return patch.area().y() < sheet.code().bottom();
    }
}
