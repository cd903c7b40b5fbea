package org.printassay.measurement;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.sheet.Patch;

/**
 * The patches of a chart, as an instrument meets them.
 *
 * @param name what the chart is called in messages
 * @param space encoding of the codes
 * @param rows patches in reading order, row by row (strip by strip); no row is empty
 * @param all every patch, those for scans alone too, which the rows leave out
 */
public record ChartPatches(String name, RgbSpace space, List<List<Patch>> rows, List<Patch> all) {
    public ChartPatches {
        rows = rows.stream().map(List::copyOf).toList();
        all = List.copyOf(all);
    }

    /** A chart whose patches are all in its rows. */
    public ChartPatches(String name, RgbSpace space, List<List<Patch>> rows) {
        this(name, space, rows, rows.stream().flatMap(List::stream).toList());
    }

    /** The patches of the rows, in reading order. */
    public List<Patch> order() {
        List<Patch> order = new ArrayList<>();
        rows.forEach(order::addAll);
        return order;
    }

    /** The colour that a patch's codes stand for; a print is duller, but in the same order. */
    Lab expected(Patch patch) {
        return space.toLab(patch.rgb());
    }
}
