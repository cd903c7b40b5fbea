package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;

/**
 * What lossy coding, or gaps that an edit in 8 bits left between codes, leaves unknown of the
 * lightness of neutral levels. It keeps the means of even areas in steps, and patches of about one
 * lightness fall on the same step, so that no number of twins averages it out. Where the print's
 * own grain, or the spread between twins, reaches over a step, the mean is nearly right all the
 * same: of a rounding error with the step q, a spread s before the rounding leaves the share exp(-2
 * pi^2 s^2 / q^2) (B. Widrow, "Statistical analysis of amplitude-quantized sampled-data systems",
 * Trans. AIEE 79 part II, 1961: its first harmonic; from memory). The spread is read after the
 * rounding, which exaggerates it between two steps: lower quartiles are taken, which come from
 * readings in the middle of a step.
 */
final class CodingLoss {
    /** Levels to both sides whose readings tell the spread. */
    private static final int AROUND = 24;

    /** A patch is read from so many blocks at least; its standard error is that of their mean. */
    private static final double BLOCKS = 9;

    /** Standard deviation of a normal distribution by the lower quartile of its deviations. */
    private static final double QUARTILE_TO_SIGMA = 1 / 0.3186;

    private static final double ROUNDING = 1 / Math.sqrt(12);

    private CodingLoss() {}

    /** Standard error of the L* of a level by the steps it is kept in; 0 without. */
    static double error(ReadingSet set, List<LevelData> levels, int level) {
        if (set.codingSteps().isEmpty()) {
            return 0;
        }
        List<Double> steps = new ArrayList<>();
        List<Double> grain = new ArrayList<>();
        for (int i = 0; i < set.readings().size(); i++) {
            Reading reading = set.readings().get(i);
            if (!reading.rgb().isNeutral() || Math.abs(reading.rgb().r() - level) > AROUND) {
                continue;
            }
            if (reading.rgb().r() == level) {
                steps.add(set.codingSteps().get(i));
            }
            if (reading.standardError() != null && !Double.isNaN(reading.standardError().l())) {
                grain.add(reading.standardError().l());
            }
        }
        double step = steps.stream().mapToDouble(s -> s).average().orElse(0);
        if (step == 0) {
            return 0;
        }
        double spread =
                Math.hypot(Math.sqrt(BLOCKS) * lowerQuartile(grain), betweenTwins(levels, level));
        double share = Math.exp(-2 * Math.pow(Math.PI * spread / step, 2));
        return ROUNDING * step * share;
    }

    private static double betweenTwins(List<LevelData> levels, int level) {
        List<Double> deviations = new ArrayList<>();
        for (LevelData data : levels) {
            int n = data.count();
            if (n < 2 || Math.abs(data.level() - level) > AROUND) {
                continue;
            }
            double middle = data.mean().l();
            double widen = Math.sqrt(n / (n - 1.0));
            data.kept().forEach(lab -> deviations.add(Math.abs(lab.l() - middle) * widen));
        }
        return QUARTILE_TO_SIGMA * lowerQuartile(deviations);
    }

    private static double lowerQuartile(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[sorted.length / 4];
    }
}
