package org.printassay.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.printassay.layout.ChartLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** Makes charts. The same recipe and print number always give the same chart. */
public final class Charts {
    private Charts() {}

    /** The first print of a recipe's chart. */
    public static Chart create(Recipe recipe) throws Problem {
        return create(recipe, 1);
    }

    /**
     * A print of a recipe's chart.
     *
     * @param wanted what to make it from; lengths are rounded to 0.01 mm
     * @param print number of the print, 1 to {@link SheetCode#MOST_PRINTS}; it is in the sheet code
     *     and in the text, nothing else depends on it
     * @throws Problem usage, when the page is too small (names one that fits), the print number is
     *     out of range or the layout version is not known
     */
    public static Chart create(Recipe wanted, int print) throws Problem {
        Recipe recipe = wanted.canonical();
        if (print < 1 || print > SheetCode.MOST_PRINTS) {
            throw Problem.usage(
                    "a print number must be 1 to "
                            + SheetCode.MOST_PRINTS
                            + ", got "
                            + print
                            + ".");
        }
        if (recipe.layoutVersion() < 1 || recipe.layoutVersion() > recipe.kind().currentLayout()) {
            throw Problem.usage("layout version " + recipe.layoutVersion() + " is not known.");
        }
        Optional<? extends ChartLayout> fitting = ChartLayout.of(recipe);
        if (fitting.isEmpty()) {
            throw tooSmall(recipe);
        }
        ChartLayout layout = fitting.get();
        String id = SheetCode.chartId(recipe, layout.patchDots());
        List<String> codes = new ArrayList<>();
        for (int sheet = 1; sheet <= layout.sheets(); sheet++) {
            codes.add(
                    new SheetCode(recipe, layout.patchDots(), sheet, layout.sheets(), print)
                            .encode());
        }
        return new Chart(id, recipe, print, layout.build(id, print, codes));
    }

    /**
     * The chart that a sheet code names.
     *
     * @param where the scan, for messages
     * @throws Problem chart, when the text is not a sheet code of ours or does not agree with the
     *     chart it names
     */
    public static Chart fromSheetCode(String where, String text) throws Problem {
        SheetCode code = SheetCode.parse(where, text);
        Chart chart;
        try {
            chart = create(code.recipe(), code.print());
        } catch (Problem e) {
            throw Problem.chart(where, "the sheet code: " + e.getMessage());
        }
        if (code.sheet() > chart.sheets().size()
                || !chart.sheets().get(code.sheet() - 1).codeText().equals(text)) {
            throw Problem.chart(
                    where,
                    "the sheet code names a chart that this version makes differently. Give the"
                            + " chart file that was written with the sheet.");
        }
        return chart;
    }

    private static Problem tooSmall(Recipe recipe) {
        String start =
                "page "
                        + recipe.page().name()
                        + " less its margins is too small for the "
                        + recipe.kind().title().toLowerCase(Locale.ROOT)
                        + ". ";
        for (PageSize page : PageSize.NAMED) {
            Recipe larger =
                    new Recipe(
                            recipe.kind(),
                            page,
                            recipe.margins(),
                            recipe.space(),
                            recipe.layoutVersion());
            if (ChartLayout.of(larger).isPresent()) {
                return Problem.usage(
                        start
                                + "The smallest page that fits with these margins is "
                                + page.name()
                                + ".");
            }
        }
        return Problem.usage(start + "Use smaller margins.");
    }
}
