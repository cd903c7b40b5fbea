package org.printassay.chart;

import java.util.ArrayList;
import java.util.List;
import org.printassay.measurement.ChartPatches;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/** The order in which a hand-held instrument is led over a chart: row by row, left to right. */
public final class ReadingOrder {
    /** Patches whose top edges are this near stand in one row. */
    private static final double ONE_ROW_MM = 0.3;

    private ReadingOrder() {}

    /** Patches of a chart as an instrument meets them, sheet after sheet. */
    public static ChartPatches of(Chart chart) {
        List<List<Patch>> rows = new ArrayList<>();
        chart.sheets().forEach(sheet -> rows.addAll(rows(sheet)));
        return new ChartPatches(chart.id(), chart.space(), rows);
    }

    /** Rows of a sheet from the top; each from the left. */
    public static List<List<Patch>> rows(Sheet sheet) {
        List<List<Patch>> rows = new ArrayList<>();
        double top = Double.NEGATIVE_INFINITY;
        for (Patch patch : sheet.patches()) {
            if (patch.area().y() - top > ONE_ROW_MM) {
                rows.add(new ArrayList<>());
                top = patch.area().y();
            }
            rows.get(rows.size() - 1).add(patch);
        }
        return rows;
    }
}
