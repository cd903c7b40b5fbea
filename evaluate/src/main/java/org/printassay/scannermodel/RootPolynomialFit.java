package org.printassay.scannermodel;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;
import org.printassay.robust.Median;

/**
 * Fits a {@link RootPolynomial} so that the sum of squared CIEDE2000 is least: Gauss-Newton steps
 * in CIELAB, each difference weighed by the formula's local metric at the measured colour. Colours
 * far off all others count less (Huber, Ann. Math. Statist. 35, 1964).
 */
final class RootPolynomialFit {
    private static final int STEPS = 8;

    /** Without one colour the fit is near where it was. */
    private static final int STEPS_WITHOUT_ONE = 2;

    /** dE00 from which a colour counts less, as a multiple of the median. */
    private static final double FAR = 3;

    /** Never less than this, dE00: what small misfits of a good model look like. */
    private static final double LEAST_FAR = 0.5;

    /** Share of the largest own square that keeps nearly collinear terms in check. */
    private static final double RIDGE = 1e-10;

    private final int order;
    private final int terms;
    private final double[][] termsOf;
    private final Lab[] wanted;
    private final double[][][] roots;
    private final double[] scale;

    private RootPolynomialFit(List<TrainingColour> colours, int order) {
        this.order = order;
        this.terms = RootPolynomial.terms(order);
        int n = colours.size();
        termsOf = new double[n][];
        wanted = new Lab[n];
        roots = new double[n][][];
        scale = new double[terms];
        for (int i = 0; i < n; i++) {
            termsOf[i] = RootPolynomial.terms(colours.get(i).light(), order);
            wanted[i] = colours.get(i).lab();
            roots[i] = LocalMetric.rootAt(wanted[i]);
            for (int t = 0; t < terms; t++) {
                scale[t] = Math.max(scale[t], termsOf[i][t]);
            }
        }
        for (int t = 0; t < terms; t++) {
            scale[t] = scale[t] > 0 ? scale[t] : 1;
        }
    }

    /** Fits from scratch. */
    static RootPolynomial fit(List<TrainingColour> colours, int order) {
        RootPolynomialFit fit = new RootPolynomialFit(colours, order);
        return fit.improve(fit.start(), STEPS, -1);
    }

    /**
     * Fits once for each colour, without it.
     *
     * @param all the fit to all colours, where each of the fits starts
     */
    static List<RootPolynomial> withoutEach(List<TrainingColour> colours, RootPolynomial all) {
        RootPolynomialFit fit = new RootPolynomialFit(colours, all.order());
        RootPolynomial[] without = new RootPolynomial[colours.size()];
        Arrays.parallelSetAll(without, i -> fit.improve(all.coefficients(), STEPS_WITHOUT_ONE, i));
        return List.of(without);
    }

    /** Relative least squares in XYZ: near enough for the steps to settle. */
    private double[][] start() {
        double[][] normal = new double[terms][terms];
        double[][] right = new double[3][terms];
        for (int i = 0; i < wanted.length; i++) {
            Xyz xyz = wanted[i].toXyz(Xyz.PCS_WHITE);
            double[] values = {xyz.x(), xyz.y(), xyz.z()};
            double weight = 1 / Math.max(xyz.y(), 0.5);
            for (int t = 0; t < terms; t++) {
                double own = termsOf[i][t] / scale[t] * weight * weight;
                for (int u = 0; u < terms; u++) {
                    normal[t][u] += own * termsOf[i][u] / scale[u];
                }
                for (int k = 0; k < 3; k++) {
                    right[k][t] += own * values[k];
                }
            }
        }
        CholeskyDecomposition solved = decomposed(normal, 1e-6);
        double[][] coefficients = new double[3][];
        for (int k = 0; k < 3; k++) {
            coefficients[k] =
                    solved.getSolver().solve(new ArrayRealVector(right[k], false)).toArray();
            for (int t = 0; t < terms; t++) {
                coefficients[k][t] /= scale[t];
            }
        }
        return coefficients;
    }

    private RootPolynomial improve(double[][] start, int steps, int without) {
        RootPolynomial best = new RootPolynomial(order, start);
        double far = farFrom(best, without);
        double least = misfit(best, without, far);
        for (int step = 0; step < steps; step++) {
            double[] change = change(best, without, far);
            RootPolynomial next = null;
            for (double share = 1; share > 0.1; share /= 2) {
                RootPolynomial tried = moved(best, change, share);
                double misfit = misfit(tried, without, far);
                if (misfit < least) {
                    next = tried;
                    least = misfit;
                    break;
                }
            }
            if (next == null) {
                break;
            }
            best = next;
            far = farFrom(best, without);
            least = misfit(best, without, far);
        }
        return best;
    }

