package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import org.printassay.colour.Density;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.metric.Derived;

/** Figures that follow from white, black and spectra, and how it was measured, in single lines. */
final class MeasuredFacts {
    private MeasuredFacts() {}

    static List<Fact> derived(Evaluation e) {
        List<Fact> out = new ArrayList<>();
        Derived d = Derived.of(e.white(), e.black(), e.paperLight());
        if (d != null) {
            out.add(
                    Fact.of(
                            "Range as hung",
                            Words.number(d.stopsWithFlare(), 1) + " stops",
                            "where the surface reflects 1 % of the light into the eye; readings"
                                    + " leave out most of that gloss"));
            out.add(
                    Fact.of(
                            "Paper colour",
                            d.paperWords(),
                            e.fromScan() && !e.lightnessAlone()
                                    ? "scanner lamps excite brighteners less or more than daylight"
                                    : ""));
        }
        MeasurementSummary m = e.measurement();
        if (m == null) {
            return out;
        }
        if (m.brightener() != null) {
            out.add(
                    Fact.of(
                            "Brightener",
                            "b* " + Words.signed(m.brightener(), 1),
                            "b*(M2) less b*(M1) of the paper: how much bluer daylight's"
                                    + " ultraviolet makes it"));
        }
        for (MeasurementSummary.Solid solid : m.solids()) {
            out.add(
                    Fact.of(
                            "Density of " + solid.name(),
                            Words.number(solid.visual(), 2) + " visual",
                            "red, green, blue filter: status A "
                                    + filters(solid.statusA())
                                    + "; status T "
                                    + filters(solid.statusT())));
        }
        return out;
    }

    static List<Fact> conditions(Evaluation e) {
        MeasurementSummary m = e.measurement();
        if (m == null) {
            return List.of();
        }
        List<Fact> out = new ArrayList<>();
        String backing = m.backing() == null ? "backing not stated" : "backing " + m.backing();
        String filter = m.filter() == null ? "" : "; filter " + m.filter();
        String repeats = m.repeats() > 1 ? "; mean of up to " + m.repeats() : "";
        out.add(
                Fact.of(
                        "Measured under",
                        m.condition() == null ? "not stated" : m.condition(),
                        backing + filter + repeats));
        m.notes().forEach(note -> out.add(Fact.of("From the file", "", note)));
        return out;
    }

    private static String filters(Density.Filters filters) {
        return Words.number(filters.red(), 2)
                + ", "
                + Words.number(filters.green(), 2)
                + ", "
                + Words.number(filters.blue(), 2);
    }
}
