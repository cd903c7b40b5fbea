package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.problem.Problem;
import org.printassay.recipe.Design;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Part;
import org.printassay.recipe.Recipe;

/** What is told when a page is too small: what is in the way, and a page that truly fits. */
class TooSmallPageTest {
    private static final Pattern SMALLEST =
            Pattern.compile(" The smallest page that fits with these margins is (\\S+)\\.$");

    private static Recipe edited(String page, double margin, Part... parts) throws Problem {
        return Recipe.edited(
                PageSize.parse(page),
                Margins.all(margin),
                RgbSpace.SRGB,
                new Design("My sheet", List.of(parts)));
    }

    /** Everything that users ask for, and more than fits. */
    private static List<Recipe> many() throws Problem {
        List<Recipe> all = new ArrayList<>();
        List<String> pages = List.of("4x6in", "A6", "A5", "A4", "297x210mm", "50x2000mm", "A2");
        for (String page : pages) {
            for (double margin : new double[] {3, 10, 25, 60}) {
                for (Recipe.Kind kind : Recipe.Kind.values()) {
                    if (kind != Recipe.Kind.EDITED) {
                        all.add(
                                Recipe.of(
                                        kind,
                                        PageSize.parse(page),
                                        Margins.all(margin),
                                        RgbSpace.SRGB));
                    }
                }
                for (double patch : new double[] {5, 20, 60, 200}) {
                    all.add(edited(page, margin, Part.of(Part.What.CUBE, 2, patch, 0)));
                    all.add(edited(page, margin, Part.of(Part.What.SKIN, 1, patch, 11)));
                    all.add(edited(page, margin, Part.of(Part.What.EDGES, 1, patch, 0)));
                }
                all.add(
                        edited(
                                page,
                                margin,
                                Part.of(Part.What.NEUTRAL_RAMP, 1, 6, 0),
                                new Part(Part.What.TINTS, 1, 8, 400, 0, 0, 0, List.of(), null)));
            }
        }
        return all;
    }

    @Test
    void theSmallestPageThatIsNamedFitsAndNoSmallerOne() throws Problem {
        int named = 0;
        int none = 0;
        for (Recipe recipe : many()) {
            String text;
            try {
                Charts.create(recipe);
                continue;
            } catch (Problem problem) {
                text = String.valueOf(problem.getMessage());
            }
            assertEquals(1, text.lines().count(), text);
            Matcher smallest = SMALLEST.matcher(text);
            boolean found = smallest.find();
            none += found ? 0 : 1;
            named += found ? 1 : 0;
            for (PageSize page : PageSize.NAMED) {
                boolean isIt = found && page.name().equals(smallest.group(1));
                if (isIt) {
                    assertFalse(Charts.create(recipe.on(page)).sheets().isEmpty());
                    break;
                }
                assertThrows(
                        Problem.class, () -> Charts.create(recipe.on(page)), page + ": " + text);
            }
        }
        assertTrue(named > 100 && none > 10, named + " " + none);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            textBlock =
                    """
                    NEUTRAL_RAMP; 20; 0; 40; too small for the header and the markers.; 8x10in
                    SKIN; 30; 11; 10; /sections/0 (skin) is 329.7 mm wide; A2
                    SKIN; 120; 0; 10; /sections/0 (skin) is 120 mm wide; Legal
                    CUBE; 36; 0; 10; the sections take more than 9 sheets on page A5; 8x10in
                    """)
    void whatIsInTheWayIsNamed(
            Part.What what, double patch, int columns, double margin, String says, String page)
            throws Problem {
        String text =
                String.valueOf(
                        assertThrows(
                                        Problem.class,
                                        () ->
                                                Charts.create(
                                                        edited(
                                                                "A5",
                                                                margin,
                                                                Part.of(what, 1, patch, columns))))
                                .getMessage());
        assertTrue(text.contains(says), text);
        assertTrue(text.endsWith(" with these margins is " + page + "."), text);
    }

    @Test
    void tallSectionsAreNamedAsTall() {
        Part tints = new Part(Part.What.TINTS, 1, 6, 260, 0, 0, 0, List.of(), null);
        String text =
                String.valueOf(
                        assertThrows(Problem.class, () -> Charts.create(edited("A4", 10, tints)))
                                .getMessage());
        assertTrue(text.contains("(tints) is ") && text.contains("high with its caption"), text);
    }

    /** No page helps: then what does is said. */
    @ParameterizedTest
    @ValueSource(ints = {1, 9})
    void whereNoPageFitsTheRemedyIsTheSection(int columns) {
        Part part =
                Part.of(Part.What.OWN, 9, 190, columns)
                        .withColours(Collections.nCopies(300, Rgb8.grey(90)));
        String text =
                String.valueOf(
                        assertThrows(Problem.class, () -> Charts.create(edited("A4", 10, part)))
                                .getMessage());
        assertTrue(text.contains("smaller"), text);
        assertFalse(text.contains("smallest page"), text);
        assertFalse(text.contains("smaller margins"), text);
    }
}
