package org.printassay.chart;

import java.util.ArrayList;
import java.util.List;
import org.printassay.measurement.ChartPatches;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/** The order in which a hand-held instrument is led over a chart: row by row, left to right. */
public final class ReadingOrder {
    /** Patches whose top edges are this near stand in one row. */
    private static final double ONE_ROW_MM = 0.3;

    /** Of the usual side of a patch. */
    private static final double SMALLEST_SHARE = 0.75;

    private ReadingOrder() {}

    /** Patches of a chart as an instrument meets them, sheet after sheet. */
    public static ChartPatches of(Chart chart) {
        List<List<Patch>> rows = new ArrayList<>();
        List<Patch> all = new ArrayList<>();
        for (Sheet sheet : chart.sheets()) {
            rows.addAll(rows(sheet));
            all.addAll(sheet.patches());
        }
        return new ChartPatches(chart.id(), chart.space(), rows, all);
    }

    /**
     * Rows of a sheet from the top; each from the left. Patches that are much smaller than most,
     * such as windows between markers, are for scans and left out.
     */
    public static List<List<Patch>> rows(Sheet sheet) {
        double[] sides =
                sheet.patches().stream().mapToDouble(p -> side(p.area())).sorted().toArray();
        double least = sides.length == 0 ? 0 : SMALLEST_SHARE * sides[sides.length / 2];
        List<List<Patch>> rows = new ArrayList<>();
        double top = Double.NEGATIVE_INFINITY;
        for (Patch patch : sheet.patches()) {
            if (side(patch.area()) < least) {
                continue;
            }
            if (patch.area().y() - top > ONE_ROW_MM) {
                rows.add(new ArrayList<>());
                top = patch.area().y();
            }
            rows.get(rows.size() - 1).add(patch);
        }
        return rows;
    }

    private static double side(RectMm area) {
        return Math.min(area.width(), area.height());
    }

    /**
     * The order as a text to type values into, {@code reading-order.txt}: a line a patch, its name
     * in front; rows by their numbers. Lists without names are read as well, in this order.
     */
    public static String write(Chart chart) {
        StringBuilder out = new StringBuilder();
        out.append("# ").append(chart.recipe().kind().title()).append(", chart ");
        out.append(chart.id()).append(": order for hand-held instruments.\n");
        out.append("# Type L* a* b* (D50, 2 degree) after each name and evaluate this file with\n");
        out.append("# --chart chart.json. Names may be left out.\n");
        for (Sheet sheet : chart.sheets()) {
            if (chart.sheets().size() > 1) {
                out.append("# sheet ").append(sheet.number()).append('\n');
            }
            List<List<Patch>> rows = rows(sheet);
            for (int i = 0; i < rows.size(); i++) {
                out.append("# row ").append(i + 1).append(", from the left: ");
                out.append(rows.get(i).size()).append(" patches\n");
                rows.get(i).forEach(patch -> out.append(patch.id()).append('\n'));
            }
        }
        return out.toString();
    }
}
