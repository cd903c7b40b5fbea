package org.printassay.texture;

import java.util.Arrays;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;

/**
 * Mean light by distance from an edge, in bins. Where an edge runs along rows, columns or diagonals
 * of the pixels, distances come in steps that leave bins empty: these are filled by a cubic spline
 * through the true mean distances of the filled ones.
 */
final class EdgeBins {
    /** Filled bins whose distances are nearer than this, in bins, count as one. */
    private static final double ONE = 0.5;

    private static final int FEWEST = 5;

    private final double[] light;
    private final double[] places;
    private final int[] counts;

    EdgeBins(int bins) {
        this.light = new double[bins];
        this.places = new double[bins];
        this.counts = new int[bins];
    }

    /**
     * Adds a pixel.
     *
     * @param place its distance in bins; the middle of the first bin is 0
     */
    void add(double place, double value) {
        int bin = (int) Math.round(place);
        if (bin >= 0 && bin < counts.length) {
            light[bin] += value;
            places[bin] += place;
            counts[bin]++;
        }
    }

    /** Number of bins. */
    int size() {
        return counts.length;
    }

    /**
     * Light in the middle of each bin.
     *
     * @param mostGap distance of neighbouring filled bins, in bins, up to which a gap is filled
     * @return empty when gaps are wider
     */
    double[] values(double mostGap) {
        double[] at = new double[counts.length];
        double[] mean = new double[counts.length];
        int[] weight = new int[counts.length];
        int filled = 0;
        boolean whole = true;
        for (int bin = 0; bin < counts.length; bin++) {
            if (counts[bin] == 0) {
                whole = false;
                continue;
            }
            double place = places[bin] / counts[bin];
            int last = filled - 1;
            if (last >= 0 && place - at[last] < ONE) {
                int both = weight[last] + counts[bin];
                at[last] = (at[last] * weight[last] + places[bin]) / both;
                mean[last] = (mean[last] * weight[last] + light[bin]) / both;
                weight[last] = both;
                continue;
            }
            if (last >= 0 && place - at[last] > mostGap) {
                return new double[0];
            }
            at[filled] = place;
            mean[filled] = light[bin] / counts[bin];
            weight[filled++] = counts[bin];
        }
        if (filled < FEWEST || at[0] > mostGap || counts.length - 1 - at[filled - 1] > mostGap) {
            return new double[0];
        }
        double[] values = new double[counts.length];
        if (whole) {
            Arrays.setAll(values, bin -> light[bin] / counts[bin]);
            return values;
        }
        UnivariateFunction spline =
                new SplineInterpolator()
                        .interpolate(Arrays.copyOf(at, filled), Arrays.copyOf(mean, filled));
        double from = at[0];
        double to = at[filled - 1];
        Arrays.setAll(values, bin -> spline.value(Math.max(from, Math.min(to, bin))));
        return values;
    }
}
