package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.recipe.RecipeFile;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** Sheets of recipes that users edit, and the short sheet that is made the same way. */
class EditedSheetTest {
    private static final double HAIR = 1e-6;

    private static final String EVERYTHING =
            """
            {"section": "neutral-ramp", "steps": 21, "copies": 2},
            {"section": "shadows", "copies": 3},
            {"section": "highlights", "reach": 32, "every": 4},
            {"section": "cube", "steps": 4, "patchMm": [8, 6]},
            {"section": "hue-ramps", "columns": 9},
            {"section": "skin", "copies": 2},
            {"section": "stray-light"},
            {"section": "edges"},
            {"section": "vignettes"},
            {"section": "tints", "patchMm": [9, 60]},
            {"section": "evenness", "copies": 4},
            {"section": "own", "rgb": [[1, 2, 3], [250, 120, 0]]},
            {"section": "own", "lab": [[50, 20, 10], [60, 0, 0]], "copies": 2}
            """;

    private static String recipe(String page, String margin, String space, String sections) {
        return """
               {
                 "schema": "printassay/recipe/1",
                 "kind": "edited",
                 "page": "%s",
                 "marginsMm": [%s],
                 "space": "%s",
                 "title": "My sheet",
                 "sections": [
                   %s
                 ]
               }
               """
                .formatted(page, margin, space, sections);
    }

    private static Chart chart(String text) throws Problem {
        Recipe none =
                Recipe.paper(PageSize.parse("A4"), new Margins(10, 10, 10, 10), RgbSpace.SRGB);
        return Charts.create(RecipeFile.parse("my.json", text, none));
    }

    private static void isSound(Chart chart) {
        Set<String> ids = new HashSet<>();
        for (Sheet sheet : chart.sheets()) {
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
            assertTrue(sheet.markers().size() >= 12, "markers " + sheet.markers().size());
            sheet.patches().forEach(patch -> assertTrue(ids.add(patch.id()), patch.id()));
            sheet.patches().forEach(p -> assertTrue(p.id().matches("[0-9A-Z]{1,12}"), p.id()));
            assertTrue(has(sheet, Section.PAPER) && has(sheet, Section.SOLID_BLACK));
        }
    }

    private static boolean has(Sheet sheet, Section section) {
        return sheet.patches().stream().anyMatch(patch -> patch.section() == section);
    }

    @ParameterizedTest
    @CsvSource({"A4,10", "Letter,12.7", "A3,12", "A2,15", "A5,8", "8x10in,10", "610x1500mm,20"})
    void everySectionFitsSomewhereAndSpillsOn(String page, String margin) throws Problem {
        Chart chart = chart(recipe(page, margin, "srgb", EVERYTHING));
        isSound(chart);
        Set<Section> there = new TreeSet<>();
        chart.sheets().forEach(s -> s.patches().forEach(p -> there.add(p.section())));
        assertEquals(Section.values().length, there.size(), there.toString());
        List<String> texts = chart.sheets().stream().map(Sheet::codeText).toList();
        assertEquals(texts.size(), new HashSet<>(texts).size());
        assertEquals("My sheet", chart.recipe().title());
    }

    @Test
    void aSmallPageTakesMoreSheetsAndLosesNothing() throws Problem {
        Chart small = chart(recipe("A5", "8", "srgb", EVERYTHING));
        Chart large = chart(recipe("A2", "15", "srgb", EVERYTHING));
        assertTrue(small.sheets().size() > large.sheets().size());
        assertEquals(content(large), content(small));
    }

    private static Set<String> content(Chart chart) {
        Set<String> ids = new TreeSet<>();
        for (Sheet sheet : chart.sheets()) {
            for (Patch patch : sheet.patches()) {
                boolean own =
                        patch.section() != Section.PAPER && patch.section() != Section.SOLID_BLACK;
                if (own) {
                    ids.add(patch.id() + " " + patch.rgb());
                }
            }
        }
        return ids;
    }

    @Test
    void theChartFileRebuildsItAndTheCodeAloneDoesNot() throws Problem {
        Chart chart = Charts.create(chart(recipe("A5", "8", "romm", EVERYTHING)).recipe(), 3);
        Chart read = ChartFile.parse("chart.json", ChartFile.write(chart));
        assertEquals(chart, read);
        Chart first = Charts.create(chart.recipe());
        for (Sheet sheet : chart.sheets()) {
            String text = sheet.codeText();
            assertTrue(text.length() <= 35, "room for the strongest correction");
            assertEquals(chart, Charts.fromSheetCode("scan.tif", text, Optional.of(first)));
            assertEquals(sheet.number(), Charts.sheetNumber("scan.tif", text));
            Problem missing =
                    assertThrows(Problem.class, () -> Charts.fromSheetCode("scan.tif", text));
            assertEquals(Problem.Kind.CHART, missing.kind());
            assertTrue(String.valueOf(missing.getMessage()).contains("--chart chart.json"));
        }
    }

