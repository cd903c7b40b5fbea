package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Change;
import org.printassay.check.Check;
import org.printassay.check.CheckWords;
import org.printassay.check.DecisionRule;
import org.printassay.check.Grown;
import org.printassay.check.Outcome;
import org.printassay.check.SurfaceChange;
import org.printassay.compare.PatchDrift;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.report.plot.ChangesPlot;
import org.printassay.report.plot.SideCurves;
import org.printassay.report.plot.WedgePairPlot;

/** The page of a check: one file, no network, no scripts. */
public final class CheckPage {
    /** Sentences at the beginning; the rest is in the plots and tables. */
    private static final int MOST_SENTENCES = 7;

    private static final String NONE = "\u2013";

    private CheckPage() {}

    /**
     * The page.
     *
     * @param simulated whether the prints are not real, to be said at the top
     */
    public static String write(Check check, boolean simulated) {
        return write(view(check, simulated));
    }

    static String write(CheckView view) {
        StringOutput out = new StringOutput(1 << 17);
        ReportPage.engine().render("check.jte", view, out);
        return HarmlessText.inPage(out.toString());
    }

    static CheckView view(Check check, boolean simulated) {
        String words = check.outcome().words();
        return new CheckView(
                PageStyle.load(),
                simulated,
                Character.toUpperCase(words.charAt(0))
                        + words.substring(1)
                        + ": "
                        + check.printName(),
                "Baseline: "
                        + check.baselineName()
                        + about(check.baseline().newest())
                        + ". Tolerances: "
                        + check.tolerances().name()
                        + ".",
                CheckWords.headline(check),
                CheckWords.sentences(check).stream()
                        .limit(MOST_SENTENCES)
                        .map(Words::typeset)
                        .toList(),
                check.cautions().stream().map(c -> c.text()).toList(),
                changes(check),
                Arrays.stream(Outcome.values()).map(o -> new Sign(ChangesPlot.key(o))).toList(),
                check.changes().stream().map(CheckPage::row).toList(),
                decision(check),
                CheckWords.spread(check),
                CheckText.curvesLead(check.baseline().prints().size() > 1),
                curves(check),
                surface(check),
                patchesLead(check.patches()),
                patches(check.patches()),
                Words.typeset(DecisionRule.WORDS),
                check.tolerances().about(),
                identity(check));
    }

    /** From what was read, the same in every run. */
    private static long identity(Check check) {
        long number = 1_000_003L * check.tolerances().hashCode();
        List<Evaluation> all = new ArrayList<>(check.baseline().prints());
        all.add(check.print());
        for (Evaluation print : all) {
            for (SourceFile file : print.files()) {
                number = 1_000_003 * number + file.sha256().hashCode();
            }
        }
        return number;
    }

    private static String about(Evaluation e) {
        String paper = e.details().paper() == null ? "" : ", " + e.details().paper();
        String printer = e.details().printer() == null ? "" : ", " + e.details().printer();
        return paper + printer + ", " + Words.trust(e.trust());
    }

    private static @Nullable Plot changes(Check check) {
        return check.changes().isEmpty()
                ? null
                : new Plot(
                        "changes",
                        (width, tall) -> ChangesPlot.draw(check.changes(), width, tall),
                        Plot.WIDE);
    }

    private static CheckView.Row row(Change change) {
        int decimals = change.quantity().decimals();
        String place = change.place().isEmpty() ? "" : ", " + change.place();
        return new CheckView.Row(
                change.quantity().label() + place,
                number(change.before(), decimals),
                number(change.after(), decimals),
                Words.signed(change.change(), decimals),
                number(change.halfWidth(), decimals),
                Words.number(change.limit(), decimals),
                change.outcome().words());
    }

    private static String number(@Nullable Double value, int decimals) {
        return value == null ? NONE : Words.number(value, decimals);
    }

    private static String decision(Check check) {
        return "U is "
                + Words.number(check.rule().factor(), 2)
                + " standard uncertainties, and more where the largest of several changes was taken"
                + " or few prints tell the spread: of unchanged prints at most "
                + Words.number(100 * check.rule().falseAlarms(), 1)
                + " in 100 seem changed in any of the "
                + check.rule().quantities()
                + " quantities (Bonferroni). It holds reading all prints and how far unchanged"
                + " prints lie apart.";
    }

    private static List<Plot> curves(Check check) {
        List<Plot> all = new ArrayList<>();
        Evaluation before = check.baseline().newest();
        Evaluation after = check.print();
        if (before.tone() != null && after.tone() != null) {
            List<SideCurves.Side> sides =
                    List.of(side(1, "baseline", before.tone()), side(2, "print", after.tone()));
            all.add(
                    new Plot(
                            "tone",
                            (width, tall) -> SideCurves.draw(sides, width, tall),
                            Plot.HALF));
        }
        wedges(all, before.shadows(), after.shadows(), "black", "dark");
        wedges(all, before.highlights(), after.highlights(), "paper", "light");
        return all;
    }

