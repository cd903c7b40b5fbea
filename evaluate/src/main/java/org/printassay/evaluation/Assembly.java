package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.Unevenness;
import org.printassay.colour.Rgb8;
import org.printassay.metric.Judgement;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** Puts judgements, findings and warnings together into an evaluation. */
final class Assembly {
    private static final double DRIED_AT_LEAST_HOURS = 1;

    private Assembly() {}

    /**
     * What was found of the light over the sheet.
     *
     * @param falloffPercent what was evened out
     * @param whose how much of that is the scanner's; null without a repeat that was turned
     */
    record Light(double falloffPercent, @Nullable Unevenness whose) {
        static final Light EVEN = new Light(0, null);
    }

    /**
     * The evaluation of readings that were judged.
     *
     * @param known what is known about the print besides its readings
     */
    static Evaluation evaluation(
            ReadingSet set, Judgement judged, EvaluationBuilder known, Light light) {
        Evaluation origin = known.build();
        List<Warning> warnings = new ArrayList<>(origin.warnings());
        note(
                warnings,
                judged.white() == null,
                WarningCode.WHITE_NOT_JUDGED,
                "Paper white was not judged: no patch of code 255 was read.");
        boolean absolute = set.trust().absolute();
        boolean whiteClipped = judged.white() != null && judged.white().lab() == null && absolute;
        boolean blackClipped = judged.black() != null && judged.black().lab() == null && absolute;
        note(
                warnings,
                whiteClipped,
                WarningCode.WHITE_NOT_JUDGED,
                "Paper white was not judged: it is clipped in the scan.");
        note(
                warnings,
                blackClipped,
                WarningCode.BLACK_NOT_JUDGED,
                "Black was not judged: it is clipped in the scan.");
        note(
                warnings,
                judged.black() == null,
                WarningCode.BLACK_NOT_JUDGED,
                "Black was not judged: no patch of code 0 was read.");
        note(
                warnings,
                judged.tone() == null,
                WarningCode.TONE_NOT_JUDGED,
                whiteClipped || blackClipped
                        ? "Tone was not judged: "
                                + (whiteClipped ? "paper" : "black")
                                + ", which its aim hangs on, is clipped in the scan."
                        : clipped(warnings)
                                ? "Tone was not judged: paper or black, which its aim hangs on, is"
                                        + " clipped in the scan, or too few levels were read."
                                : "Tone was not judged: it needs paper, black and at least six"
                                        + " neutral levels.");
        lost(warnings, judged);
        note(
                warnings,
                judged.shadows() == null,
                WarningCode.SHADOWS_NOT_JUDGED,
                clipped(warnings) || blackClipped
                        ? "Shadows were not judged: black is clipped in the scan, or too few levels"
                                + " were read."
                        : "Shadows were not judged: too few neutral levels from 0 to 48 were read.");
        note(
                warnings,
                judged.highlights() == null,
                WarningCode.HIGHLIGHTS_NOT_JUDGED,
                clipped(warnings) || whiteClipped
                        ? "Highlights were not judged: paper is clipped in the scan, or too few levels"
                                + " were read."
                        : "Highlights were not judged: too few neutral levels from 207 to 255 were"
                                + " read.");
        note(
                warnings,
                judged.neutrality() == null,
                WarningCode.NEUTRALITY_NOT_JUDGED,
                set.colour()
                        ? "Neutrality was not judged: too few neutral levels were read, or paper is"
                                + " clipped."
                        : "Neutrality was not judged: the scan is grey.");
        note(
                warnings,
                judged.meanDeltaE00() == null,
                WarningCode.COLOURS_NOT_JUDGED,
                whiteClipped || blackClipped
                        ? "Colours were not judged: "
                                + (whiteClipped ? "paper" : "black")
                                + ", which their aim hangs on, is clipped in the scan."
                        : set.trust().absolute()
                                ? "Colours were not judged: too few patches of the colour cube were read."
                                : "Colours were not judged: that takes a scan with its scanner's"
                                        + " profile.");
        note(
                warnings,
                judged.largestTwinDifference() == null,
                WarningCode.EVENNESS_NOT_JUDGED,
                evenness(set, warnings));
        note(warnings, !judged.repeats(), WarningCode.NO_REPEATS, once(origin.measurement()));
        note(
                warnings,
                origin.surface() == null,
                WarningCode.LINES_NOT_JUDGED,
                "Lines and bands were not judged: they need a scan.");
        note(
                warnings,
                origin.surface() == null,
                WarningCode.TEXTURE_NOT_JUDGED,
                "Grain, mottle, sharpness and vignettes were not judged: they need a scan.");
        note(
                warnings,
                set.trust() == Trust.PLAIN_SCAN,
                WarningCode.THRESHOLD_APPROXIMATE,
                "Levels hold roughly: without a profile the scanner's own tone is not known.");
        Double dried = origin.details().driedHours();
        note(
                warnings,
                dried != null && dried < DRIED_AT_LEAST_HOURS,
                WarningCode.DRYING,
                "The print dried for less than an hour; colours still move. Wait 24 hours.");
        Double deltaE = judged.meanDeltaE00();
        Double twins = judged.largestTwinDifference();
        Evaluation evaluation =
                known.white(judged.white())
                        .black(judged.black())
                        .patches(set.readings())
                        .tone(judged.tone())
                        .shadows(judged.shadows())
                        .highlights(judged.highlights())
                        .neutrality(judged.neutrality())
                        .colours(
                                deltaE == null
                                        ? null
                                        : new Colours(
                                                deltaE, judged.gamutVolume(), judged.colours()))
                        .evenness(
                                twins == null
                                        ? null
                                        : new Evenness(
                                                twins,
                                                light.falloffPercent(),
                                                light.whose(),
                                                judged.gradient()))
                        .warnings(warnings)
                        .uncertainty(judged.budgets())
                        .build();
        return evaluation.toBuilder()
                .findings(Findings.told(Findings.ranked(evaluation, judged.repeats())))
                .build();
    }

