package org.printassay.calibrate.light;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.robust.Median;

/**
 * Fits the light surface and the stray-light amounts of one channel to its twins:
 *
 * <pre>M = E(x, y) [ R (1 + sum c (Rbar - Rref)) + sum g (Gbar - R) ]</pre>
 *
 * with one unknown R for each group of twins, which is eliminated (variable projection); Gauss-
 * Newton steps with Tukey's biweight, residuals weighed in L* because dark twins tell most about
 * glare and printers repeat evenly in L*.
 */
final class TwinFit {
    /** Tukey's constant for 95 % efficiency with normal errors. */
    private static final double TUKEY = 4.685;

    /** Outliers keep a trace of weight, so that they can come back when the fit improves. */
    private static final double LEAST_WEIGHT = 1e-3;

    private static final int STEPS = 12;
    private static final double SETTLED = 1e-5;

    private final int groups;
    private final int paperGroup;
    private final double[] seen;
    private final double[] errorL;
    private final int[] group;
    private final double[][] terms;
    private final StrayKind[] kinds;
    private final double[][] around;
    private final int surfaceTerms;

    /** The first of the parameters are free; amounts that are held come last. */
    private final int free;

    private final double[] parameters;
    private final double[] reflectance;
    private final double[] multiplier;
    private final double[] added;
    private final double[] light;
    private final double[] weight;
    private final double[] sharpness;
    private final int[] sizes;

    /**
     * A fit.
     *
     * @param surface coefficients of the light surface
     * @param amounts one for each stray-light term
     * @param covariance of both, in this order, for the scales below
     * @param scales spread of twins
     * @param misfit robust sum of squares, in units of the scales; about the number of free
     *     comparisons
     * @param paper reflectance of the paper group, about 1
     * @param residuals of the patches that are evidence, in units of the scales, outliers held down
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Result(
            double[] surface,
            double[] amounts,
            double[][] covariance,
            TwinScales scales,
            double misfit,
            double paper,
            double[] residuals) {
        double error(int amount) {
            int at = surface.length + amount;
            return Math.sqrt(covariance[at][at]);
        }
    }

    private TwinFit(
            TwinData data,
            StrayKind[] kinds,
            double[][] around,
            int surfaceTerms,
            double @Nullable [] held) {
        int[] rows = data.rows();
        int n = rows.length;
        this.groups = data.groups();
        this.paperGroup = data.paperGroup();
        this.seen = pick(data.light(), rows);
        this.errorL = pick(data.errorL(), rows);
        this.group = Arrays.stream(rows).map(i -> data.group()[i]).toArray();
        this.terms = Arrays.stream(rows).mapToObj(i -> data.surface()[i]).toArray(double[][]::new);
        this.kinds = kinds;
        this.around = Arrays.stream(around).map(all -> pick(all, rows)).toArray(double[][]::new);
        this.surfaceTerms = surfaceTerms;
        this.parameters = new double[surfaceTerms + kinds.length];
        this.free = held == null ? parameters.length : surfaceTerms;
        if (held != null) {
            System.arraycopy(held, 0, parameters, surfaceTerms, kinds.length);
        }
        this.reflectance = new double[groups];
        this.multiplier = new double[n];
        this.added = new double[n];
        this.light = new double[n];
        this.weight = new double[n];
        this.sharpness = new double[n];
        this.sizes = new int[groups];
        for (int g : group) {
            sizes[g]++;
        }
    }

    private static double[] pick(double[] all, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> all[i]).toArray();
    }

    /**
     * Runs a fit.
     *
     * @param around for each term and patch: Rbar - Rref of returned light, Gbar of glare
     * @param surfaceTerms how many terms the light surface has
     * @param like a fit to start from, whose spread of twins is used; null to estimate it
     * @return null when the twins do not determine the numbers asked for
     */
    static @Nullable Result fit(
            TwinData data,
            StrayKind[] kinds,
            double[][] around,
            int surfaceTerms,
            @Nullable Result like) {
        TwinFit fit = new TwinFit(data, kinds, around, surfaceTerms, null);
        if (like != null) {
            fit.startFrom(like);
        }
        return fit.run(like == null ? null : like.scales());
    }

    /**
     * Fits the light surface alone, amounts held.
     *
     * @param like a fit of the same terms, whose spread of twins is used
     * @return its covariance is that of the surface alone
     */
    static @Nullable Result around(
            TwinData data, StrayKind[] kinds, double[][] around, Result like, double[] amounts) {
        int surface = like.surface().length;
        TwinFit fit = new TwinFit(data, kinds, around, surface, amounts);
        System.arraycopy(like.surface(), 0, fit.parameters, 0, surface);
        return fit.run(like.scales());
    }

    private void startFrom(Result like) {
        int surface = Math.min(surfaceTerms, like.surface().length);
        System.arraycopy(like.surface(), 0, parameters, 0, surface);
        int amounts = Math.min(kinds.length, like.amounts().length);
        System.arraycopy(like.amounts(), 0, parameters, surfaceTerms, amounts);
    }

