package org.printassay.calibrate.light;

import java.util.Arrays;

/**
 * One channel of a scan while its light is being estimated: the twins, and the neighbourhood as far
 * as it is freed from uneven and stray light.
 */
final class ChannelLight {
    private final SurroundGrid grid;
    private final TwinData data;
    private final GridPlace[][] places;
    private final int[] windows;
    private final LightSurface surface;
    private final float[] seen;
    private final float[] map;

    /**
     * @param places for each patch, places to average over
     * @param windows the patches that are paper windows
     * @param seen light of the neighbourhood over paper, not copied
     */
    ChannelLight(
            SurroundGrid grid,
            TwinData data,
            GridPlace[][] places,
            int[] windows,
            LightSurface surface,
            float[] seen) {
        this(grid, data, places, windows, surface, seen, seen);
    }

    private ChannelLight(
            SurroundGrid grid,
            TwinData data,
            GridPlace[][] places,
            int[] windows,
            LightSurface surface,
            float[] seen,
            float[] map) {
        this.grid = grid;
        this.data = data;
        this.places = places;
        this.windows = windows;
        this.surface = surface;
        this.seen = seen;
        this.map = map;
    }

    TwinData data() {
        return data;
    }

    /** Blurred light around each patch, as freed from stray light so far. */
    double[] around(Blur blur) {
        return atPatches(blur.of(map));
    }

    /** Mean light of everything that is known. */
    double meanOfAll() {
        double sum = 0;
        int known = 0;
        for (float value : map) {
            if (!Float.isNaN(value)) {
                sum += value;
                known++;
            }
        }
        return known == 0 ? 0 : sum / known;
    }

    /** The same for each patch. */
    double[] everywhere() {
        double[] same = new double[places.length];
        Arrays.fill(same, meanOfAll());
        return same;
    }

    /**
     * Mean light along the line of the scan that each patch lies on, as far as it is known.
     *
     * @param turnDegrees clockwise turn of the page against lines that run along its x
     */
    double[] alongLines(double turnDegrees) {
        double down = Math.cos(Math.toRadians(turnDegrees));
        double across = Math.sin(Math.toRadians(turnDegrees));
        int reach = (int) Math.ceil(Math.hypot(grid.columns(), grid.rows())) + 2;
        double[] sums = new double[2 * reach];
        double[] known = new double[sums.length];
        for (int row = 0; row < grid.rows(); row++) {
            for (int column = 0; column < grid.columns(); column++) {
                float value = map[row * grid.columns() + column];
                if (!Float.isNaN(value)) {
                    double line = line(column, row, across, down);
                    int at = (int) Math.floor(line);
                    double share = line - at;
                    sums[at] += (1 - share) * value;
                    known[at] += 1 - share;
                    sums[at + 1] += share * value;
                    known[at + 1] += share;
                }
            }
        }
        double mean = meanOfAll();
        double[] means = new double[places.length];
        for (int i = 0; i < means.length; i++) {
            double sum = 0;
            for (GridPlace place : places[i]) {
                double line = line(place.across(), place.down(), across, down);
                int at = (int) Math.floor(line);
                double share = line - at;
                double light = (1 - share) * sums[at] + share * sums[at + 1];
                double weight = (1 - share) * known[at] + share * known[at + 1];
                sum += weight > 0 ? light / weight : mean;
            }
            means[i] = sum / places[i].length;
        }
        return means;
    }

    /** Number of the line through a place, lines being a cell apart; 0 is beyond every cell. */
    private double line(double column, double row, double across, double down) {
        double middle = Math.ceil(Math.hypot(grid.columns(), grid.rows())) + 1;
        return middle + column * across + row * down;
    }

    /** What a part needs to know of each patch's neighbourhood: Gbar, or Rbar - Rref. */
    double[] part(StrayKind kind, double[] around) {
        if (kind == StrayKind.GLARE) {
            return around;
        }
        double reference = meanOfWindows(around);
        double[] rest = around.clone();
        for (int i = 0; i < rest.length; i++) {
            rest[i] -= reference;
        }
        return rest;
    }

    private double meanOfWindows(double[] values) {
        double sum = 0;
        for (int i : windows) {
            sum += values[i];
        }
        return sum / windows.length;
    }

    double[] atPatches(float[] values) {
        double[] means = new double[places.length];
        for (int i = 0; i < means.length; i++) {
            double sum = 0;
            for (GridPlace place : places[i]) {
                sum += place.in(values);
            }
            means[i] = sum / places[i].length;
        }
        return means;
    }

    /**
     * The channel with a neighbourhood that a fit frees from uneven and stray light; the patches
     * are as they were.
     *
     * @param blurs the width of each part
     */
    ChannelLight freed(TwinFit.Result fit, StrayKind[] kinds, Blur[] blurs) {
        float[][] blurred = new float[kinds.length][];
        double[] reference = new double[kinds.length];
        for (int t = 0; t < kinds.length; t++) {
            boolean same = t > 0 && blurs[t] == blurs[t - 1];
            blurred[t] = same ? blurred[t - 1] : blurs[t].of(map);
            reference[t] =
                    kinds[t] == StrayKind.RETURNED ? meanOfWindows(atPatches(blurred[t])) : 0;
        }
        float[] corrected = new float[seen.length];
        for (int row = 0; row < grid.rows(); row++) {
            for (int column = 0; column < grid.columns(); column++) {
                int at = row * grid.columns() + column;
                double multiplier = 1;
                double added = 0;
                for (int t = 0; t < kinds.length; t++) {
                    double amount = fit.amounts()[t];
                    double around = blurred[t][at] - reference[t];
                    multiplier += kinds[t].multiplies(amount, around);
                    added += kinds[t].adds(amount, around);
                }
                double light =
                        fit.surface().length == 0
                                ? 1
                                : LightSurface.at(
                                        fit.surface(), surface.terms(grid.x(column), grid.y(row)));
                corrected[at] =
                        Float.isNaN(seen[at])
                                ? Float.NaN
                                : (float) Math.max(0, (seen[at] / light - added) / multiplier);
            }
        }
        return new ChannelLight(grid, data, places, windows, surface, seen, corrected);
    }
}
