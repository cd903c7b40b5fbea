package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/** Which pages hold the full paper sheet. */
class PaperSheetFitTest {
    static Chart chart(String page, String margins) throws Problem {
        return Charts.create(
                Recipe.paper(PageSize.parse(page), Margins.parse(margins), RgbSpace.SRGB));
    }

    private static double patchMm(Chart chart) {
        return chart.sheets().get(0).patches().stream()
                .filter(patch -> patch.section() == Section.CUBE)
                .findFirst()
                .orElseThrow()
                .area()
                .width();
    }

    @ParameterizedTest
    @CsvSource({"A4,10", "A4,12", "Letter,10", "Letter,12", "Legal,12"})
    void oneSheetWithPatchesOfSixToSevenMillimetres(String page, String margin) throws Problem {
        Chart chart = chart(page, margin);
        assertEquals(1, chart.sheets().size());
        assertTrue(patchMm(chart) >= 6 && patchMm(chart) <= 7, "patch " + patchMm(chart));
    }

    @ParameterizedTest
    @ValueSource(strings = {"A3", "13x19in", "Tabloid", "A2"})
    void largePagesHaveLargerPatches(String page) throws Problem {
        Chart chart = chart(page, "12");
        assertEquals(1, chart.sheets().size());
        assertEquals(8, patchMm(chart), 0.2);
    }

    @ParameterizedTest
    @CsvSource(
            value = {"A4;20", "A4;25", "A4;12,12,60,12", "Letter;25", "8x10in;12"},
            delimiter = ';')
    void lessRoomSpillsToASecondSheet(String page, String margins) throws Problem {
        Chart chart = chart(page, margins);
        assertEquals(2, chart.sheets().size());
        Set<String> ids = new HashSet<>();
        Set<Integer> markers = new HashSet<>();
        for (Sheet sheet : chart.sheets()) {
            sheet.patches().forEach(patch -> assertTrue(ids.add(patch.id()), patch.id()));
            sheet.markers().forEach(marker -> assertTrue(markers.add(marker.id())));
            assertTrue(
                    sheet.patches().stream().anyMatch(p -> p.section() == Section.SOLID_BLACK),
                    "sheet " + sheet.number() + " has a black");
        }
        Chart whole = chart("A4", "12");
        Set<String> wanted = new HashSet<>();
        whole.sheets().get(0).patches().stream()
                .filter(patch -> patch.section() != Section.PAPER)
                .forEach(patch -> wanted.add(patch.id()));
        wanted.removeAll(ids);
        assertEquals(Set.of(), wanted, "nothing is lost on the way to two sheets");
    }

    @ParameterizedTest
    @CsvSource({"A6,12,8x10in", "A5,12,8x10in", "4x6in,5,8x10in", "100x100mm,12,8x10in"})
    void tooSmallAPageNamesOneThatFits(String page, String margin, String fits) throws Problem {
        Problem problem = assertThrows(Problem.class, () -> chart(page, margin));
        assertEquals(Problem.Kind.USAGE, problem.kind());
        assertTrue(
                String.valueOf(problem.getMessage()).contains("smallest page that fits"),
                problem.getMessage());
        assertTrue(String.valueOf(problem.getMessage()).contains(fits), problem.getMessage());
        assertTrue(chart(fits, margin).sheets().size() >= 1);
    }

    @Test
    void absurdMarginsAreRefusedInOneLine() {
        Problem problem = assertThrows(Problem.class, () -> chart("A4", "400"));
        assertEquals(Problem.Kind.USAGE, problem.kind());
    }

    @Test
    void printNumberIsChecked() throws Problem {
        Recipe recipe = chart("A4", "12").recipe();
        assertThrows(Problem.class, () -> Charts.create(recipe, 0));
        assertThrows(Problem.class, () -> Charts.create(recipe, 10_000));
        assertEquals(Charts.create(recipe, 2).id(), Charts.create(recipe, 9999).id());
    }
}
