package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.ArrayList;
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
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.report.draw.SvgWriter;
import org.printassay.report.plot.ChangesPlot;
import org.printassay.report.plot.SideCurves;
import org.printassay.report.plot.WedgePairPlot;

/** The page of a check: one file, no network, no scripts. */
public final class CheckPage {
    /** Sentences that open a print's part; the rest is in the plots and tables. */
    private static final int MOST_SENTENCES = 7;

    private static final double HALF = 500;
    private static final String NONE = "\u2013";

    private CheckPage() {}

    /**
     * The page.
     *
     * @param checks at least one, all against one baseline by the same tolerances
     * @param simulated whether the prints are not real, to be said at the top
     */
    public static String write(List<Check> checks, boolean simulated) {
        StringOutput out = new StringOutput(1 << 17);
        ReportPage.engine().render("check.jte", view(checks, simulated), out);
        return HarmlessText.inPage(out.toString());
    }

    private static CheckView view(List<Check> checks, boolean simulated) {
        Check first = checks.get(0);
        List<CheckView.Print> prints = new ArrayList<>();
        for (Check check : checks) {
            prints.add(print(check, "print-" + (prints.size() + 1)));
        }
        List<CheckView.Key> keys = new ArrayList<>();
        for (Outcome outcome : Outcome.values()) {
            String svg =
                    SvgWriter.write(
                            ChangesPlot.key(outcome), "key-" + outcome.key(), "key-of-outcome");
            keys.add(new CheckView.Key(new Html(svg), outcome.words()));
        }
        return new CheckView(
                PageStyle.load(),
                simulated,
                title(checks),
                "Baseline: "
                        + first.baselineName()
                        + about(first.baseline())
                        + ". Tolerances: "
                        + first.tolerances().name()
                        + ".",
                prints,
                Words.typeset(DecisionRule.WORDS),
                first.tolerances().about(),
                keys);
    }

    private static String title(List<Check> checks) {
        String words = CheckJson.outcome(checks).words();
        String outcome = Character.toUpperCase(words.charAt(0)) + words.substring(1);
        return checks.size() == 1
                ? outcome + ": " + checks.get(0).printName()
                : outcome + ": " + checks.size() + " prints";
    }

    private static String about(Evaluation e) {
        String paper = e.details().paper() == null ? "" : ", " + e.details().paper();
        String printer = e.details().printer() == null ? "" : ", " + e.details().printer();
        return paper + printer + ", " + Words.trust(e.trust());
    }

    private static CheckView.Print print(Check check, String id) {
        List<String> sentences =
                CheckWords.sentences(check).stream()
                        .limit(MOST_SENTENCES)
                        .map(Words::typeset)
                        .toList();
        return new CheckView.Print(
                id,
                check.printName(),
                CheckWords.headline(check),
                sentences,
                check.cautions().stream().map(c -> c.text()).toList(),
                changes(check, id),
                check.changes().stream().map(CheckPage::row).toList(),
                decision(check),
                curves(check, id),
                surface(check.surface()),
                patches(check.patches()),
                patchesLead(check.patches()));
    }

    private static List<Html> changes(Check check, String id) {
        return check.changes().isEmpty()
                ? List.of()
                : List.of(
                        Html.of(
                                ChangesPlot.draw(check.changes(), Plot.WIDE),
                                ChangesPlot.draw(check.changes(), Plot.NARROW),
                                id + "-changes"));
    }

    private static CheckView.Row row(Change change) {
        int decimals = change.quantity().decimals();
        return new CheckView.Row(
                change.quantity().label(),
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
                + " standard uncertainties: of unchanged prints at most "
                + Words.number(100 * check.rule().falseAlarms(), 1)
                + " in 100 seem changed in any of the "
                + check.rule().quantities()
                + " quantities (Bonferroni). It holds reading both prints and how far unchanged"
                + " prints lie apart.";
    }

    private static List<Html> curves(Check check, String id) {
        List<Html> all = new ArrayList<>();
        Evaluation before = check.baseline();
        Evaluation after = check.print();
        if (before.tone() != null && after.tone() != null) {
            List<SideCurves.Side> sides =
                    List.of(side(1, "baseline", before.tone()), side(2, "print", after.tone()));
            all.add(
                    Html.of(
                            SideCurves.draw(sides, HALF),
                            SideCurves.draw(sides, Plot.NARROW),
                            id + "-tone"));
        }
        wedges(all, before.shadows(), after.shadows(), "black", id + "-dark");
        wedges(all, before.highlights(), after.highlights(), "paper", id + "-light");
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
            List<Html> to, @Nullable Wedge before, @Nullable Wedge after, String from, String id) {
        boolean there =
                before != null
                        && after != null
                        && !before.steps().isEmpty()
                        && !after.steps().isEmpty();
        if (there && before != null && after != null) {
            to.add(
                    Html.of(
                            WedgePairPlot.draw(before, after, from, HALF),
                            WedgePairPlot.draw(before, after, from, Plot.NARROW),
                            id));
        }
    }

    private static List<Fact> surface(SurfaceChange surface) {
        List<Fact> facts = new ArrayList<>();
        if (!surface.linesCompared()) {
            facts.add(Fact.of("Lines", "not compared", "not judged in both prints"));
        } else if (surface.newLines().isEmpty()
                && surface.goneLines().isEmpty()
                && surface.worseLines().isEmpty()
                && surface.oldLines().isEmpty()) {
            facts.add(Fact.of("Lines", "none in either print", ""));
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
            facts.add(Fact.of("Bands", "not compared", "not judged in both prints"));
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
