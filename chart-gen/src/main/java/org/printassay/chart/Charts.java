package org.printassay.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.printassay.layout.ChartLayout;
import org.printassay.layout.FrameLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.recipe.RecipeFile;

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
        if (recipe.kind() == Recipe.Kind.EDITED) {
            return edited(recipe, layout, print);
        }
        String id = SheetCode.chartId(recipe, layout.patchDots());
        List<String> codes = new ArrayList<>();
        for (int sheet = 1; sheet <= layout.sheets(); sheet++) {
            codes.add(
                    new SheetCode(recipe, layout.patchDots(), sheet, layout.sheets(), print)
                            .encode());
        }
        return new Chart(id, recipe, print, layout.build(id, print, codes));
    }

    /** An edited recipe's chart: its codes carry the checksum of what the sheets hold. */
    private static Chart edited(Recipe recipe, ChartLayout layout, int print) throws Problem {
        String id = SheetCode.checksum("chart " + RecipeFile.write(recipe), 6);
        List<String> none = Collections.nCopies(layout.sheets(), "");
        Chart bare = new Chart(id, recipe, print, layout.build(id, print, none));
        String content = SheetCode.checksum(ChartText.checksum(bare), 6);
        List<String> codes = new ArrayList<>();
        for (int sheet = 1; sheet <= layout.sheets(); sheet++) {
            codes.add(new EditedCode(id, content, sheet, layout.sheets(), print).encode());
        }
        return new Chart(id, recipe, print, layout.build(id, print, codes));
    }

    /** As {@link #fromSheetCode(String, String, Optional)} without a chart file. */
    public static Chart fromSheetCode(String where, String text) throws Problem {
        return fromSheetCode(where, text, Optional.empty());
    }

    /**
     * The chart that a sheet code names.
     *
     * @param where the scan, for messages
     * @param named the chart of the chart file that the user gave; needed for edited recipes alone
     * @throws Problem chart, when the text is not a sheet code of ours or does not agree with the
     *     chart it names, or when it is that of an edited recipe without its chart file
     */
    public static Chart fromSheetCode(String where, String text, Optional<Chart> named)
            throws Problem {
        if (EditedCode.isOne(text)) {
            return fromEdited(where, text, named);
        }
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

    private static Chart fromEdited(String where, String text, Optional<Chart> named)
            throws Problem {
        EditedCode code = EditedCode.parse(where, text);
        if (named.isEmpty()) {
            throw Problem.chart(
                    where,
                    "shows chart "
                            + code.chartId()
                            + ", made from an edited recipe. Name the chart file that was written"
                            + " with it: --chart chart.json.");
        }
        if (!named.get().id().equals(code.chartId())) {
            throw Problem.chart(
                    where,
                    "shows chart "
                            + code.chartId()
                            + ", made from an edited recipe, but the chart file is of chart "
                            + named.get().id()
                            + ". Name the right one.");
        }
        Chart chart;
        try {
            chart = create(named.get().recipe(), code.print());
        } catch (Problem e) {
            throw Problem.chart(where, "the sheet code: " + e.getMessage());
        }
        if (code.sheet() > chart.sheets().size()
                || !chart.sheets().get(code.sheet() - 1).codeText().equals(text)) {
            throw Problem.chart(
                    where,
                    "the sheet code and the chart file do not agree on what is on the sheet. Give"
                            + " the chart file that was written with the sheet.");
        }
        return chart;
    }

    /**
     * Which sheet of its chart a sheet code stands on, from 1.
     *
     * @throws Problem chart, when the text is not a sheet code of ours
     */
    public static int sheetNumber(String where, String text) throws Problem {
        return EditedCode.isOne(text)
                ? EditedCode.parse(where, text).sheet()
                : SheetCode.parse(where, text).sheet();
    }

    private static Problem tooSmall(Recipe recipe) throws Problem {
        FrameLayout.Obstacle obstacle =
                recipe.edited() != null
                        ? FrameLayout.obstacle(recipe, recipe.edited())
                        : new FrameLayout.Obstacle(
                                "page "
                                        + recipe.page().name()
                                        + " less its margins is too small for the "
                                        + recipe.kind().title().toLowerCase(Locale.ROOT)
                                        + ".",
                                "Use smaller margins.");
        for (PageSize page : PageSize.NAMED) {
            if (ChartLayout.ifRoom(recipe.on(page)).isPresent()) {
                return Problem.usage(
                        obstacle.text()
                                + " The smallest page that fits with these margins is "
                                + page.name()
                                + ".");
            }
        }
        return Problem.usage(obstacle.text() + " " + obstacle.remedy());
    }
}
