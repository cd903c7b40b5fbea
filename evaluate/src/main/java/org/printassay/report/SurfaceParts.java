package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.LineWords;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.report.plot.LinesPlot;
import org.printassay.report.plot.SharpnessPlot;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;

/** The sections of the report about lines and bands, and about grain and edges. */
final class SurfaceParts {
    private static final int MOST_LINES = 12;

    private SurfaceParts() {}

    static ReportView.@Nullable Part lines(@Nullable PrintSurface s) {
        if (s == null || s.lines() == null || s.bands() == null) {
            return null;
        }
        List<PrintLine> lines = s.lines();
        List<Fact> facts = new ArrayList<>();
        long unsure = lines.stream().filter(l -> l.cause() == SurfaceCause.UNDECIDED).count();
        facts.add(
                Fact.of(
                        "Lines",
                        lines.isEmpty() ? "none found" : lines.size() + " found",
                        unsure == 0
                                ? ""
                                : unsure == lines.size()
                                        ? "print's or scanner's cannot be told"
                                        : unsure + " of them may be the scanner's"));
        lines.stream().limit(MOST_LINES).forEach(line -> facts.add(line(line)));
        if (s.pattern() != null) {
            facts.add(
                    Fact.of(
                            "Repeat",
                            "every " + Words.number(s.pattern().periodMm(), 2) + " mm",
                            s.pattern().lines() + " lines stand on it"));
        }
        if (s.bands().isEmpty()) {
            facts.add(Fact.of("Bands", "none found", "0.5 to 13 mm"));
        }
        s.bands().forEach(band -> facts.add(band(s, band)));
        if (!s.scannerLines().isEmpty() || !s.scannerBands().isEmpty()) {
            facts.add(
                    Fact.of(
                            "The scanner's own",
                            count(s.scannerLines().size(), "line")
                                    + ", "
                                    + count(s.scannerBands().size(), "band"),
                            "bare paper shows them, they keep to the scan's columns, or a turned"
                                    + " scan lacks them; left out"));
        }
        RectMm page = s.page();
        List<Plot> figures = new ArrayList<>();
        if (page != null && !lines.isEmpty()) {
            int sheet = lines.get(0).sheet();
            List<PrintLine> first = lines.stream().filter(l -> l.sheet() == sheet).toList();
            figures.add(
                    new Plot(
                            "lines-plot",
                            width -> LinesPlot.draw(first, page, width),
                            Plot.TWO_THIRDS));
        }
        return new ReportView.Part(
                "lines",
                "Lines and bands",
                lead(s),
                figures,
                List.of(),
                "Numbers are millimetres from the edge."
                        + (unsure > 0 ? " Thin lines may be the scanner's." : ""),
                facts);
    }

    private static String count(int number, String word) {
        return number + " " + word + (number == 1 ? "" : "s");
    }

    private static String lead(PrintSurface s) {
        return "Looked for in long tints along both sides of the page. "
                + (s.feed() == null
                        ? "The feed was not named (--feed), so directions go by the page."
                        : "The sheet went through the printer along its "
                                + (s.feed() == s.longSide() ? "long" : "short")
                                + " side.");
    }

    private static Fact line(PrintLine l) {
        List<String> details = new ArrayList<>();
        details.add(Words.number(l.line().widthMm(), 2) + " mm wide");
        details.add(
                LineWords.amount(l.line())
                        + (l.line().contrast() > 0 ? " lighter" : " darker")
                        + " than its tint");
        if (!l.line().shows().isEmpty()) {
            details.add("in " + String.join(", ", l.line().shows()));
        }
        if (!l.inks().isEmpty()) {
            details.add("suspect: " + String.join(", ", l.inks()));
        }
        if (l.cause() == SurfaceCause.UNDECIDED) {
            details.add("may be the scanner's");
        }
        return Fact.of(
                l.line().along() == Along.Y ? "Across the page" : "Down the page",
                l.line().polarity()
                        + ", "
                        + Words.number(l.line().positionMm(), 1)
                        + " mm from the "
                        + l.line().along().edge()
                        + " edge",
                String.join("; ", details));
    }

