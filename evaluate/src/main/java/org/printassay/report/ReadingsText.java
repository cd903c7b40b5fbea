package org.printassay.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.measurement.MeasurementWriter;
import org.printassay.reading.Reading;

/** Readings as ISO 28178 text, for every other program that reads measurements. */
public final class ReadingsText {
    private ReadingsText() {}

    /**
     * The text of the file. Absolute CIELAB where the trust allows it, else CIELAB relative to the
     * paper, and the header says which; readings that lack it are left out.
     */
    public static String write(Evaluation e) {
        boolean absolute = e.patches().stream().anyMatch(r -> r.lab() != null);
        Map<String, String> header = new LinkedHashMap<>();
        header.put("ORIGINATOR", "printassay");
        header.put(
                "DESCRIPTOR",
                (absolute ? "Readings, absolute CIELAB D50" : "Readings relative to paper")
                        + " ("
                        + Words.trust(e.trust())
                        + ")"
                        + (e.lightnessAlone() ? ", lightness alone" : ""));
        header.put("MEASUREMENT_SOURCE", e.trust().key());
        measured(e.measurement(), header);
        if (e.chartId() != null) {
            header.put("CHART_ID", e.chartId());
        }
        if (e.details().paper() != null) {
            header.put("MATERIAL", e.details().paper());
        }
        if (e.details().printer() != null || e.details().route() != null) {
            String printer = e.details().printer() == null ? "" : e.details().printer();
            String route = e.details().route() == null ? "" : e.details().route();
            header.put("PRINT_CONDITIONS", (printer + "; " + route).trim());
        }
        List<MeasurementWriter.Row> rows = new ArrayList<>();
        for (Reading r : e.patches()) {
            Lab lab = absolute ? r.lab() : r.labRelative();
            if (lab != null) {
                rows.add(MeasurementWriter.Row.of(r.id(), r.rgb(), lab));
            }
        }
        return MeasurementWriter.write(header, rows);
    }

    /** Conditions, so that readings of different ones are never averaged. */
    private static void measured(@Nullable MeasurementSummary m, Map<String, String> header) {
        if (m == null) {
            return;
        }
        put(header, "MEASUREMENT_CONDITION", m.condition());
        put(header, "SAMPLE_BACKING", m.backing());
        put(header, "FILTER", m.filter());
    }

    private static void put(Map<String, String> header, String key, @Nullable String value) {
        if (value != null) {
            header.put(key, value);
        }
    }
}
