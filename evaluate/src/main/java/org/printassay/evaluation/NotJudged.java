package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.colour.Rgb8;
import org.printassay.metric.Judgement;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** What of a print is not judged, or holds only roughly, and why: a note for each, once. */
final class NotJudged {
    private static final double DRIED_AT_LEAST_HOURS = 1;

    private final ReadingSet set;
    private final Judgement judged;
    private final Evaluation origin;
    private final List<Warning> warnings;
    private final boolean whiteClipped;
    private final boolean blackClipped;

    private NotJudged(Evaluation origin, ReadingSet set, Judgement judged) {
        this.set = set;
        this.judged = judged;
        this.origin = origin;
        this.warnings = new ArrayList<>(origin.warnings());
        boolean absolute = set.trust().absolute();
        this.whiteClipped = absolute && judged.white() != null && judged.white().lab() == null;
        this.blackClipped = absolute && judged.black() != null && judged.black().lab() == null;
    }

    /**
     * The warnings that were there, and after them what is not judged.
     *
     * @param origin what is known about the print besides its readings
     */
    static List<Warning> added(Evaluation origin, ReadingSet set, Judgement judged) {
        NotJudged notes = new NotJudged(origin, set, judged);
        notes.ends();
        notes.tone();
        notes.lostInCoding();
        notes.shadows();
        notes.highlights();
        notes.neutrality();
        notes.colours();
        notes.evenness();
        notes.repeats();
        notes.surface();
        notes.roughly();
        return notes.warnings;
    }

    private void ends() {
        note(
                judged.white() == null,
                WarningCode.WHITE_NOT_JUDGED,
                "Paper white was not judged: no patch of code 255 was read.");
        note(
                whiteClipped,
                WarningCode.WHITE_NOT_JUDGED,
                "Paper white was not judged: it is clipped in the scan.");
        note(
                blackClipped,
                WarningCode.BLACK_NOT_JUDGED,
                "Black was not judged: it is clipped in the scan.");
        note(
                judged.black() == null,
                WarningCode.BLACK_NOT_JUDGED,
                "Black was not judged: no patch of code 0 was read.");
    }

    private void tone() {
        String why;
        if (whiteClipped || blackClipped) {
            why = clippedEnd() + ", which its aim hangs on, is clipped in the scan.";
        } else if (has(WarningCode.CLIPPED)) {
            why =
                    "paper or black, which its aim hangs on, is clipped in the scan, or too few"
                            + " levels were read.";
        } else {
            why = "it needs paper, black and at least six neutral levels.";
        }
        note(judged.tone() == null, WarningCode.TONE_NOT_JUDGED, "Tone was not judged: " + why);
    }

    private String clippedEnd() {
        return whiteClipped ? "paper" : "black";
    }

    private void lostInCoding() {
        note(
                judged.lostInCoding().contains(Judgement.End.SHADOWS),
                WarningCode.SHADOWS_NOT_JUDGED,
                lost("Shadows were", "dark greys"));
        note(
                judged.lostInCoding().contains(Judgement.End.HIGHLIGHTS),
                WarningCode.HIGHLIGHTS_NOT_JUDGED,
                lost("Highlights were", "light greys"));
    }

    private void shadows() {
        note(
                judged.shadows() == null,
                WarningCode.SHADOWS_NOT_JUDGED,
                has(WarningCode.CLIPPED) || blackClipped
                        ? "Shadows were not judged: black is clipped in the scan, or too few levels"
                                + " were read."
                        : "Shadows were not judged: too few neutral levels from 0 to 48 were read.");
    }

    private void highlights() {
        note(
                judged.highlights() == null,
                WarningCode.HIGHLIGHTS_NOT_JUDGED,
                has(WarningCode.CLIPPED) || whiteClipped
                        ? "Highlights were not judged: paper is clipped in the scan, or too few levels"
                                + " were read."
                        : "Highlights were not judged: too few neutral levels from 207 to 255 were"
                                + " read.");
    }

    private void neutrality() {
        note(
                judged.neutrality() == null,
                WarningCode.NEUTRALITY_NOT_JUDGED,
                set.colour()
                        ? "Neutrality was not judged: too few neutral levels were read, or paper is"
                                + " clipped."
                        : "Neutrality was not judged: the scan is grey.");
    }

