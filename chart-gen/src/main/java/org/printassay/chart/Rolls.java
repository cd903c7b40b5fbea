package org.printassay.chart;

import java.util.Optional;
import org.printassay.layout.ChartLayout;
import org.printassay.problem.Problem;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;

/** Charts on paper from a roll, where the width alone is given. */
public final class Rolls {
    /** Lengths are multiples of this, millimetres. */
    private static final int STEP_MM = 10;

    private static final int SHORTEST_MM = 100;

    private Rolls() {}

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
            Optional<? extends ChartLayout> layout = ChartLayout.ifRoom(shorter);
            if (layout.isPresent() && layout.get().sheets() == fewest) {
                return shorter;
            }
        }
        return recipe;
    }
}
