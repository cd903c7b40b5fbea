package org.printassay.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.chart.Charts;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Design;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Part;
import org.printassay.recipe.Recipe;

class PartContentTest {
    @ParameterizedTest
    @EnumSource(Part.What.class)
    void patchesAreCountedWithoutMakingThem(Part.What what) {
        Part part = Part.of(what, 3, 6, 0).withColours(Collections.nCopies(5, Rgb8.grey(7)));
        assertEquals(
                PartContent.inks(part, 1, RgbSpace.SRGB).size(),
                PartContent.count(part),
                what.key());
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 9})
    void sizesOfCubesAndWedgesAreCounted(int size) {
        Part cube = Part.of(Part.What.CUBE, 2, 6, 0).withAmount(size);
        assertEquals(PartContent.inks(cube, 1, RgbSpace.SRGB).size(), PartContent.count(cube));
        Part wedge = Part.of(Part.What.SHADOWS, 1, 6, 0).withAmount(13 * size).withEvery(size);
        assertEquals(PartContent.inks(wedge, 1, RgbSpace.SRGB).size(), PartContent.count(wedge));
    }

    /** 36 thousand million patches: making them would never end. */
    @Test
    void millionsOfPatchesAreRefusedBeforeTheyAreMade() throws Problem {
        Part part =
                Part.of(Part.What.OWN, 9, 6, 0)
                        .withColours(Collections.nCopies(2_000_000, Rgb8.grey(7)));
        Recipe recipe =
                Recipe.edited(
                        PageSize.parse("A4"),
                        Margins.all(10),
                        RgbSpace.SRGB,
                        new Design("Too much", Collections.nCopies(2000, part)));
        Problem problem = assertThrows(Problem.class, () -> Charts.create(recipe));
        String text = String.valueOf(problem.getMessage());
        assertTrue(text.contains("hold 36000000000 patches; 20000 are the most"), text);
        assertEquals(List.of(text), text.lines().toList());
    }
}
