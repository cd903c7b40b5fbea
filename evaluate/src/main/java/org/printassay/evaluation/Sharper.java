package org.printassay.evaluation;

import java.util.Comparator;
import java.util.List;
import org.printassay.metric.Budget;
import org.printassay.reading.Trust;

/**
 * What makes a figure that cannot be told surer: advice against the largest part of its budget.
 *
 * @param trust how colour was obtained
 * @param coded whether lossy compression or an edit keeps the scan's colours in steps, which then
 *     are part of what its light leaves open
 */
record Sharper(Trust trust, boolean coded) {
    /**
     * Advice.
     *
     * @param budgets of the figures that are not known; none where only the spread of what was read
     *     repeatedly counts
     */
    String advice(List<Budget> budgets) {
        return against(
                budgets.stream()
                        .max(Comparator.comparingDouble(Budget::halfWidth))
                        .map(budget -> budget.largest().kind())
                        .orElse(Budget.Kind.RANDOM));
    }

    private String against(Budget.Kind kind) {
        boolean instrument = trust == Trust.INSTRUMENT;
        return switch (kind) {
            case RANDOM ->
                    instrument
                            ? "Measure again, each patch several times."
                            : "Print the chart again, or scan with less noise.";
            case LIGHT ->
                    coded
                            ? "Scan again as TIFF or PNG with 16 bits, unedited, and once more turned by"
                                    + " 180 degrees, and evaluate both together."
                            : "Scan the print once more, turned by 180 degrees, and evaluate both scans"
                                    + " together.";
            case CALIBRATION ->
                    trust == Trust.CALIBRATED_SCAN
                            ? "Calibrate the scanner for this printer and paper: with this calibration"
                                    + " neither another print nor another scan helps."
                            : "Scan with automatic corrections off and the scanner's own profile, or"
                                    + " calibrate the scanner for this paper: another print does not"
                                    + " help.";
            case SYSTEMATIC ->
                    switch (trust) {
                        case INSTRUMENT -> "Neither another print nor another measurement helps.";
                        case CALIBRATED_SCAN ->
                                "Measure with an instrument: another print or scan does not help.";
                        case PLAIN_SCAN ->
                                "Scan on a flatbed with the scanner's profile embedded, or measure with"
                                        + " an instrument: another print does not help.";
                        case PROFILED_SCAN ->
                                "Calibrate the scanner for this paper, or measure with an instrument:"
                                        + " another print or scan does not help.";
                    };
        };
    }
}
