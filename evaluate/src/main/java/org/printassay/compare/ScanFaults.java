package org.printassay.compare;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparability.Reason;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.WarningCode;

/**
 * Scans of which some have a fault that others lack: a setting, or light, that moves tones. What
 * prints differ by may be that.
 */
final class ScanFaults {
    private static final Set<WarningCode> FAULTS =
            EnumSet.of(
                    WarningCode.AUTOMATIC_EXPOSURE,
                    WarningCode.AUTOMATIC_COLOUR,
                    WarningCode.HISTOGRAM_GAPS,
                    WarningCode.LEAKED_LIGHT,
                    WarningCode.PHOTOGRAPH,
                    WarningCode.PROFILE_DOUBTFUL,
                    WarningCode.SCANNER_UNEVEN,
                    WarningCode.SHARPENED);

    private static final Set<WarningCode> MARKS =
            EnumSet.of(
                    WarningCode.DISTURBED,
                    WarningCode.DUSTY,
                    WarningCode.OUT_OF_LINE,
                    WarningCode.SCATTERED,
                    WarningCode.UNLIKE_TWINS);

    private ScanFaults() {}

    /** What is to be said of them; nothing where all have the same faults, or none. */
    static List<Caution> cautions(List<Evaluation> prints) {
        List<Caution> cautions = new ArrayList<>();
        unlike(prints, FAULTS)
                .ifPresent(
                        which ->
                                cautions.add(
                                        new Caution(
                                                Reason.SCAN_FAULT,
                                                "Not all scans are equally sound ("
                                                        + which
                                                        + "): what differs may be the scan's own."
                                                        + " Scan again as their reports say.")));
        unlike(prints, MARKS)
                .ifPresent(
                        which ->
                                cautions.add(
                                        new Caution(
                                                Reason.MARKED,
                                                "Patches of some scans are in doubt ("
                                                        + which
                                                        + "): what they show may be missing here. Look at"
                                                        + " their reports.")));
        if (prints.stream().anyMatch(print -> has(print, WarningCode.EXPOSURE_UNKNOWN))) {
            cautions.add(
                    new Caution(
                            Reason.EXPOSURE,
                            "Lightness of paper and depth of black differ by the prints alone only if"
                                    + " automatic exposure was off and the lid closed in all scans."));
        }
        return cautions;
    }

    /** Which prints have what not all have; empty when none. */
    private static Optional<String> unlike(List<Evaluation> prints, Set<WarningCode> looked) {
        Set<WarningCode> common = EnumSet.copyOf(looked);
        prints.forEach(print -> common.removeIf(code -> !has(print, code)));
        List<String> unlike = new ArrayList<>();
        for (Evaluation print : prints) {
            List<String> own =
                    looked.stream()
                            .filter(code -> !common.contains(code) && has(print, code))
                            .map(WarningCode::key)
                            .toList();
            if (!own.isEmpty()) {
                unlike.add(PrintLabel.byFile(print) + ": " + String.join(", ", own));
            }
        }
        return unlike.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", unlike));
    }

    private static boolean has(Evaluation print, WarningCode code) {
        return print.warnings().stream().anyMatch(warning -> warning.code() == code);
    }
}
