package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.metric.Wedge;
import org.printassay.report.plot.WedgeKey;
import org.printassay.report.plot.WedgePlot;

/** The sections of the report on shadows and highlights. */
final class WedgeParts {
    /** Common practice, no source. */
    private static final double JUST_VISIBLE = 0.5;

    private WedgeParts() {}

    static ReportView.@Nullable Part shadows(@Nullable Wedge w) {
        if (w == null || w.steps().isEmpty()) {
            return null;
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(Facts.shadows(w));
        facts.add(
                Fact.of(
                        "Surely one black",
                        w.merged() == null ? "no level" : "0 to " + w.merged(),
                        "upper bound below the threshold"));
        facts.add(
                Fact.of(
                        "Surely apart",
                        w.separated() == null ? "not established" : "from " + w.separated(),
                        "lower bound reaches the threshold"));
        common(facts, w);
        return part("shadows", "Shadows", w, "Shadow wedge", "black", facts);
    }

    static ReportView.@Nullable Part highlights(@Nullable Wedge w) {
        if (w == null || w.steps().isEmpty()) {
            return null;
        }
        List<Fact> facts = new ArrayList<>();
        facts.add(Facts.highlights(w));
        facts.add(
                Fact.of(
                        "Surely paper",
                        w.merged() == null ? "no level" : w.merged() + " to 255",
                        "upper bound below the threshold"));
        facts.add(
                Fact.of(
                        "Surely apart",
                        w.separated() == null ? "not established" : "up to " + w.separated(),
                        "lower bound reaches the threshold"));
        common(facts, w);
        return part("highlights", "Highlights", w, "Highlight wedge", "paper", facts);
    }

    private static void common(List<Fact> facts, Wedge w) {
        if (w.slopeAgainstAim() != null) {
            facts.add(
                    Fact.of(
                            "Contrast left",
                            Words.number(w.slopeAgainstAim(), 2),
                            "of the aim's slope, 1 = as the aim"));
        }
        if (!w.reversalLevels().isEmpty()) {
            facts.add(Fact.of("Runs backwards", "at " + Words.levels(w.reversalLevels()), ""));
        }
    }

    private static String lead(Wedge w, String from) {
        return "Each level\u2019s lightness difference from "
                + from
                + ", with its 95\u00a0% interval. Threshold "
                + Words.number(w.threshold(), 1)
                + " dL*"
                + (w.threshold() == JUST_VISIBLE ? ": just visible side by side." : ".");
    }

    private static ReportView.Part part(
            String id, String title, Wedge w, String name, String from, List<Fact> facts) {
        return new ReportView.Part(
                id,
                title,
                lead(w, from),
                List.of(
                        new Plot(
                                "wedge-" + from,
                                (width, tall) -> WedgePlot.draw(w, name, from, width, tall),
                                Plot.WIDE)),
                WedgeKey.of(from).stream().map(Sign::new).toList(),
                "",
                facts);
    }
}