    private static Fact band(PrintSurface s, PrintBand b) {
        return Fact.of(
                b.band().along() == s.longSide()
                        ? "Bands along the long side"
                        : "Bands along the short side",
                "every "
                        + Words.number(b.band().periodMm(), 2)
                        + " mm, ±\u00a0"
                        + Words.number(b.band().amplitudeDeltaL(), 2)
                        + " L*",
                Words.number(b.band().overThreshold(), 1)
                        + " times the least that an eye sees at "
                        + Words.number(s.viewing().distanceMm(), 0)
                        + " mm and "
                        + Words.number(s.viewing().illuminanceLux(), 0)
                        + " lx"
                        + (b.band().visible() ? "" : ": not visible")
                        + (b.cause() == SurfaceCause.UNDECIDED ? "; may be the scanner's" : ""));
    }

    static ReportView.@Nullable Part texture(@Nullable PrintSurface s) {
        if (s == null || (s.grain() == null && s.sharpness() == null && s.vignettes() == null)) {
            return null;
        }
        List<Fact> facts = new ArrayList<>();
        PrintSurface.Grain grain = s.grain();
        if (grain != null) {
            zone(facts, "Grain in shadows", grain.shadows());
            zone(facts, "Grain in mid-tones", grain.midtones());
            zone(facts, "Grain in highlights", grain.highlights());
            zone(facts, "Bare paper", grain.paper());
            if (!grain.noiseRemoved()) {
                facts.add(
                        Fact.of(
                                "Noise of the scanner",
                                "not told apart",
                                "so grain is an upper bound"));
            }
        }
        PrintSurface.Sharpness sharp = s.sharpness();
        List<Plot> figures = new ArrayList<>();
        if (sharp != null) {
            sharp(facts, "Edges, left to right", sharp.acrossHalfPerMm(), sharp.acrossAtFive());
            sharp(facts, "Edges, top to bottom", sharp.downHalfPerMm(), sharp.downAtFive());
            figures.add(
                    new Plot(
                            "sharpness",
                            (width, tall) -> SharpnessPlot.draw(sharp, width, tall),
                            Plot.TWO_THIRDS));
        }
        if (s.vignettes() != null) {
            s.vignettes().forEach(vignette -> facts.add(vignette(vignette)));
        }
        return new ReportView.Part(
                "texture",
                "Grain and sharpness",
                "Grain: standard deviation of L*, the paper\u2019s own taken off. Sharpness:"
                        + " contrast that slanted edges keep, print and scan together.",
                figures,
                List.of(),
                "",
                facts);
    }

    private static void zone(List<Fact> facts, String label, PrintSurface.@Nullable Zone zone) {
        if (zone != null) {
            facts.add(
                    Fact.of(
                            label,
                            Words.number(zone.graininess(), 2) + " L*",
                            zone.mottle() == null
                                    ? "mottle not judged"
                                    : "mottle " + Words.number(zone.mottle(), 2) + " L*"));
        }
    }

    private static void sharp(
            List<Fact> facts, String label, @Nullable Double half, @Nullable Double five) {
        if (half != null) {
            facts.add(
                    Fact.of(
                            label,
                            "half left at " + Words.number(half, 1) + " per mm",
                            five == null
                                    ? ""
                                    : Words.number(100 * five, 0) + " % left at 5 per mm"));
        }
    }

    private static Fact vignette(PrintSurface.Vignette v) {
        String name =
                "Gradient "
                        + Words.number(v.fromLevel(), 0)
                        + " to "
                        + Words.number(v.toLevel(), 0);
        if (v.steps().isEmpty()) {
            return Fact.of(
                    name,
                    "smooth",
                    v.scannerSteps().isEmpty()
                            ? "no visible step"
                            : "no visible step but the scanner's");
        }
        List<String> at = new ArrayList<>();
        for (PrintSurface.Step step : v.steps()) {
            at.add(
                    "level "
                            + Words.number(step.level(), 0)
                            + " ("
                            + Words.signed(step.deltaL(), 1)
                            + " L*)");
        }
        return Fact.of(
                name,
                v.steps().size() + (v.steps().size() == 1 ? " step" : " steps"),
                String.join(", ", at.subList(0, Math.min(6, at.size()))));
    }
}
