package org.printassay.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.printassay.colour.RgbSpace;
import org.printassay.measurement.MeasurementWriter;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/**
 * The reference file of a chart, {@code chart.txt}: ISO 28178 text with the codes of every patch
 * and the colour that these codes stand for in the chart's RGB encoding (D50, white at L* 100). For
 * programs that drive an instrument: it lists the patches in reading order.
 */
public final class ChartReference {
    private ChartReference() {}

    /** The text; the same chart always gives the same text. */
    public static String write(Chart chart) {
        RgbSpace space = chart.space();
        Map<String, String> keywords = new LinkedHashMap<>();
        keywords.put("ORIGINATOR", "printassay");
        keywords.put(
                "DESCRIPTOR",
                chart.recipe().title()
                        + ", chart "
                        + chart.id()
                        + ": codes and their colour in the encoding, not a measurement");
        keywords.put("CHART_ID", chart.id());
        keywords.put("RGB_ENCODING", space.title());
        List<MeasurementWriter.Row> rows = new ArrayList<>();
        for (Sheet sheet : chart.sheets()) {
            for (Patch patch : sheet.patches()) {
                rows.add(
                        new MeasurementWriter.Row(
                                patch.id(),
                                patch.rgb(),
                                space.toLab(patch.rgb()),
                                space.toXyz(patch.rgb()),
                                null));
            }
        }
        return MeasurementWriter.write(keywords, rows);
    }
}