    private @Nullable Result run(@Nullable TwinScales held) {
        Arrays.fill(weight, 1);
        predict();
        medians();
        TwinScales scales = held;
        double[][] inverse = {};
        for (int step = 0; step < STEPS; step++) {
            predict();
            scales = reweigh(held);
            solveReflectance();
            double[][] columns = columns();
            double[] residuals = residuals();
            Elimination.project(columns, residuals, factors(), group, groups);
            double[] change = new double[free];
            double[][] solved = Elimination.solve(columns, residuals, change);
            if (solved == null) {
                return null;
            }
            inverse = solved;
            double largest = 0;
            for (int k = 0; k < change.length; k++) {
                parameters[k] += change[k];
                largest = Math.max(largest, Math.abs(change[k]));
            }
            if (largest < SETTLED && step > 1) {
                break;
            }
        }
        predict();
        solveReflectance();
        if (scales == null || !Double.isFinite(reflectance[paperGroup])) {
            return null;
        }
        return new Result(
                Arrays.copyOf(parameters, surfaceTerms),
                Arrays.copyOfRange(parameters, surfaceTerms, parameters.length),
                inverse,
                scales,
                misfit(),
                reflectance[paperGroup],
                residuals());
    }

    /** Factors of the model at each patch for the present parameters. */
    private void predict() {
        double[] surface = Arrays.copyOf(parameters, surfaceTerms);
        for (int i = 0; i < seen.length; i++) {
            light[i] = LightSurface.at(surface, terms[i]);
            multiplier[i] = 1;
            added[i] = 0;
            for (int t = 0; t < kinds.length; t++) {
                double amount = parameters[surfaceTerms + t];
                multiplier[i] += kinds[t].multiplies(amount, around[t][i]);
                added[i] += kinds[t].adds(amount, around[t][i]);
            }
        }
    }

    private void medians() {
        double[][] members = new double[groups][];
        int[] filled = new int[groups];
        for (int g = 0; g < groups; g++) {
            members[g] = new double[sizes[g]];
        }
        for (int i = 0; i < seen.length; i++) {
            int g = group[i];
            members[g][filled[g]++] = (seen[i] / light[i] - added[i]) / multiplier[i];
        }
        for (int g = 0; g < groups; g++) {
            reflectance[g] = sizes[g] == 0 ? 0 : Median.of(members[g]);
        }
    }

    /** Reflectance of each group, the best for the present parameters and weights. */
    private void solveReflectance() {
        double[] sums = new double[groups];
        double[] squares = new double[groups];
        for (int i = 0; i < seen.length; i++) {
            int g = group[i];
            double factor = weight[i] * light[i] * multiplier[i];
            sums[g] += factor * weight[i] * (seen[i] - light[i] * added[i]);
            squares[g] += factor * factor;
        }
        for (int g = 0; g < sums.length; g++) {
            if (squares[g] > 0) {
                reflectance[g] = sums[g] / squares[g];
            }
        }
    }

    private double residual(int i) {
        return seen[i] - light[i] * (reflectance[group[i]] * multiplier[i] + added[i]);
    }

    /** Weights from the spread of twins: L* per light over standard deviation, outliers less. */
    private TwinScales reweigh(@Nullable TwinScales held) {
        double[] slope = new double[groups];
        int[] zoneOf = new int[groups];
        for (int g = 0; g < groups; g++) {
            slope[g] = Lab.slope(reflectance[g]);
            zoneOf[g] = TwinScales.zone(reflectance[g], g == paperGroup);
        }
        int n = seen.length;
        double[] standard = new double[n];
        int[] zone = new int[n];
        for (int i = 0; i < n; i++) {
            int g = group[i];
            zone[i] = zoneOf[g];
            standard[i] =
                    sizes[g] > 1
                            ? slope[g] * residual(i) / Math.sqrt(1 - 1.0 / sizes[g])
                            : Double.NaN;
        }
        TwinScales scales =
                held != null ? held : TwinScales.of(standard, zone, Math.max(1, surfaceTerms));
        for (int i = 0; i < n; i++) {
            if (Double.isNaN(standard[i])) {
                weight[i] = 1;
                sharpness[i] = 0;
                continue;
            }
            double sigma = Math.max(scales.zones()[zone[i]], errorL[i]);
            double z = standard[i] / sigma / TUKEY;
            double biweight = Math.max(LEAST_WEIGHT, Math.abs(z) < 1 ? 1 - z * z : 0);
            sharpness[i] = slope[group[i]] / sigma;
            weight[i] = sharpness[i] * biweight;
        }
        return scales;
    }

    private double[] residuals() {
        double[] residuals = new double[seen.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = weight[i] * residual(i);
        }
        return residuals;
    }

    /** Derivatives of the weighted model by the reflectance of each patch's group. */
    private double[] factors() {
        double[] factors = new double[seen.length];
        for (int i = 0; i < factors.length; i++) {
            factors[i] = weight[i] * light[i] * multiplier[i];
        }
        return factors;
    }

    /** Derivatives of the weighted model by the parameters. */
    private double[][] columns() {
        int n = seen.length;
        double[][] columns = new double[free][n];
        for (int i = 0; i < n; i++) {
            int g = group[i];
            double inside = reflectance[g] * multiplier[i] + added[i];
            for (int k = 0; k < surfaceTerms; k++) {
                columns[k][i] = weight[i] * terms[i][k] * inside;
            }
            for (int t = 0; surfaceTerms + t < free; t++) {
                double by = kinds[t].slope(reflectance[g], around[t][i]);
                columns[surfaceTerms + t][i] = weight[i] * light[i] * by;
            }
        }
        return columns;
    }

    /** Tukey's loss doubled, so that it is a sum of squares for small residuals. */
    private double misfit() {
        double sum = 0;
        for (int i = 0; i < seen.length; i++) {
            if (sharpness[i] > 0) {
                double z = sharpness[i] * residual(i) / TUKEY;
                double rest = Math.abs(z) < 1 ? 1 - z * z : 0;
                sum += TUKEY * TUKEY / 3 * (1 - rest * rest * rest);
            }
        }
        return sum;
    }
}
