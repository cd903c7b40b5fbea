package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;
import org.printassay.evaluation.CalibrationSummary;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.evaluation.PrintDetails;
import org.printassay.metric.Extreme;
import org.printassay.metric.Gradient;
import org.printassay.metric.Irregularity;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.reading.StrayLight;
import org.printassay.report.plot.NeutralPlot;
import org.printassay.report.plot.TonePlot;

/** The sections of the report below the first screen. */
final class Parts {
    /** What a gradient that is left says nothing about. */
    private static final String EVENED =
            ", after evening out, which also removes a fade of the print itself";

    private Parts() {}

    static ReportView.@Nullable Part tone(@Nullable Tone t, boolean absolute) {
        if (t == null || t.points().isEmpty()) {
            return null;
        }
        String lightness = absolute ? "L*" : "L*, relative to paper";
        List<Fact> facts = new ArrayList<>();
        facts.add(Facts.tone(t));
        facts.add(Fact.of("Shadows", mean(t.meanDeltaLShadows()), zone(ToneZone.SHADOWS)));
        facts.add(Fact.of("Mid-tones", mean(t.meanDeltaLMidtones()), zone(ToneZone.MIDTONES)));
        facts.add(Fact.of("Highlights", mean(t.meanDeltaLHighlights()), zone(ToneZone.HIGHLIGHTS)));
        facts.add(
                Fact.of(
                        "Order",
                        t.monotonic() ? "never runs backwards" : "runs backwards",
                        t.reversalLevels().isEmpty()
                                ? ""
                                : "at level " + Words.levels(t.reversalLevels())));
        for (Irregularity i : t.irregularities()) {
            boolean step = i.kind() == Irregularity.Kind.STEP;
            facts.add(
                    Fact.of(
                            step ? "Jump" : "Turn of hue",
                            "level " + i.level() + (step ? " to " + i.toLevel() : ""),
                            Words.number(Math.abs(i.size()), 1)
                                    + (step ? " L* off its neighbours" : " in a*, b*")));
        }
        return new ReportView.Part(
                "tone",
                "Tone",
                "Aim: " + t.aim() + ".",
                List.of(
                        new Plot(
                                "tone-plot",
                                (width, tall) -> TonePlot.draw(t, lightness, width, tall),
                                Plot.TWO_THIRDS)),
                List.of(),
                "",
                facts);
    }

    private static String mean(double delta) {
        return "dL* " + Words.signed(delta, 1);
    }

    private static String zone(ToneZone zone) {
        return "mean, file L* " + zone.bounds();
    }

    static ReportView.@Nullable Part neutrality(@Nullable Neutrality n, @Nullable Extreme white) {
        if (n == null || n.points().isEmpty()) {
            return null;
        }
        Lab paper = white == null ? null : white.lab();
        List<Fact> facts = new ArrayList<>();
        facts.add(Facts.neutrality(n));
        facts.add(cast("In shadows", n.shadows()));
        facts.add(cast("In mid-tones", n.midtones()));
        facts.add(cast("In highlights", n.highlights()));
        facts.add(
                Fact.of(
                        "Crossover",
                        n.crossover() ? "yes" : "none found",
                        "shadows and highlights leaning different ways"));
        facts.add(
                Fact.of(
                        "Against plain paper",
                        "dCh " + Words.number(n.paperRelativeMeanDeltaCh(), 1) + " mean",
                        "largest " + Words.number(n.paperRelativeMaxDeltaCh(), 1)));
        if (n.suggestedDeltaB() != null) {
            facts.add(
                    Fact.of(
                            "To offset it",
                            "b* " + Words.signed(n.suggestedDeltaB(), 1) + " in the file",
                            "from the mean lean; try it small"));
        }
        return new ReportView.Part(
                "neutrals",
                "Neutral greys",
                "Reference: the paper\u2019s own tint, fading to neutral at black.",
                List.of(
                        new Plot(
                                "plane",
                                (width, tall) -> NeutralPlot.plane(n, paper, width, tall),
                                Plot.HALF),
                        new Plot(
                                "lean",
                                (width, tall) -> NeutralPlot.lean(n, width, tall),
                                Plot.HALF)),
                List.of(),
                "In the a* b* plot: full disc shadows, ring mid-tones, square highlights, diamond"
                        + " the paper; the broken line is the way from neutral to the paper\u2019s"
                        + " tint.",
                facts);
    }

    private static Fact cast(String label, Neutrality.Cast cast) {
        return Fact.of(
                label,
                cast.significant() ? cast.words() : "no measurable lean",
                "da*\u00a0"
                        + Facts.signedWithin(cast.a(), cast.uncertaintyA())
                        + ", db*\u00a0"
                        + Facts.signedWithin(cast.b(), cast.uncertaintyB()));
    }

