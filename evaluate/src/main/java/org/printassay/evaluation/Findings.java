package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Trust;
import org.printassay.reading.WarningCode;

/**
 * Findings in words, most consequential first.
 *
 * <p>The ranking rule: what a picture loses counts first. Every finding has a weight, about as many
 * L* (or as much chroma) as pictures lose by it; {@link FindingKind} has the number of every kind.
 *
 * <ul>
 *   <li>A wrong route (encoding, doubled or missing colour management, or far from its profile) is
 *       behind all else and stands first, wherever a profile was named; then a wrong size.
 *   <li>An end of the scale weighs the L* of the aim that merges, and four more, for what merges is
 *       gone. Where nothing can be said of an end it weighs more than any usual loss: it may hide
 *       one.
 *   <li>What shows as an edge or a line in every picture has its height, and a start above what
 *       only shifts: tone that runs backwards or jumps, greys that turn over or cross, lines and
 *       bands by how much light they move.
 *   <li>What shifts a picture weighs by its mean: tone by twice its RMS (all of a picture has it),
 *       skin by its mean dE00 (looked at hardest), unevenness by its L* over the sheet, the lean of
 *       greys by its distance, and by a third of it where only some of the tones lean.
 *   <li>What few pictures hold weighs a twentieth: chroma that full colours miss.
 *   <li>What may be the scanner's weighs half of what it would be for the print.
 *   <li>What cannot be told weighs about what a small loss of its kind would.
 *   <li>Good news weighs less than 1, and comes last.
 * </ul>
 *
 * Equal weights keep the order size, shadows, highlights, tone, greys, colours, skin, evenness,
 * white and black, lines, bands, grain, gradients. At most seven are told.
 */
final class Findings {
    private static final int MOST = 7;

    /** Tone that is off by less, RMS L*, follows its aim (common practice, no source). */
    private static final double FOLLOWS = 1.2;

    /** What steps between the codes that an edited scan is left with look like. */
    private static final Set<FindingKind> OF_NEAR_CODES =
            EnumSet.of(
                    FindingKind.TONE_JUMP,
                    FindingKind.HUE_TURN,
                    FindingKind.COLOUR_FULL,
                    FindingKind.GRADIENT_STEP);

    private final List<Weighed> ranked = new ArrayList<>();

    private Findings() {}

    /** What is told of ranked findings: the heaviest. */
    static List<Finding> told(List<Weighed> ranked) {
        return ranked.stream().limit(MOST).map(Weighed::finding).toList();
    }

    /**
     * All of them with their weights, heaviest first.
     *
     * @param e all that was judged; findings that it has already do not count
     * @param repeats whether anything was read more than once
     */
    static List<Weighed> ranked(Evaluation e, boolean repeats) {
        Findings findings = new Findings();
        e.placements().forEach(findings::size);
        Trust trust = e.trust();
        boolean edited = isTold(e, WarningCode.HISTOGRAM_GAPS) && mostlyCoarse(e);
        Sharper sharper = new Sharper(trust, isTold(e, WarningCode.LOSSY) || edited);
        Wedge shadows = e.shadows();
        if (shadows != null) {
            findings.ranked.add(WedgeFindings.shadows(shadows, sharper, repeats));
            WedgeFindings.darkerThanBlack(shadows, repeats).ifPresent(findings.ranked::add);
        }
        Wedge highlights = e.highlights();
        if (highlights != null) {
            findings.ranked.add(WedgeFindings.highlights(highlights, sharper, repeats));
        }
        Tone tone = e.tone();
        if (tone != null) {
            findings.tone(tone, sharper, repeats);
        }
        Colours colours = e.colours();
        boolean toned =
                colours != null && colours.detail() != null && colours.detail().isWithoutColour();
        Neutrality neutrality = e.neutrality();
        if (neutrality != null) {
            findings.ranked.add(GreyFindings.of(neutrality, e.details(), toned, sharper, repeats));
        }
        Evenness evenness = e.evenness();
        Extreme white = e.white();
        findings.ranked.addAll(
                ColourFindings.of(
                        trust,
                        white == null ? null : white.uncertainty(),
                        colours == null ? null : colours.detail(),
                        tone == null ? List.of() : tone.irregularities(),
                        evenness == null ? null : evenness.gradient()));
        Extreme black = e.black();
        if (white != null && black != null) {
            boolean limited = isTold(e, WarningCode.SCANNER_LIMITED);
            findings.ranked.add(RangeFinding.of(white, black, sharper, limited));
        }
        findings.ranked.addAll(SurfaceFindings.of(e.surface()));
        if (edited) {
            findings.ranked.removeIf(found -> OF_NEAR_CODES.contains(found.kind()));
        }
        findings.ranked.sort(Comparator.comparingDouble(Weighed::weight).reversed());
        return List.copyOf(findings.ranked);
    }

