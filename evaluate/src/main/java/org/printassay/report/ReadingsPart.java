package org.printassay.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.Reading;
import org.printassay.robust.Median;

/** The readings in lines, and by section of the chart. */
final class ReadingsPart {
    private static final String NO_SECTION = "no section";

    private ReadingsPart() {}

    static List<ReportView.Row> rows(List<Reading> readings, boolean absolute) {
        return readings.stream().map(r -> row(r, absolute)).toList();
    }

    private static ReportView.Row row(Reading r, boolean absolute) {
        Lab lab = absolute ? r.lab() : r.labRelative();
        return new ReportView.Row(
                r.id(),
                r.section().map(s -> s.key()).orElse(""),
                r.rgb().r() + " " + r.rgb().g() + " " + r.rgb().b(),
                lab == null ? null : Swatch.of(lab),
                lab == null ? "" : Words.number(lab.l(), 2),
                lab == null ? "" : Words.number(lab.a(), 2),
                lab == null ? "" : Words.number(lab.b(), 2),
                r.density() == null ? "" : Words.number(r.density(), 2),
                String.join(" ", r.flags().stream().sorted().map(f -> f.key()).toList()));
    }

    /** One line a section, in the order of the readings. */
    static List<ReportView.SectionRow> sections(Evaluation e, boolean absolute) {
        Map<String, List<Reading>> bySection = new LinkedHashMap<>();
        for (Reading r : e.patches()) {
            String key = r.section().map(s -> s.key()).orElse(NO_SECTION);
            bySection.computeIfAbsent(key, name -> new ArrayList<>()).add(r);
        }
        List<ReportView.SectionRow> out = new ArrayList<>();
        bySection.forEach((name, readings) -> out.add(section(name, readings, absolute)));
        return out;
    }

    private static ReportView.SectionRow section(
            String name, List<Reading> readings, boolean absolute) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        List<Double> errors = new ArrayList<>();
        Map<String, Integer> flags = new TreeMap<>();
        for (Reading r : readings) {
            Lab lab = absolute ? r.lab() : r.labRelative();
            if (lab != null) {
                low = Math.min(low, lab.l());
                high = Math.max(high, lab.l());
            }
            if (r.standardError() != null) {
                errors.add(r.standardError().l());
            }
            r.flags().forEach(flag -> flags.merge(flag.key(), 1, Integer::sum));
        }
        return new ReportView.SectionRow(
                name,
                String.valueOf(readings.size()),
                low > high ? "" : Words.number(low, 1) + " to " + Words.number(high, 1),
                errors.isEmpty()
                        ? ""
                        : Words.number(
                                Median.upper(errors.stream().mapToDouble(e -> e).toArray()), 2),
                flags.entrySet().stream()
                        .map(flag -> flag.getValue() + " " + flag.getKey())
                        .collect(Collectors.joining(", ")));
    }
}
