package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.printassay.metric.Coverage;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Wedge;
import org.printassay.reading.Trust;

/**
 * What a wedge tells, in words that claim no more than its readings give: bounds only where there
 * is an interval, "sure" only where colour is known.
 */
final class WedgeFindings {
    /** From these levels on an end counts as held. */
    private static final int OPEN_SHADOW = 3;

    private static final int HELD_HIGHLIGHT = 252;

    private final Wedge wedge;
    private final boolean paper;
    private final Sharper sharper;
    private final boolean repeats;

    /** By how much one-sided bounds must be wider for all of so many to hold at once in 95 %. */
    private static double widening(int bounds) {
        double tail = 0.025 / Math.max(1, bounds);
        return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - tail)
                / Coverage.ONE_SIDED_95;
    }

    private WedgeFindings(Wedge wedge, boolean paper, Sharper sharper, boolean repeats) {
        this.wedge = wedge;
        this.paper = paper;
        this.sharper = sharper;
        this.repeats = repeats;
    }

    static Weighed shadows(Wedge wedge, Sharper sharper, boolean repeats) {
        return new WedgeFindings(wedge, false, sharper, repeats).find();
    }

    static Weighed highlights(Wedge wedge, Sharper sharper, boolean repeats) {
        return new WedgeFindings(wedge, true, sharper, repeats).find();
    }

    /** A neutral that is surely, and visibly, darker than level 0: any of all (Bonferroni). */
    static Optional<Weighed> darkerThanBlack(Wedge shadows, boolean repeats) {
        double ofAll = widening(LevelStep.WINDOWS * shadows.steps().size());
        return shadows.steps().stream()
                .filter(step -> step.difference() <= -shadows.threshold())
                .filter(step -> middle(step) + ofAll * half(step) < 0)
                .min(Comparator.comparingDouble(LevelStep::difference))
                .map(step -> darker(step, ofAll * half(step), repeats));
    }

    private static double middle(LevelStep step) {
        return (step.low() + step.high()) / 2;
    }

    private static double half(LevelStep step) {
        return (step.high() - step.low()) / 2;
    }

    private static Weighed darker(LevelStep step, double half, boolean repeats) {
        return FindingKind.DARKER_THAN_BLACK.weighed(
                "black",
                say(
                        "Level %d prints darker than level 0, by %.1f L*.",
                        step.level(), -step.difference()),
                repeats
                        ? say(
                                "95 %% sure: between %.1f and %.1f L*.",
                                -middle(step) - half, -middle(step) + half)
                        : "Levels were read once, so this is a single reading.",
                "Too much ink for this paper, or the wrong paper setting: try another.");
    }

    private Weighed find() {
        Integer best = wedge.best();
        Integer separated = wedge.separated();
        if (best == null || (repeats && separated == null)) {
            return cannotTell();
        }
        int keep = separated == null ? best : separated;
        Wedge.Interval range = wedge.interval();
        if (repeats && range != null && wedge.isRough()) {
            return between(range, best, keep);
        }
        if (paper ? best >= HELD_HIGHLIGHT : best <= OPEN_SHADOW) {
            String text =
                    paper
                            ? "Highlights are held: level %d still shows against the paper."
                            : "Shadows are open: level %d already shows against black.";
            return finding(FindingKind.END_HELD, 0, say(text, best), sureness(), "");
        }
        if (nothingBeyond(best)) {
            String text =
                    paper
                            ? "Highlights show up to level %d, the lightest on this sheet."
                            : "Shadows show from level %d on, the darkest on this sheet.";
            return finding(FindingKind.END_HELD, 0, say(text, best), sureness(), "");
        }
        String text =
                paper
                        ? say("Levels %d to 255 print as bare paper%s.", best + 1, bounds(keep))
                        : say("Levels 0 to %d print as one black%s.", best - 1, bounds(keep));
        String advice =
                paper
                        ? say("Keep the lightest detail at %d or below.", keep)
                        : say("Keep detail that must be seen at %d or above.", keep);
        return finding(FindingKind.END_LOST, aimOf(best), text, sureness(), advice);
    }

    /** The end of an interval this wide is what can be relied on, not its best estimate. */
    private Weighed between(Wedge.Interval range, int best, int keep) {
        String text =
                paper
                        ? say(
                                "Highlights end somewhere from level %d to %d",
                                range.low(), range.high())
                        : say(
                                "Shadows begin somewhere from level %d to %d",
                                range.low(), range.high());
        return finding(
                FindingKind.END_LOST,
                aimOf(best),
                text + "; more closely it cannot be told.",
                sureness(),
                paper
                        ? say("Keep the lightest detail at %d or below.", keep)
                        : say("Keep detail that must be seen at %d or above.", keep));
    }

    /** Whether no level between one and the end of the scale was on the sheet: sparse wedges. */
    private boolean nothingBeyond(int level) {
        return wedge.steps().stream()
                .mapToInt(LevelStep::level)
                .noneMatch(
                        other -> paper ? other > level && other < 255 : other < level && other > 0);
    }

    private Weighed cannotTell() {
        Integer merged = wedge.merged();
        String sure =
                repeats
                        ? "The differences are too small for how surely the levels are read."
                        : "Levels were read once, so this is a single reading.";
        String advice =
                sharper.trust() == Trust.INSTRUMENT
                        ? sharper.advice(List.of())
                        : "Scan as TIFF or PNG and with less noise, or print the chart again.";
        if (paper) {
            return finding(
                    FindingKind.END_UNKNOWN,
                    0,
                    merged == null || merged >= 255
                            ? "Which highlights show against the paper cannot be told."
                            : say(
                                    "Levels %d to 255 print as bare paper; below which level all"
                                            + " show cannot be told.",
                                    merged),
                    sure,
                    advice);
        }
        return finding(
                FindingKind.END_UNKNOWN,
                0,
                merged == null || merged == 0
                        ? "Which shadows show against black cannot be told."
                        : say(
                                "Levels 0 to %d print as one black; above which level all show"
                                        + " cannot be told.",
                                merged),
                sure,
                advice);
    }

    private String sureness() {
        Wedge.Interval range = wedge.interval();
        if (!repeats) {
            return "Levels were read once, so this is a single reading.";
        }
        String which = paper ? "the last level that shows is " : "the first level that shows is ";
        if (range == null) {
            return "How far it may lie from this cannot be told.";
        }
        return sharper.trust().absolute()
                ? "95 % sure: " + which + levels(range) + "."
                : "Roughly, without a scanner's profile: " + which + levels(range) + ".";
    }

    private String bounds(int keep) {
        Integer merged = wedge.merged();
        Wedge.Interval range = wedge.interval();
        if (range == null || merged == null || range.low() == range.high()) {
            return "";
        }
        if (paper) {
            return merged >= 255
                    ? say(" (perhaps fewer, %d to 255 at most)", keep + 1)
                    : say(" (%d to 255 at least, %d to 255 at most)", merged, keep + 1);
        }
        return merged == 0
                ? say(" (perhaps fewer, 0 to %d at most)", keep - 1)
                : say(" (0 to %d at least, 0 to %d at most)", merged, keep - 1);
    }

    private Weighed finding(
            FindingKind kind, double size, String text, String sure, String advice) {
        return kind.weighed(size, paper ? "highlights" : "shadows", text, sure, advice);
    }

    /** How much of the aim, in L*, lies between the anchor and a level. */
    private double aimOf(int level) {
        return wedge.steps().stream()
                .filter(step -> step.level() == level)
                .mapToDouble(LevelStep::aim)
                .findFirst()
                .orElse(0);
    }

    private static String levels(Wedge.Interval range) {
        return range.low() == range.high()
                ? "" + range.low()
                : "between " + range.low() + " and " + range.high();
    }
}
