package org.printassay.metric;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.printassay.colour.Lab;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/** Tells a twin that lies far from the others from twins that scatter. */
final class TwinOutliers {
    /** Robust standard deviations beyond which a twin is left out. */
    private static final double OUTLIER = 5;

    /** So many twins near a level tell how far twins usually lie from their middle. */
    private static final int NEIGHBOURHOOD = 32;

    private TwinOutliers() {}

    /**
     * Twins of a level that lie near the others. Where more than one, or of many more than a
     * quarter, lie far off, that is their scatter.
     *
     * @param levels undoubted twins of all levels
     */
    static List<Lab> without(Map<Integer, List<Lab>> levels, int level) {
        List<Lab> labs = levels.getOrDefault(level, List.of());
        if (labs.size() < 3) {
            return labs;
        }
        double usual = usualDeviation(levels, level);
        double middle = Median.of(labs.stream().mapToDouble(Lab::l).toArray());
        List<Lab> kept =
                labs.stream().filter(lab -> Math.abs(lab.l() - middle) <= OUTLIER * usual).toList();
        return labs.size() - kept.size() > Math.max(1, labs.size() / 4) ? labs : kept;
    }

    /**
     * Robust deviation of a twin among the levels nearest to one: shadows may scatter several times
     * more than highlights, and the most of a sheet is light.
     */
    private static double usualDeviation(Map<Integer, List<Lab>> levels, int level) {
        List<Integer> nearest = new ArrayList<>(levels.keySet());
        nearest.sort(Comparator.comparingInt(other -> Math.abs(other - level)));
        List<Double> deviations = new ArrayList<>();
        for (int other : nearest) {
            List<Lab> labs = levels.getOrDefault(other, List.of());
            if (labs.size() >= 2 && deviations.size() < NEIGHBOURHOOD) {
                double middle = Median.of(labs.stream().mapToDouble(Lab::l).toArray());
                double widen = Math.sqrt(labs.size() / (labs.size() - 1.0));
                labs.forEach(lab -> deviations.add(Math.abs(lab.l() - middle) * widen));
            }
        }
        if (deviations.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double usual = Median.upper(deviations.stream().mapToDouble(d -> d).toArray());
        return Math.max(0.02, Mad.TO_SIGMA * usual);
    }
}