    private void colours() {
        String why;
        if (whiteClipped || blackClipped) {
            why = clippedEnd() + ", which their aim hangs on, is clipped in the scan.";
        } else if (set.trust().absolute()) {
            why = "too few patches of the colour cube were read.";
        } else {
            why = "that takes a scan with its scanner's profile.";
        }
        note(
                judged.meanDeltaE00() == null,
                WarningCode.COLOURS_NOT_JUDGED,
                "Colours were not judged: " + why);
    }

    /** Why no twins could be held against each other. */
    private void evenness() {
        String text;
        if (!twins(EnumSet.allOf(ReadingFlag.class))) {
            text = "Evenness was not judged: nothing was read twice.";
        } else if (twins(
                EnumSet.of(
                        ReadingFlag.UNLIKE_TWINS,
                        ReadingFlag.DISTURBED,
                        ReadingFlag.UNSURE,
                        ReadingFlag.COARSE))) {
            text = lost("Evenness was", "what was read twice");
        } else {
            text =
                    "Evenness was not judged: of what was read twice no two readings are beyond"
                            + " doubt.";
        }
        note(judged.largestTwinDifference() == null, WarningCode.EVENNESS_NOT_JUDGED, text);
    }

    /** Whether any code has two readings that are flagged for nothing else. */
    private boolean twins(Set<ReadingFlag> flags) {
        Set<Rgb8> seen = new HashSet<>();
        return set.readings().stream()
                .filter(one -> one.lab() != null || one.labRelative() != null)
                .filter(one -> flags.containsAll(one.flags()))
                .anyMatch(one -> !seen.add(one.rgb()));
    }

    private void repeats() {
        MeasurementSummary measurement = origin.measurement();
        note(
                !judged.repeats(),
                WarningCode.NO_REPEATS,
                measurement != null && measurement.repeats() > 1
                        ? "Codes were printed once, or hardly any twice. Repeated measurements show"
                                + " how well the instrument repeats, not how evenly the printer"
                                + " prints, so levels have no interval."
                        : "Codes were read once, or hardly any twice, so nothing can be said about"
                                + " how sure the results are.");
    }

    private void surface() {
        note(
                origin.surface() == null,
                WarningCode.LINES_NOT_JUDGED,
                "Lines and bands were not judged: they need a scan.");
        note(
                origin.surface() == null,
                WarningCode.TEXTURE_NOT_JUDGED,
                "Grain, mottle, sharpness and vignettes were not judged: they need a scan.");
    }

    private void roughly() {
        note(
                set.trust() == Trust.PLAIN_SCAN,
                WarningCode.THRESHOLD_APPROXIMATE,
                "Levels hold roughly: without a profile the scanner's own tone is not known.");
        Double dried = origin.details().driedHours();
        note(
                dried != null && dried < DRIED_AT_LEAST_HOURS,
                WarningCode.DRYING,
                "The print dried for less than an hour; colours still move. Wait 24 hours.");
    }

    /** Nothing but edits and compression keeps steps, so it is one of them, told or not. */
    private String lost(String what, String colours) {
        boolean edited = has(WarningCode.HISTOGRAM_GAPS);
        boolean lossy = !edited || has(WarningCode.LOSSY);
        String why =
                edited && lossy
                        ? "an edit in 8 bits and the scan's lossy compression leave "
                        : edited
                                ? "an edit in 8 bits left "
                                : "the scan's lossy compression keeps ";
        String advice =
                edited && lossy
                        ? "Save the scan as it comes, as TIFF or PNG with 16 bits."
                        : edited
                                ? "Save the scan as it comes, with 16 bits."
                                : "Save scans as TIFF or PNG, or at the highest JPEG quality.";
        return what
                + " not judged: "
                + why
                + colours
                + " in steps that are coarser than what shows. "
                + advice;
    }

    private boolean has(WarningCode code) {
        return warnings.stream().anyMatch(warning -> warning.code() == code);
    }

    private void note(boolean when, WarningCode code, String text) {
        if (when && !has(code)) {
            warnings.add(new Warning(code, text));
        }
    }
}
