package org.printassay.calibrate.light;

/**
 * How well each of a series of widths explains the twins, summed up: the best width and how sure it
 * is. Widths are even in their logarithm and all held possible alike before the data speak.
 */
final class Widths {
    /** The neighbourhood is blurred for every fourth width; between them it is interpolated. */
    static final int COARSE = 4;

    /** Widths that can be told apart, millimetres: 3 to 15, a factor of 1.06 apart. */
    static final double[] TRIED = tried(3, 15, 7 * COARSE + 1);

    private final double logMean;
    private final double logError;

    private Widths(double logMean, double logError) {
        this.logMean = logMean;
        this.logError = logError;
    }

    private static double[] tried(double from, double to, int count) {
        double[] widths = new double[count];
        for (int i = 0; i < count; i++) {
            widths[i] = from * Math.pow(to / from, i / (count - 1.0));
        }
        return widths;
    }

    /**
     * Weighs the widths.
     *
     * @param misfits robust sum of squares of each width of {@link #TRIED}
     */
    static Widths of(double[] misfits) {
        int best = 0;
        for (int i = 0; i < misfits.length; i++) {
            best = misfits[i] < misfits[best] ? i : best;
        }
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < misfits.length; i++) {
            double weight = Math.exp(-(misfits[i] - misfits[best]) / 2);
            double log = Math.log(TRIED[i]);
            sum += weight;
            mean += weight * log;
            square += weight * log * log;
        }
        mean /= sum;
        double spread = Math.sqrt(Math.max(0, square / sum - mean * mean));
        double step = Math.log(TRIED[1] / TRIED[0]);
        boolean inside = best > 0 && best < misfits.length - 1;
        if (!inside || spread > 1.5 * step) {
            // At an end of the range the truth may lie beyond it.
            return new Widths(mean, inside ? spread : Math.max(spread, step));
        }
        // Fixed better than the series is fine: a parabola through the best and its neighbours.
        double left = misfits[best - 1] - misfits[best];
        double right = misfits[best + 1] - misfits[best];
        double curvature = (left + right) / (step * step);
        double vertex = Math.log(TRIED[best]) + step * 0.5 * (left - right) / (left + right);
        return new Widths(vertex, Math.sqrt(2 / curvature));
    }

    /**
     * Fills in what was not computed.
     *
     * @param coarse for every {@link #COARSE}th width a vector; others are null and become cubic
     *     interpolations (modified)
     */
    static void interpolate(double[][] coarse) {
        int last = coarse.length - 1;
        for (int w = 0; w < coarse.length; w++) {
            if (w % COARSE == 0) {
                continue;
            }
            int first = Math.max(0, Math.min(last - 3 * COARSE, (w / COARSE - 1) * COARSE));
            double p = (w - first) / (double) COARSE;
            double[] by = {
                -(p - 1) * (p - 2) * (p - 3) / 6,
                p * (p - 2) * (p - 3) / 2,
                -p * (p - 1) * (p - 3) / 2,
                p * (p - 1) * (p - 2) / 6
            };
            double[] between = new double[coarse[first].length];
            for (int k = 0; k < 4; k++) {
                double[] node = coarse[first + k * COARSE];
                for (int i = 0; i < between.length; i++) {
                    between[i] += by[k] * node[i];
                }
            }
            coarse[w] = between;
        }
    }

    /** Replaces every NaN by a straight line between its neighbours (modified). */
    static void fill(double[] values) {
        int before = 0;
        for (int w = 1; w < values.length; w++) {
            if (!Double.isNaN(values[w])) {
                for (int k = before + 1; k < w; k++) {
                    double p = (k - before) / (double) (w - before);
                    values[k] = (1 - p) * values[before] + p * values[w];
                }
                before = w;
            }
        }
    }

    /** Best width, millimetres. */
    double mm() {
        return Math.exp(logMean);
    }

    /** Standard error of the logarithm of the width. */
    double logError() {
        return logError;
    }

    /** Index of the tried width nearest to the best. */
    int nearest() {
        int nearest = 0;
        for (int i = 1; i < TRIED.length; i++) {
            if (Math.abs(Math.log(TRIED[i]) - logMean)
                    < Math.abs(Math.log(TRIED[nearest]) - logMean)) {
                nearest = i;
            }
        }
        return nearest;
    }

    /** Standard error of an estimate that the width's error causes, from its values at each. */
    double errorOf(double[] estimates) {
        int at = Math.max(1, Math.min(TRIED.length - 2, nearest()));
        double slope =
                (estimates[at + 1] - estimates[at - 1]) / Math.log(TRIED[at + 1] / TRIED[at - 1]);
        return Math.abs(slope) * logError;
    }
}