    @Test
    void anotherChartFileIsRefused() throws Problem {
        Chart mine = chart(recipe("A4", "10", "srgb", "{\"section\": \"cube\"}"));
        Chart other = chart(recipe("A4", "10", "srgb", "{\"section\": \"skin\"}"));
        String text = mine.sheets().get(0).codeText();
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> Charts.fromSheetCode("scan.tif", text, Optional.of(other)));
        String message = String.valueOf(problem.getMessage());
        assertTrue(message.contains(mine.id()) && message.contains(other.id()), message);
    }

    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void labColoursGoThroughTheChartsSpace(RgbSpace space) throws Problem {
        Lab wanted = new Lab(50, 20, 10);
        Chart chart =
                chart(
                        recipe(
                                "A4",
                                "10",
                                space.key(),
                                "{\"section\": \"own\", \"lab\": [[50, 20, 10]]}"));
        Rgb8 rgb =
                chart.sheets().get(0).patches().stream()
                        .filter(patch -> patch.section() == Section.OWN)
                        .findFirst()
                        .orElseThrow()
                        .rgb();
        // Half a code of the widest encoding is about 0.6.
        assertEquals(0, DeltaE.ciede2000(wanted, space.toLab(rgb)), 0.7);
    }

    @Test
    void coloursOutsideTheEncodingAreTold(@TempDir Path folder) throws Problem, IOException {
        Path file = folder.resolve("my.json");
        String section = "{\"section\": \"own\", \"lab\": [[50, 0, 0], [60, -90, 40]]}";
        Files.writeString(file, recipe("A4", "10", "srgb", section));
        List<String> notes =
                RecipeFile.read(
                                file,
                                Recipe.paper(
                                        PageSize.parse("A4"),
                                        new Margins(10, 10, 10, 10),
                                        RgbSpace.SRGB))
                        .notes();
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).contains("1 of 2 colours lie outside sRGB"), notes.get(0));
        assertTrue(notes.get(0).contains("(colour 2)"), notes.get(0));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "{\"section\": \"cube\", \"copyes\": 2}; line 9; \"copies\" is",
                "{\"section\": \"cube\", \"patchMm\": 3}; line 9; 5",
                "{\"section\": \"own\", \"rgb\": [[0, 0, 256]]}; line 9; 255",
                "{\"section\": \"own\", \"rgb\": [[0, -1, 0]]}; line 9; minimum value of 0",
                "{\"section\": \"own\"}; line 9; one of rgb, lab and picture",
                "{\"section\": \"cube\", \"reach\": 9}; line 9; no meaning in the section cube",
                "{\"section\": \"cube\", \"atMm\": [40, 80]}, {\"section\": \"skin\", \"atMm\":"
                        + " [60, 90]}; line 9; overlaps /sections/0 (cube)",
                "{\"section\": \"skin\", \"atMm\": [170, 80], \"columns\": 11}; line 9; reaches"
                        + " beyond the room for patches",
                "{\"section\": \"skin\", \"atMm\": [40, 80]}, {\"section\": \"cube\"}; line 9;"
                        + " has no place"
            })
    void badInputIsToldInOneLineWithItsPlace(
            String sections, String line, String words, @TempDir Path folder) throws IOException {
        Path file = folder.resolve("my.json");
        Files.writeString(file, recipe("A4", "10", "srgb", sections));
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> {
                            try {
                                Charts.create(
                                        RecipeFile.read(
                                                        file,
                                                        Recipe.paper(
                                                                PageSize.parse("A4"),
                                                                new Margins(10, 10, 10, 10),
                                                                RgbSpace.SRGB))
                                                .recipe());
                            } catch (Problem e) {
                                throw RecipeFile.placed(file, e);
                            }
                        });
        assertEquals(Problem.Kind.INPUT, problem.kind());
        String message = String.valueOf(problem.getMessage());
        assertEquals(1, message.lines().count());
        assertTrue(message.startsWith("my.json, " + line + ": "), message);
        assertTrue(message.contains(words), message);
    }

    @ParameterizedTest
    @CsvSource({"4x6in,5", "102x152mm,5", "A6,5", "5x7in,10", "A5,10", "A4,10"})
    void theShortSheetFitsSmallPages(String page, String margin) throws Problem {
        Chart chart =
                Charts.create(
                        Recipe.of(
                                Recipe.Kind.SHORT,
                                PageSize.parse(page),
                                Margins.parse(margin),
                                RgbSpace.SRGB));
        isSound(chart);
        assertEquals(1, chart.sheets().size());
        Sheet sheet = chart.sheets().get(0);
        for (Patch patch : sheet.patches()) {
            boolean byHand =
                    patch.section() != Section.PAPER && patch.section() != Section.SOLID_BLACK;
            assertTrue(!byHand || patch.area().width() >= 9.3, patch.toString());
        }
        assertTrue(sheet.patches().size() <= 70, "patches " + sheet.patches().size());
        assertEquals(chart, Charts.fromSheetCode("scan.tif", sheet.codeText()));
    }

    @Test
    void tooSmallAPageNamesTheSmallestThatFits() {
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> chart(recipe("4x6in", "10", "srgb", "{\"section\": \"cube\"}")));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        String message = String.valueOf(problem.getMessage());
        assertTrue(message.endsWith("with these margins is 5x7in."), message);
    }
}
