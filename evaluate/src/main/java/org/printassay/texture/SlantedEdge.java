package org.printassay.texture;

import org.jspecify.annotations.Nullable;

/**
 * Spatial frequency response of a slanted edge, after ISO 12233 (edge-based response): the edge is
 * placed to a fraction of a pixel, all pixels are sorted by their distance from it into bins of a
 * quarter pixel (edge spread function), its derivative (line spread function) is windowed and
 * transformed, and what derivative and bins do is corrected. Here the edge is placed by least
 * squares on the edge spread function itself, which needs no rows along the sampling, so that the
 * edge may be turned by any angle in the scan.
 */
public final class SlantedEdge {
    private static final int PER_PIXEL = 4;

    /** Light further than this from the edge is not used. */
    private static final double REACH_MM = 1.5;

    /**
     * Where an edge runs along the pixels, their distances from it come in steps of a pixel, and
     * along their diagonals of 0.71 pixels. Wider steps than this leave the response unknown.
     */
    private static final double MOST_GAP_PIXELS = 0.85;

    private static final int ROUNDS = 5;
    private static final double FREQUENCY_STEP = 0.05;
    private static final int FEWEST_PIXELS = 400;

    /** Dark and light must differ by this share of the light. */
    private static final double LEAST_CONTRAST = 0.15;

    private final double[] across;
    private final double[] along;
    private final double[] light;
    private final double pitchMm;

    private SlantedEdge(double[] across, double[] along, double[] light, double pitchMm) {
        this.across = across;
        this.along = along;
        this.light = light;
        this.pitchMm = pitchMm;
    }

    /**
     * The response of one edge.
     *
     * @param across distance of each pixel from where the edge should be, millimetres, square to it
     * @param along position of each pixel along the edge, millimetres, 0 in the middle
     * @param light linear light of each pixel
     * @param pitchMm distance between pixels
     * @return null when there is no clean edge
     */
    public static @Nullable EdgeResponse response(
            double[] across, double[] along, double[] light, double pitchMm) {
        if (across.length < FEWEST_PIXELS) {
            return null;
        }
        return new SlantedEdge(across, along, light, pitchMm).measured();
    }

    private @Nullable EdgeResponse measured() {
        double offset = 0;
        double slope = 0;
        double binMm = pitchMm / PER_PIXEL;
        int half = (int) Math.floor(reach() / binMm);
        double[] spread = new double[0];
        for (int round = 0; round < ROUNDS; round++) {
            // Wide bins first, so that a badly placed edge is caught.
            int wide = round < 2 ? 4 : 1;
            spread = spread(offset, slope, binMm * wide, half / wide);
            if (spread.length == 0) {
                return null;
            }
            double[] step = correction(spread, offset, slope, binMm * wide);
            offset += step[0];
            slope += step[1];
            if (Math.abs(offset) > REACH_MM / 2 || Math.abs(slope) > 0.2) {
                return null;
            }
        }
        spread = spread(offset, slope, binMm, half);
        return spread.length == 0 ? null : EdgeResponse.of(spread, binMm, FREQUENCY_STEP);
    }

    private double reach() {
        double far = 0;
        for (double value : across) {
            far = Math.max(far, Math.abs(value));
        }
        return Math.min(REACH_MM, 0.9 * far);
    }

    private double distance(int i, double offset, double slope) {
        return (across[i] - offset - slope * along[i]) / Math.sqrt(1 + slope * slope);
    }

    /** Light by distance, normalised to 0 on one side and 1 on the other; empty without an edge. */
    private double[] spread(double offset, double slope, double binMm, int half) {
        EdgeBins bins = new EdgeBins(2 * half + 1);
        for (int i = 0; i < across.length; i++) {
            bins.add(distance(i, offset, slope) / binMm + half, light[i]);
        }
        double mostGap = binMm < pitchMm ? MOST_GAP_PIXELS * pitchMm / binMm : bins.size();
        double[] sums = bins.values(mostGap);
        if (sums.length == 0) {
            return sums;
        }
        double low = end(sums, 0);
        double high = end(sums, sums.length - sums.length / 5);
        if (Math.abs(high - low) < LEAST_CONTRAST * Math.max(high, low)) {
            return new double[0];
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] = (sums[i] - low) / (high - low);
        }
        return sums;
    }

    private static double end(double[] values, int from) {
        double sum = 0;
        int n = Math.max(1, values.length / 5);
        for (int i = from; i < from + n; i++) {
            sum += values[i];
        }
        return sum / n;
    }

    /** How much the edge must move and turn, by least squares on the edge spread function. */
    private double[] correction(double[] spread, double offset, double slope, double binMm) {
        int half = spread.length / 2;
        double[] ends = levels(offset, slope, half * binMm);
        double low = ends[0];
        double scale = ends[1] - ends[0];
        double aa = 0;
        double ab = 0;
        double bb = 0;
        double a = 0;
        double b = 0;
        for (int i = 0; i < across.length; i++) {
            double at = distance(i, offset, slope) / binMm + half;
            int left = (int) Math.floor(at);
            if (left < 1 || left >= spread.length - 2) {
                continue;
            }
            double share = at - left;
            double expected = (1 - share) * spread[left] + share * spread[left + 1];
            double gradient = (spread[left + 1] - spread[left]) / binMm;
            double miss = (light[i] - low) / scale - expected;
            // Moving the edge by d lowers the light at a pixel by gradient * d.
            double g = -gradient;
            double h = g * along[i];
            aa += g * g;
            ab += g * h;
            bb += h * h;
            a += g * miss;
            b += h * miss;
        }
        double determinant = aa * bb - ab * ab;
        if (!(Math.abs(determinant) > 1e-12)) {
            return new double[2];
        }
        // The common offset is free: the spread is centred on its own half-way crossing instead.
        double turn = (aa * b - ab * a) / determinant;
        return new double[] {crossing(spread) * binMm, turn};
    }

    private double[] levels(double offset, double slope, double reachMm) {
        double[] sums = new double[2];
        int[] counts = new int[2];
        for (int i = 0; i < across.length; i++) {
            double d = distance(i, offset, slope);
            if (Math.abs(d) > 0.6 * reachMm && Math.abs(d) <= reachMm) {
                sums[d < 0 ? 0 : 1] += light[i];
                counts[d < 0 ? 0 : 1]++;
            }
        }
        return new double[] {sums[0] / Math.max(1, counts[0]), sums[1] / Math.max(1, counts[1])};
    }

    /** Bins from the middle to the half-way crossing nearest to it. */
    private static double crossing(double[] spread) {
        int half = spread.length / 2;
        double best = 0;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < spread.length; i++) {
            if (spread[i - 1] < 0.5 != spread[i] < 0.5) {
                double at = i - 1 + (0.5 - spread[i - 1]) / (spread[i] - spread[i - 1]);
                if (Math.abs(at - half) < nearest) {
                    nearest = Math.abs(at - half);
                    best = at - half;
                }
            }
        }
        return best;
    }
}
