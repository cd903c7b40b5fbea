package org.printassay.chart;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.layout.ChartLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** Charts on paper from a roll, where the width alone is given. */
public final class Rolls {
    private static final Pattern WIDTH =
            Pattern.compile("\\s*(\\d{1,4}(?:\\.\\d{1,3})?)\\s*(mm|in)\\s*");

    /** Lengths are multiples of this, millimetres. */
    private static final int STEP_MM = 10;

    private static final int SHORTEST_MM = 100;

    private Rolls() {}

    /** Width of a roll as typed, {@code 610mm} or {@code 24in}, millimetres; else nothing. */
    public static OptionalDouble widthMm(String text) {
        Matcher width = WIDTH.matcher(text);
        if (!width.matches()) {
            return OptionalDouble.empty();
        }
        double number = Double.parseDouble(width.group(1));
        return OptionalDouble.of(width.group(2).equals("in") ? number * 25.4 : number);
    }

    /** A page of a roll's width, as long as a page can be. */
    public static PageSize longest(double widthMm) throws Problem {
        return PageSize.of(widthMm, PageSize.LONGEST_MM);
    }

    /**
     * The same recipe on the shortest page of its width that takes no more sheets than a longer
     * one.
     *
     * @throws Problem usage, when not even the longest page holds it
     */
    public static Recipe shortest(Recipe recipe) throws Problem {
        int fewest = Charts.create(recipe).sheets().size();
        for (int length = SHORTEST_MM; length < PageSize.LONGEST_MM; length += STEP_MM) {
            Recipe shorter = recipe.on(PageSize.of(recipe.page().widthMm(), length));
            Optional<? extends ChartLayout> layout = ChartLayout.of(shorter);
            if (layout.isPresent() && layout.get().sheets() == fewest) {
                return shorter;
            }
        }
        return recipe;
    }
}