    /** Whether the steps are large enough that most colours are flagged for them. */
    private static boolean mostlyCoarse(Evaluation e) {
        long coarse =
                e.patches().stream()
                        .filter(reading -> reading.flags().contains(ReadingFlag.COARSE))
                        .count();
        return 2 * coarse > e.patches().size();
    }

    private static boolean isTold(Evaluation e, WarningCode code) {
        return e.warnings().stream().anyMatch(warning -> warning.code() == code);
    }

    private void add(FindingKind kind, String topic, String text, String sure, String advice) {
        ranked.add(kind.weighed(topic, text, sure, advice));
    }

    private void size(PlacementSummary placement) {
        Double x = placement.scaleX();
        Double y = placement.scaleY();
        if (x == null || y == null || !PlacementSummary.resized(x, y)) {
            return;
        }
        boolean unequal = PlacementSummary.unequal(x, y);
        add(
                FindingKind.PRINT_SIZE,
                "print",
                say(
                        unequal
                                ? "The sheet measures %.1f %% across and %.1f %% down: one way was"
                                        + " stretched."
                                : "The sheet was printed at %.1f %% across and %.1f %% down, not at"
                                        + " 100 %%.",
                        100 * x,
                        100 * y),
                "To 0.1 %, if the scan's declared resolution is true.",
                unequal
                        ? "Scan on the glass, not through a feeder, and do not resize; if it stays,"
                                + " the printer's paper feed is off. Colours hold."
                        : "Switch \"fit to page\" off; colours hold, but print at 100 % to compare.");
    }

    private void tone(Tone tone, Sharper sharper, boolean repeats) {
        String sure =
                say(
                                "RMS %.1f L* (%s), largest %+.1f at level %d.",
                                tone.rmsDeltaL(),
                                repeats ? say("± %.1f", tone.rmsUncertainty()) : "read once",
                                tone.maxDeltaL(),
                                tone.maxAtLevel())
                        + (sharper.trust().absolute()
                                ? ""
                                : " Roughly, without a scanner's profile.");
        if (!tone.monotonic()) {
            add(
                    FindingKind.TONE_BACKWARDS,
                    "tone",
                    "Tone runs backwards near level " + tone.reversalLevels().get(0) + ".",
                    sure,
                    "Check paper type and profile in the driver; gradients will show a step.");
        }
        double unsure = repeats ? tone.rmsUncertainty() : 0;
        if (unsure > FOLLOWS && tone.rmsDeltaL() - unsure < FOLLOWS) {
            add(
                    FindingKind.TONE_UNKNOWN,
                    "tone",
                    "Whether tone follows its aim cannot be told.",
                    sure,
                    sharper.advice(tone.budgets()));
            return;
        }
        if (tone.rmsDeltaL() < FOLLOWS) {
            add(
                    FindingKind.TONE_FOLLOWS,
                    "tone",
                    "Tone follows its aim: the print matches the file as far as this paper goes.",
                    sure,
                    "If prints look darker than the screen, lower the screen's brightness or raise"
                            + " the viewing light (ISO 3664).");
            return;
        }
        double middle = tone.meanDeltaLMidtones();
        double least = Math.max(0.7, unsure);
        String where =
                Math.abs(middle) >= least
                        ? say(
                                "Mid-tones print %.1f L* too %s.",
                                Math.abs(middle), middle < 0 ? "dark" : "light")
                        : Math.abs(tone.meanDeltaLShadows()) >= least
                                ? say(
                                        "Shadows print %.1f L* too %s.",
                                        Math.abs(tone.meanDeltaLShadows()),
                                        tone.meanDeltaLShadows() < 0 ? "dark" : "light")
                                : say("Tone departs from its aim by %.1f L*.", tone.rmsDeltaL());
        ranked.add(
                FindingKind.TONE_OFF.weighed(
                        tone.rmsDeltaL(),
                        "tone",
                        where,
                        sure,
                        middle <= -least
                                ? "Lift mid-tones by about as much in the file, or have the profile"
                                        + " made anew."
                                : "Correct with a curve in the file, or have the profile made"
                                        + " anew."));
    }
}