    private static void lost(List<Warning> warnings, Judgement judged) {
        boolean edited = has(warnings, WarningCode.HISTOGRAM_GAPS);
        boolean lossy = lossy(warnings);
        note(
                warnings,
                judged.lostInCoding().contains(Judgement.End.SHADOWS),
                WarningCode.SHADOWS_NOT_JUDGED,
                lost("Shadows were", "dark greys", edited, lossy));
        note(
                warnings,
                judged.lostInCoding().contains(Judgement.End.HIGHLIGHTS),
                WarningCode.HIGHLIGHTS_NOT_JUDGED,
                lost("Highlights were", "light greys", edited, lossy));
    }

    /** Nothing but edits and compression keeps steps, so it is one of them, told or not. */
    private static boolean lossy(List<Warning> warnings) {
        return !has(warnings, WarningCode.HISTOGRAM_GAPS) || has(warnings, WarningCode.LOSSY);
    }

    /** Why no twins could be held against each other. */
    private static String evenness(ReadingSet set, List<Warning> warnings) {
        if (!twins(set, EnumSet.allOf(ReadingFlag.class))) {
            return "Evenness was not judged: nothing was read twice.";
        }
        boolean coded =
                twins(
                        set,
                        EnumSet.of(
                                ReadingFlag.UNLIKE_TWINS,
                                ReadingFlag.DISTURBED,
                                ReadingFlag.UNSURE,
                                ReadingFlag.COARSE));
        return coded
                ? lost(
                        "Evenness was",
                        "what was read twice",
                        has(warnings, WarningCode.HISTOGRAM_GAPS),
                        lossy(warnings))
                : "Evenness was not judged: of what was read twice no two readings are beyond"
                        + " doubt.";
    }

    /** Whether any code has two readings that are flagged for nothing else. */
    private static boolean twins(ReadingSet set, Set<ReadingFlag> flags) {
        Set<Rgb8> seen = new HashSet<>();
        return set.readings().stream()
                .filter(one -> one.lab() != null || one.labRelative() != null)
                .filter(one -> flags.containsAll(one.flags()))
                .anyMatch(one -> !seen.add(one.rgb()));
    }

    private static String lost(String what, String colours, boolean edited, boolean lossy) {
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

    private static String once(@Nullable MeasurementSummary measurement) {
        return measurement != null && measurement.repeats() > 1
                ? "Codes were printed once, or hardly any twice. Repeated measurements show how well"
                        + " the instrument repeats, not how evenly the printer prints, so levels have"
                        + " no interval."
                : "Codes were read once, or hardly any twice, so nothing can be said about how sure"
                        + " the results are.";
    }

    private static boolean clipped(List<Warning> warnings) {
        return has(warnings, WarningCode.CLIPPED);
    }

    private static boolean has(List<Warning> warnings, WarningCode code) {
        return warnings.stream().anyMatch(warning -> warning.code() == code);
    }

    private static void note(List<Warning> warnings, boolean when, WarningCode code, String text) {
        if (when && warnings.stream().noneMatch(warning -> warning.code() == code)) {
            warnings.add(new Warning(code, text));
        }
    }
}
