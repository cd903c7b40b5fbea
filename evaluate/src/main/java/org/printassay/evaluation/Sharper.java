package org.printassay.evaluation;

import java.util.Comparator;
import java.util.List;
import org.printassay.metric.Budget;
import org.printassay.reading.Trust;

/** What makes a figure that cannot be told surer: advice against the largest part of its budget. */
final class Sharper {
    private Sharper() {}

    /**
     * Advice.
     *
     * @param budgets of the figures that are not known; none where only the spread of what was read
     *     repeatedly counts
     * @param trust how colour was obtained
     */
    static String advice(List<Budget> budgets, Trust trust) {
        return against(
                budgets.stream()
                        .max(Comparator.comparingDouble(Budget::halfWidth))
                        .map(budget -> budget.largest().kind())
                        .orElse(Budget.Kind.RANDOM),
                trust);
    }

    private static String against(Budget.Kind kind, Trust trust) {
        boolean instrument = trust == Trust.INSTRUMENT;
        return switch (kind) {
            case RANDOM ->
                    instrument
                            ? "Measure again, each patch several times."
                            : "Print the chart again, or scan with less noise.";
            case LIGHT ->
                    "Scan the print once more, turned by half, and evaluate both scans together.";
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
                        case PROFILED_SCAN, PLAIN_SCAN ->
                                "Calibrate the scanner for this paper, or measure with an instrument:"
                                        + " another print or scan does not help.";
                    };
        };
    }
}