    private RootPolynomial moved(RootPolynomial from, double[] change, double share) {
        double[][] coefficients = from.coefficients();
        for (int k = 0; k < 3; k++) {
            for (int t = 0; t < terms; t++) {
                coefficients[k][t] += share * change[k * terms + t] / scale[t];
            }
        }
        return new RootPolynomial(order, coefficients);
    }

    private Lab seen(RootPolynomial model, int i) {
        double[][] c = model.coefficients;
        double[] t = termsOf[i];
        double x = 0;
        double y = 0;
        double z = 0;
        for (int k = 0; k < terms; k++) {
            x += c[0][k] * t[k];
            y += c[1][k] * t[k];
            z += c[2][k] * t[k];
        }
        return Lab.of(new Xyz(x, y, z), Xyz.PCS_WHITE);
    }

    private double farFrom(RootPolynomial model, int without) {
        double[] off = new double[wanted.length - (without < 0 ? 0 : 1)];
        int at = 0;
        for (int i = 0; i < wanted.length; i++) {
            if (i != without) {
                off[at++] = DeltaE.ciede2000(wanted[i], seen(model, i));
            }
        }
        return Math.max(LEAST_FAR, FAR * Median.upper(off));
    }

    /** Sum of Huber's function of the differences. */
    private double misfit(RootPolynomial model, int without, double far) {
        double sum = 0;
        for (int i = 0; i < wanted.length; i++) {
            if (i != without) {
                double off = length(weighed(i, seen(model, i)));
                sum += off <= far ? off * off : far * (2 * off - far);
            }
        }
        return sum;
    }

    /** Difference to the measured colour through the root of the metric. */
    private double[] weighed(int i, Lab seen) {
        double[] d = {wanted[i].l() - seen.l(), wanted[i].a() - seen.a(), wanted[i].b() - seen.b()};
        return times(roots[i], d);
    }

    private double[] change(RootPolynomial model, int without, double far) {
        int size = 3 * terms;
        double[][] normal = new double[size][size];
        double[] right = new double[size];
        double[] row = new double[size];
        for (int i = 0; i < wanted.length; i++) {
            if (i == without) {
                continue;
            }
            Lab seen = seen(model, i);
            double[] off = weighed(i, seen);
            double length = length(off);
            double weight = length <= far ? 1 : far / length;
            double[][] slopes = slopes(i, seen);
            for (int k = 0; k < 3; k++) {
                for (int j = 0; j < size; j++) {
                    row[j] = slopes[k][j / terms] * termsOf[i][j % terms] / scale[j % terms];
                }
                for (int j = 0; j < size; j++) {
                    double own = weight * row[j];
                    right[j] += own * off[k];
                    for (int l = 0; l <= j; l++) {
                        normal[j][l] += own * row[l];
                    }
                }
            }
        }
        for (int j = 0; j < size; j++) {
            for (int l = 0; l < j; l++) {
                normal[l][j] = normal[j][l];
            }
        }
        return decomposed(normal, RIDGE)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }

    /** Change of the weighed difference by X, Y and Z. */
    private double[][] slopes(int i, Lab seen) {
        Xyz at = seen.toXyz(Xyz.PCS_WHITE);
        double[] values = {at.x(), at.y(), at.z()};
        double[][] slopes = new double[3][3];
        for (int k = 0; k < 3; k++) {
            double step = 1e-3 * Math.max(0.05, Math.abs(values[k]));
            Xyz moved =
                    new Xyz(
                            at.x() + (k == 0 ? step : 0),
                            at.y() + (k == 1 ? step : 0),
                            at.z() + (k == 2 ? step : 0));
            Lab there = Lab.of(moved, Xyz.PCS_WHITE);
            double[] d = {
                (there.l() - seen.l()) / step,
                (there.a() - seen.a()) / step,
                (there.b() - seen.b()) / step
            };
            double[] column = times(roots[i], d);
            for (int r = 0; r < 3; r++) {
                slopes[r][k] = column[r];
            }
        }
        return slopes;
    }

    private static CholeskyDecomposition decomposed(double[][] normal, double ridge) {
        double most = 0;
        for (int j = 0; j < normal.length; j++) {
            most = Math.max(most, normal[j][j]);
        }
        for (int j = 0; j < normal.length; j++) {
            normal[j][j] += ridge * most;
        }
        return new CholeskyDecomposition(
                new Array2DRowRealMatrix(normal, false), 1e-6 * most, 1e-16 * most);
    }

    private static double[] times(double[][] upper, double[] d) {
        return new double[] {
            upper[0][0] * d[0] + upper[0][1] * d[1] + upper[0][2] * d[2],
            upper[1][1] * d[1] + upper[1][2] * d[2],
            upper[2][2] * d[2]
        };
    }

    private static double length(double[] d) {
        return Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    }
}
