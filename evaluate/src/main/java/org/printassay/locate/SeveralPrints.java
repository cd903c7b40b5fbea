package org.printassay.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;

/** Refuses a scan that holds more than one print, and names what was found. */
final class SeveralPrints {
    /** So many markers of another print are one; fewer are a corner of it that does no harm. */
    private static final int A_PRINT = 3;

    private static final String ONE_BY_ONE = " Scan them one by one, or crop the scan to one.";

    private SeveralPrints() {}

    /** Refuses two or more sheet codes. */
    static void refuseCodes(String name, List<SheetCodeReader.Read> codes) throws Problem {
        if (codes.size() < 2) {
            return;
        }
        List<String> prints = new ArrayList<>();
        for (SheetCodeReader.Read code : codes) {
            prints.add(described(name, code.text()));
        }
        String last = prints.remove(prints.size() - 1);
        throw Problem.chart(
                name,
                "holds "
                        + codes.size()
                        + " prints: "
                        + String.join(", ", prints)
                        + " and "
                        + last
                        + "."
                        + ONE_BY_ONE);
    }

    /** Refuses markers that do not belong to the print that was found. */
    static void refuseMarkers(
            String name, Chart chart, int sheet, List<FoundMarker> others, List<FoundMarker> all)
            throws Problem {
        String beside = "holds " + described(chart, sheet) + " and beside it ";
        if (others.size() >= A_PRINT) {
            throw Problem.chart(
                    name,
                    beside
                            + others.size()
                            + " markers of another print, whose sheet code cannot be read."
                            + ONE_BY_ONE);
        }
        Map<Integer, Integer> bySheet = new TreeMap<>();
        for (FoundMarker marker : all) {
            bySheet.merge(SheetLayout.sheetOfMarker(marker.id()), 1, Integer::sum);
        }
        bySheet.remove(sheet);
        for (Map.Entry<Integer, Integer> other : bySheet.entrySet()) {
            if (other.getKey() >= 1 && other.getValue() >= A_PRINT) {
                throw Problem.chart(
                        name,
                        beside
                                + other.getValue()
                                + " markers of a sheet "
                                + other.getKey()
                                + "."
                                + ONE_BY_ONE);
            }
        }
    }

    private static String described(String name, String text) {
        try {
            return described(Charts.fromSheetCode(name, text), Charts.sheetNumber(name, text));
        } catch (Problem e) {
            return "one whose sheet code is not known here";
        }
    }

    private static String described(Chart chart, int sheet) {
        String which = chart.sheets().size() > 1 ? ", sheet " + sheet : "";
        return "print " + chart.print() + " of chart " + chart.id() + which;
    }
}
