package org.printassay.layout;

import java.util.List;
import java.util.Optional;
import org.printassay.problem.Problem;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Sheet;

/** A recipe laid out on its pages. */
public interface ChartLayout {
    /**
     * The layout of a recipe by the rules of its version; nothing when the page is too small.
     *
     * @throws Problem usage, when an edited recipe contradicts itself
     */
    static Optional<? extends ChartLayout> of(Recipe recipe) throws Problem {
        return switch (recipe.kind()) {
            case PAPER -> PaperLayout.of(recipe);
            case PRINTER -> PrinterLayout.of(recipe);
            case SHORT, EDITED -> FrameLayout.of(recipe, recipe.design().orElseThrow());
        };
    }

    /**
     * As {@link #of}, for a page that is tried out: nothing when something reaches beyond its room.
     */
    static Optional<? extends ChartLayout> ifRoom(Recipe recipe) {
        try {
            return of(recipe);
        } catch (Problem e) {
            return Optional.empty();
        }
    }

    /** Sheets it takes. */
    int sheets();

    /** Side of a patch in dots of 1/300 inch. */
    int patchDots();

    /**
     * The sheets, every patch at its place.
     *
     * @param chartId printed in the header
     * @param print number of the print, from 1
     * @param codeTexts what each sheet's code says, in order
     */
    List<Sheet> build(String chartId, int print, List<String> codeTexts);
}