    static List<Fact> further(Evaluation e) {
        List<Fact> out = new ArrayList<>();
        if (e.colours() != null && e.colours().detail() == null) {
            out.add(
                    Fact.of(
                            "Colours",
                            "dE00 " + Words.number(e.colours().meanDeltaE00(), 1) + " mean",
                            "surface of the colour cube against its aim"));
            if (e.colours().gamutVolume() != null) {
                out.add(
                        Fact.of(
                                "Gamut",
                                grouped(e.colours().gamutVolume()) + " cubic units",
                                "CIELAB"));
            }
        }
        if (e.evenness() != null) {
            out.add(
                    Fact.of(
                            "Evenness",
                            "dE00 " + Words.number(e.evenness().maxDeltaE00(), 1),
                            "largest between equal patches, print and scanner together; light fell"
                                    + " off by "
                                    + Words.number(e.evenness().lightFalloffPercent(), 1)
                                    + " % before evening out"
                                    + whose(e.evenness().whose())));
            Gradient gradient = e.evenness().gradient();
            if (gradient != null) {
                out.add(
                        Fact.of(
                                "Gradient",
                                gradient.words(),
                                "L* "
                                        + Words.within(
                                                gradient.overSheet(), gradient.uncertainty(), 1)
                                        + " over the sheet, from equal patches"
                                        + (e.fromScan() ? EVENED : "")));
            }
        }
        out.addAll(MeasuredFacts.derived(e));
        StrayLight s = e.strayLight();
        if (s != null) {
            out.add(
                    Fact.of(
                            "Stray light",
                            Words.number(s.fraction() * 100, 2)
                                    + " \u00b1 "
                                    + Words.number(s.standardError() * 196, 2)
                                    + " %",
                            s.corrected()
                                    ? "found and removed; black would have read L* "
                                            + Words.number(s.blackWithout(), 1)
                                    : "not significant, nothing removed"));
        }
        return out;
    }

    static String grouped(double value) {
        String digits = String.valueOf(Math.round(value));
        return digits.replaceAll("(?<=\\d)(?=(\\d{3})+$)", "\u202f");
    }

    static List<Fact> conditions(Evaluation e) {
        PrintDetails said = e.details();
        List<Fact> out = new ArrayList<>();
        out.add(Fact.of("Paper", or(said.paper()), ""));
        out.add(Fact.of("Printer", or(said.printer()), ""));
        out.add(Fact.of("Route", or(said.route()), ""));
        out.add(
                Fact.of(
                        "Dried",
                        said.driedHours() == null
                                ? "not said"
                                : Words.number(said.driedHours(), 1) + " hours",
                        ""));
        String chart = e.chartId() == null ? "of another origin" : e.chartId();
        String sheets = e.sheets().isEmpty() ? "" : "sheet " + Words.levels(e.sheets());
        String print = e.print() == null ? "" : ", print " + e.print();
        out.add(Fact.of("Chart", chart, sheets + print));
        out.add(Fact.of("Codes in", e.spaceKey(), ""));
        out.addAll(MeasuredFacts.conditions(e));
        e.files()
                .forEach(
                        f ->
                                out.add(
                                        Fact.of(
                                                "Read from",
                                                f.name(),
                                                "SHA-256 "
                                                        + f.sha256().substring(0, 12)
                                                        + "\u2026")));
        CalibrationSummary calibration = e.calibration();
        if (calibration != null) {
            out.add(calibration(calibration));
        }
        for (PlacementSummary p : e.placements()) {
            out.add(Fact.of("Placement", placement(p), p.file()));
        }
        return out;
    }

    /** How far the calibration is off, where there is one. */
    static String calibrationError(Evaluation e) {
        CalibrationSummary c = e.calibration();
        return c == null
                ? ""
                : " It is off by dE00 "
                        + Words.number(c.meanDeltaE00(), 2)
                        + " in the mean, 95\u00a0% of its patches by less than "
                        + Words.number(c.p95DeltaE00(), 2)
                        + ", the worst by "
                        + Words.number(c.maxDeltaE00(), 1)
                        + " (each left out in turn); with what is not known of a scan's light, and"
                        + " of whether it fits this print, expect "
                        + Words.number(c.expectedDeltaE00(), 2)
                        + " in the mean.";
    }

    private static Fact calibration(CalibrationSummary c) {
        List<String> made = new ArrayList<>();
        made.add(c.patches() + " patches of " + c.colours() + " colours");
        if (c.paper() != null) {
            made.add("on " + c.paper());
        }
        if (c.family() != null) {
            made.add("for " + c.family());
        }
        if (c.printer() != null) {
            made.add("printed with " + c.printer());
        }
        if (c.scanner() != null) {
            made.add("scanned with " + c.scanner());
        }
        return Fact.of(
                "Calibration",
                c.file().name()
                        + ": dE00 "
                        + Words.number(c.meanDeltaE00(), 2)
                        + " mean, 95\u00a0% below "
                        + Words.number(c.p95DeltaE00(), 2)
                        + ", largest "
                        + Words.number(c.maxDeltaE00(), 1),
                "each colour by a calibration made without it; made from "
                        + String.join(", ", made));
    }

    private static String placement(PlacementSummary p) {
        String scale =
                p.scaleX() == null || p.scaleY() == null
                        ? "printed size unknown"
                        : "printed at "
                                + Words.number(p.scaleX() * 100, 1)
                                + " % by "
                                + Words.number(p.scaleY() * 100, 1)
                                + " %";
        return scale
                + ", turned "
                + Words.number(p.rotationDegrees(), 1)
                + "\u00b0, "
                + Words.number(p.samplesPerMm() * 25.4, 0)
                + " samples per inch";
    }

    private static String or(@Nullable String said) {
        return said == null ? "not said" : said;
    }

    private static String whose(@Nullable Unevenness whose) {
        return whose == null
                ? ""
                : "; of what a turned scan tells apart, "
                        + Words.number(whose.scannerPercent(), 1)
                        + " % is the scanner's and "
                        + Words.number(whose.printPercent(), 1)
                        + " % the print's, while "
                        + Words.number(whose.undecidedPercent(), 1)
                        + " % is alike either way";
    }
}
