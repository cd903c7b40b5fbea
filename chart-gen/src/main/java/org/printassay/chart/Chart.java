package org.printassay.chart;

import java.util.List;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Sheet;

/**
 * One printable design: patches with known codes at known places, on one or more sheets.
 *
 * @param id short name computed from the recipe; the same recipe always has the same id, whatever
 *     the print number
 * @param recipe what it was made from
 * @param print which print of the chart this copy is, from 1
 * @param sheets in order
 */
public record Chart(String id, Recipe recipe, int print, List<Sheet> sheets) {
    public Chart {
        sheets = List.copyOf(sheets);
    }

    /** The RGB encoding of all patches. */
    public RgbSpace space() {
        return recipe.space();
    }
}
