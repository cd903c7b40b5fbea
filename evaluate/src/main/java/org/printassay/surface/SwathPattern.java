package org.printassay.surface;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.util.CombinatoricsUtils;
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

    /** Rows that as many lines at random would make; more than this and a row tells nothing. */
    private static final double CHANCE = 0.01;

    /**
     * The repeat that most lines stand on; null when fewer than four do, or when lines at random
     * would stand so as well.
     *
     * @param positionsMm of lines, rising
     * @param lengthMm of the tints that they were looked for in
     * @param throughMm a line that must be among them
     */
    public static @Nullable SwathPattern of(
            List<Double> positionsMm, double lengthMm, double throughMm) {
        SwathPattern best = null;
        for (int i = 0; i < positionsMm.size(); i++) {
            for (int k = i + 1; k < positionsMm.size(); k++) {
                double period = positionsMm.get(k) - positionsMm.get(i);
                if (period < SHORTEST_MM) {
                    continue;
                }
                SwathPattern one =
                        standing(positionsMm, positionsMm.get(i), period, lengthMm, throughMm);
                if (one != null && (best == null || one.lines > best.lines)) {
                    best = one;
                }
            }
        }
        return best;
    }

    private static @Nullable SwathPattern standing(
            List<Double> positions, double start, double period, double length, double through) {
        List<double[]> hits = new ArrayList<>();
        double fitted = period;
        double origin = start;
        for (double position : positions) {
            double place = Math.round((position - origin) / fitted);
            boolean taken = !hits.isEmpty() && hits.get(hits.size() - 1)[0] == place;
            if (!taken && Math.abs(position - origin - place * fitted) <= WITHIN_MM) {
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
        int places = (int) (hits.get(hits.size() - 1)[0] - hits.get(0)[0]) + 1;
        boolean among = hits.stream().anyMatch(hit -> Math.abs(hit[1] - through) <= WITHIN_MM);
        boolean filled = hits.size() >= FILLED * places;
        return among && filled && rows(positions.size(), hits.size(), places, length) < CHANCE
                ? new SwathPattern(fitted, hits.size())
                : null;
    }

    /**
     * How many such rows lines at random places make: any two of them begin one, and each further
     * place is hit by chance.
     */
    private static double rows(int lines, int hits, int places, double length) {
        double hit = Math.min(1, 2 * WITHIN_MM * lines / length);
        double pairs = lines * (lines - 1) / 2.0;
        double ways = CombinatoricsUtils.binomialCoefficientDouble(places - 2, hits - 2);
        return pairs * ways * Math.pow(hit, hits - 2);
    }
}
