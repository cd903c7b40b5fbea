package org.printassay.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.promise.Promise;
import org.printassay.reading.Reading;

/** The section that sets a print beside what its printer's profile promises. */
final class PromisePart {
    private PromisePart() {}

    static ReportView.@Nullable Promised of(Evaluation e) {
        Promise p = e.promise();
        if (p == null) {
            return null;
        }
        String name = p.description().isEmpty() ? p.profile() : p.description();
        return new ReportView.Promised(
                "What the profile "
                        + name
                        + " predicts for each patch, printed "
                        + p.route().words()
                        + ", against what was read.",
                facts(p),
                rows(e, p));
    }

    private static List<Fact> facts(Promise p) {
        List<Fact> out = new ArrayList<>();
        out.add(Fact.of("On average", deltaE(p.meanDeltaE00()), "over " + p.judged() + " patches"));
        out.add(Fact.of("95 of 100 patches", "below " + deltaE(p.p95DeltaE00()), ""));
        out.add(Fact.of("Furthest", deltaE(p.maxDeltaE00()), "patch " + p.worst()));
        Promise.Mistake mistake = p.mistake();
        Double fit = p.promisedFit();
        if (fit == null) {
            out.add(Fact.of("Route", "not judged", "code 255 was not read"));
        } else {
            out.add(route(fit, mistake));
        }
        out.add(
                Fact.of(
                        "Profile",
                        p.profile(),
                        "SHA-256 " + p.sha256().substring(0, 12) + "\u2026"));
        return out;
    }

    private static Fact route(double fit, Promise.@Nullable Mistake mistake) {
        return Fact.of(
                "Route",
                mistake == null ? "nothing speaks clearly against it" : "not as named",
                mistake == null
                        ? "leaves " + deltaE(fit) + " unexplained, relative to paper"
                        : "leaves "
                                + deltaE(fit)
                                + " unexplained; only "
                                + deltaE(mistake.fit())
                                + " if "
                                + mistake.words());
    }

    private static List<ReportView.PromisedRow> rows(Evaluation e, Promise p) {
        Map<String, Reading> readings = new HashMap<>();
        e.patches().forEach(reading -> readings.put(reading.id(), reading));
        List<ReportView.PromisedRow> rows = new ArrayList<>();
        p.patches().stream()
                .sorted(Comparator.comparingDouble(Promise.Patch::deltaE00).reversed())
                .forEach(
                        patch -> {
                            Reading reading = readings.get(patch.id());
                            Lab lab = reading == null ? null : reading.lab();
                            if (reading != null && lab != null) {
                                rows.add(row(patch, reading, lab));
                            }
                        });
        return rows;
    }

    private static ReportView.PromisedRow row(Promise.Patch patch, Reading reading, Lab lab) {
        return new ReportView.PromisedRow(
                patch.id(),
                reading.rgb().r() + " " + reading.rgb().g() + " " + reading.rgb().b(),
                Swatch.of(patch.lab()),
                numbers(patch.lab()),
                Swatch.of(lab),
                numbers(lab),
                Words.number(patch.deltaE00(), 1));
    }

    private static String numbers(Lab lab) {
        return Words.number(lab.l(), 1)
                + " "
                + Words.number(lab.a(), 1)
                + " "
                + Words.number(lab.b(), 1);
    }

    private static String deltaE(double value) {
        return "dE00 " + Words.number(value, 1);
    }
}
