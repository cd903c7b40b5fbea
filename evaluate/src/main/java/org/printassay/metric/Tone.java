package org.printassay.metric;

import java.util.List;

/**
 * Tonal linearity: measured L* of neutrals against their aim.
 *
 * @param aim which aim, in words
 * @param rmsDeltaL root mean square dL* over the neutral ramp
 * @param rmsUncertainty 95 % half-width of it
 * @param maxDeltaL largest dL* by size, with its sign
 * @param maxAtLevel level of it
 * @param meanDeltaLShadows mean dL* where the file's L* is below 33
 * @param meanDeltaLMidtones mean dL* between
 * @param meanDeltaLHighlights mean dL* where the file's L* is above 67
 * @param monotonic whether L* never significantly falls with rising level
 * @param reversalLevels where it does
 * @param points the curve, ascending level
 * @param irregularities where greys do not run smoothly, surest first
 * @param budgets what the uncertainty is made of; empty when read from a file
 */
public record Tone(
        String aim,
        double rmsDeltaL,
        double rmsUncertainty,
        double maxDeltaL,
        int maxAtLevel,
        double meanDeltaLShadows,
        double meanDeltaLMidtones,
        double meanDeltaLHighlights,
        boolean monotonic,
        List<Integer> reversalLevels,
        List<Point> points,
        List<Irregularity> irregularities,
        List<Budget> budgets) {
    public Tone {
        budgets = List.copyOf(budgets);
        reversalLevels = List.copyOf(reversalLevels);
        points = List.copyOf(points);
        irregularities = List.copyOf(irregularities);
    }

    /** Without budgets. */
    public Tone(
            String aim,
            double rmsDeltaL,
            double rmsUncertainty,
            double maxDeltaL,
            int maxAtLevel,
            double meanDeltaLShadows,
            double meanDeltaLMidtones,
            double meanDeltaLHighlights,
            boolean monotonic,
            List<Integer> reversalLevels,
            List<Point> points,
            List<Irregularity> irregularities) {
        this(
                aim,
                rmsDeltaL,
                rmsUncertainty,
                maxDeltaL,
                maxAtLevel,
                meanDeltaLShadows,
                meanDeltaLMidtones,
                meanDeltaLHighlights,
                monotonic,
                reversalLevels,
                points,
                irregularities,
                List.of());
    }

    /**
     * One level of the curve.
     *
     * @param level 8-bit code
     * @param fileL L* of the code in its RGB encoding
     * @param measuredL mean measured L*
     * @param aimL aim L*
     * @param standardError of measuredL
     * @param localContrast slope of measured against aim around this level, 1 = as the aim
     */
    public record Point(
            int level,
            double fileL,
            double measuredL,
            double aimL,
            double standardError,
            double localContrast) {}
}
