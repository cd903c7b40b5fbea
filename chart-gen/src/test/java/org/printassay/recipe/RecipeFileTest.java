package org.printassay.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;

class RecipeFileTest {
    private static final Recipe A4 =
            Recipe.paper(new PageSize("A4", 210, 297), Margins.all(12), RgbSpace.SRGB);

    @ParameterizedTest
    @EnumSource(RgbSpace.class)
    void readsBackWhatWasWritten(RgbSpace space) throws Problem {
        Recipe recipe =
                Recipe.paper(PageSize.parse("12x16in"), new Margins(12, 10.5, 35, 12.25), space);
        assertEquals(recipe, RecipeFile.parse("my.json", RecipeFile.write(recipe), A4));
    }

    @Test
    void whatIsLeftOutComesFromTheDefaults() throws Problem {
        String text = "{\"schema\": \"printassay/recipe/1\", \"kind\": \"paper\"}";
        assertEquals(A4, RecipeFile.parse("my.json", text, A4));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"page\": \"A99\"",
                "\"marginsMm\": [12, 12]",
                "\"marginsMm\": [1]",
                "\"space\": \"cmyk\"",
                "\"layoutVersion\": 99",
                "\"pgae\": \"A4\""
            })
    void aWrongValueIsRefusedInOneLineThatNamesTheFile(String entry) {
        String text = "{\"schema\": \"printassay/recipe/1\", \"kind\": \"paper\", " + entry + "}";
        Problem problem = assertThrows(Problem.class, () -> RecipeFile.parse("my.json", text, A4));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(String.valueOf(problem.getMessage()).startsWith("my.json"));
        assertEquals(1, String.valueOf(problem.getMessage()).lines().count());
    }
}
