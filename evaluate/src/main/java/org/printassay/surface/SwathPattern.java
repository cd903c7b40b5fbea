package org.printassay.surface;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lines that repeat at one distance: the height of a swath, or a part of it where several passes
 * overlap. A nozzle that fails draws its line in every swath.
 *
 * @param periodMm distance from line to line
 * @param lines how many of the lines stand on it
 */
public record SwathPattern(double periodMm, int lines) {
    private static final int FEWEST = 4;
    private static final double SHORTEST_MM = 2;
    private static final double WITHIN_MM = 0.2;

    /** Share of the places between the first and the last line that must hold one. */
    private static final double FILLED = 0.75;

    /**
     * The repeat that most lines stand on; null when fewer than four do.
     *
     * @param positionsMm of lines, rising
     */
    public static @Nullable SwathPattern of(List<Double> positionsMm) {
        SwathPattern best = null;
        for (int i = 0; i < positionsMm.size(); i++) {
            for (int k = i + 1; k < positionsMm.size(); k++) {
                double period = positionsMm.get(k) - positionsMm.get(i);
                if (period < SHORTEST_MM) {
                    continue;
                }
                SwathPattern one = standing(positionsMm, positionsMm.get(i), period);
                if (one != null && (best == null || one.lines > best.lines)) {
                    best = one;
                }
            }
        }
        return best;
    }

    private static @Nullable SwathPattern standing(
            List<Double> positions, double start, double period) {
        List<double[]> hits = new ArrayList<>();
        double fitted = period;
        double origin = start;
        for (double position : positions) {
            double place = Math.round((position - origin) / fitted);
            if (Math.abs(position - origin - place * fitted) <= WITHIN_MM) {
                hits.add(new double[] {place, position});
                if (hits.size() > 2) {
                    // The longer the row of lines, the better the period is known.
                    double[] first = hits.get(0);
                    if (place > first[0]) {
                        fitted = (position - first[1]) / (place - first[0]);
                        origin = first[1] - first[0] * fitted;
                    }
                }
            }
        }
        if (hits.size() < FEWEST) {
            return null;
        }
        double places = hits.get(hits.size() - 1)[0] - hits.get(0)[0] + 1;
        return hits.size() >= FILLED * places ? new SwathPattern(fitted, hits.size()) : null;
    }
}