    private static SideCurves.Side side(int number, String name, Tone tone) {
        return new SideCurves.Side(
                number,
                name,
                tone.points().stream()
                        .map(p -> new SideCurves.Spot(p.fileL(), p.measuredL() - p.aimL()))
                        .toList());
    }

    private static void wedges(
            List<Plot> to, @Nullable Wedge before, @Nullable Wedge after, String from, String id) {
        if (before != null
                && after != null
                && !before.steps().isEmpty()
                && !after.steps().isEmpty()) {
            to.add(
                    new Plot(
                            id,
                            (width, tall) -> WedgePairPlot.draw(before, after, from, width, tall),
                            Plot.HALF));
        }
    }

    private static List<Fact> surface(Check check) {
        SurfaceChange surface = check.surface();
        List<Fact> facts = new ArrayList<>();
        if (!surface.linesCompared()) {
            facts.add(Fact.of("Lines", "not compared", whyNotCompared(check)));
        } else if (surface.newLines().isEmpty()
                && surface.goneLines().isEmpty()
                && surface.worseLines().isEmpty()
                && surface.oldLines().isEmpty()) {
            facts.add(
                    surface.unlooked().contains("lines")
                            ? Fact.of("Lines", "none where looked for", "not on every sheet")
                            : Fact.of("Lines", "none in either print", ""));
        }
        lines(facts, "New line", surface.newLines());
        for (Grown<PrintLine> line : surface.worseLines()) {
            facts.add(
                    Fact.of(
                            "Stronger line",
                            CheckWords.grownLine(line),
                            cause(line.after().cause().key())));
        }
        lines(facts, "As before", surface.oldLines());
        lines(facts, "Gone", surface.goneLines());
        if (!surface.bandsCompared()) {
            facts.add(Fact.of("Bands", "not compared", whyNotCompared(check)));
        }
        bands(facts, "New band", surface.newBands());
        for (Grown<PrintBand> band : surface.worseBands()) {
            facts.add(
                    Fact.of(
                            "Stronger band",
                            CheckWords.grownBand(band),
                            cause(band.after().cause().key())));
        }
        bands(facts, "Band as before", surface.oldBands());
        bands(facts, "Band gone", surface.goneBands());
        return facts;
    }

    private static String whyNotCompared(Check check) {
        return check.hasTints()
                ? "not judged in both prints"
                : "the sheets have no tints to look for them in";
    }

    private static void lines(List<Fact> facts, String label, List<PrintLine> lines) {
        for (PrintLine line : lines) {
            facts.add(Fact.of(label, CheckWords.line(line), cause(line.cause().key())));
        }
    }

    private static void bands(List<Fact> facts, String label, List<PrintBand> bands) {
        for (PrintBand band : bands) {
            facts.add(Fact.of(label, CheckWords.band(band), cause(band.cause().key())));
        }
    }

    private static String cause(String key) {
        return key.equals("undecided")
                ? "print\u2019s or scanner\u2019s, not decided"
                : "the " + key + "\u2019s";
    }

    private static List<CheckView.Patch> patches(@Nullable PatchDrift drift) {
        if (drift == null) {
            return List.of();
        }
        List<CheckView.Patch> all = new ArrayList<>();
        for (PatchDrift.Code code : drift.codes().subList(0, worst(drift))) {
            all.add(
                    new CheckView.Patch(
                            code.rgb().r() + " " + code.rgb().g() + " " + code.rgb().b(),
                            Swatch.of(code.one()),
                            Words.lab(code.one()),
                            Swatch.of(code.other()),
                            Words.lab(code.other()),
                            Words.number(code.deltaE00(), 2)));
        }
        return all;
    }

    private static int worst(PatchDrift drift) {
        return Math.min(CheckJson.WORST, drift.codes().size());
    }

    private static String patchesLead(@Nullable PatchDrift drift) {
        return drift == null
                ? ""
                : "Of "
                        + drift.codes().size()
                        + " codes the "
                        + worst(drift)
                        + " furthest apart, "
                        + (drift.relative() ? "relative to each paper" : "absolute CIELAB (D50)")
                        + ". On average "
                        + Words.number(drift.meanDeltaE00(), 2)
                        + " dE00; reading equal prints gives "
                        + Words.number(drift.expected(), 2)
                        + ". Single patches differ by chance too.";
    }
}
