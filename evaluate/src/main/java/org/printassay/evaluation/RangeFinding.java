package org.printassay.evaluation;

import static org.printassay.evaluation.Say.say;

import org.printassay.colour.Lab;
import org.printassay.metric.Extreme;
import org.printassay.reading.Trust;

/** How white the paper and how deep the black is, in words. */
final class RangeFinding {
    /** L* of a black from which pictures look dull (common practice, no source). */
    private static final double GREY = 14;

    /** A black known no better than this, L*, is not known. */
    private static final double UNKNOWN_BLACK = 3;

    private RangeFinding() {}

    static Weighed of(Extreme white, Extreme black, Sharper sharper, boolean scannerLimited) {
        Trust trust = sharper.trust();
        Lab paper = white.lab();
        Lab ink = black.lab();
        if (trust.absolute() && (paper == null || ink == null)) {
            return FindingKind.RANGE_CLIPPED.weighed(
                    "white",
                    paper == null
                            ? "How white the paper is, and what it does to highlights and greys,"
                                    + " cannot be told."
                            : "How deep the black is cannot be told.",
                    "The scan is clipped there.",
                    "Scan again with a lower exposure and automatic corrections off, or in a wider"
                            + " colour space.");
        }
        if (paper == null || ink == null) {
            return FindingKind.RANGE_UNKNOWN.weighed(
                    "white",
                    "How white the paper and how deep the black is cannot be told.",
                    "Without its scanner's profile a scan tells lightness only relative to the paper.",
                    "Scan on a flatbed, with the scanner's profile embedded.");
        }
        if (scannerLimited) {
            return FindingKind.BLACK_UNKNOWN.weighed(
                    "black",
                    say("How deep the black is cannot be told; it reads L* %.1f.", ink.l()),
                    say("The scanner's own floor may hide it. Paper white L* %.1f.", paper.l()),
                    "Scan with the lid closed, or measure with an instrument.");
        }
        double unsure = black.uncertainty().l();
        if (unsure > UNKNOWN_BLACK && Math.abs(ink.l() - GREY) < unsure) {
            return FindingKind.BLACK_UNKNOWN.weighed(
                    "black",
                    say("How deep the black is cannot be told; it reads L* %.1f.", ink.l()),
                    say("± %.1f, %s. Paper white L* %.1f.", unsure, basis(trust), paper.l()),
                    sharper.advice(black.budgets().stream().limit(1).toList()));
        }
        FindingKind kind = ink.l() > GREY ? FindingKind.BLACK_GREY : FindingKind.BLACK_DEEP;
        return kind.weighed(
                "black",
                ink.l() > GREY
                        ? say("The black is grey: L* %.1f. Dark pictures will look dull.", ink.l())
                        : say("The black is deep: L* %.1f.", ink.l()),
                say(
                        "± %.1f, %s. Paper white L* %.1f.",
                        black.uncertainty().l(), basis(trust), paper.l()),
                "");
    }

    private static String basis(Trust trust) {
        return TrustWords.basis(
                trust,
                "true only if automatic corrections were off and the scanner adds no light of its"
                        + " own, which no scan can show");
    }
}
