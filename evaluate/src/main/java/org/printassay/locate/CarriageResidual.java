package org.printassay.locate;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.jspecify.annotations.Nullable;
import org.printassay.robust.Mad;
import org.printassay.robust.Median;

/**
 * What a flat map leaves over in a scan: a carriage that runs unevenly or sideways shifts whole
 * rows (or columns) of the scan. The shift is a cubic spline along each axis of the scan, held
 * smooth, fitted to the edges of patches (P. H. C. Eilers and B. D. Marx, "Flexible smoothing with
 * B-splines and penalties", Statistical Science 11, 1996).
 */
final class CarriageResidual {
    /** Distance of the knots. */
    private static final double KNOTS_MM = 10;

    /** Standard deviation of one edge's place. */
    private static final double EDGE_MM = 0.03;

    /** Third differences of the spline's coefficients are expected to be about this. */
    private static final double ROUGHNESS_MM = 0.06;

    /** Holds the mean and the slope, which the flat map already has, near nothing. */
    private static final double LEVEL_MM = 0.5;

    private static final double TUKEY = 4.685;
    private static final int ROUNDS = 4;

    private final double spacing;
    private final int knots;
    private final double[] coefficients;

    private CarriageResidual(double spacing, int knots, double[] coefficients) {
        this.spacing = spacing;
        this.knots = knots;
        this.coefficients = coefficients;
    }

    /**
     * Fits the shifts.
     *
     * @param longSide of the scan, pixels
     * @return null when the edges do not determine them
     */
    static @Nullable CarriageResidual fit(
            List<EdgeSurvey.Edge> edges, double longSide, double samplesPerMm) {
        double spacing = KNOTS_MM * samplesPerMm;
        int knots = (int) Math.ceil(longSide / spacing) + 3;
        // Unknowns: shift to the right and down by row, the same by column, and ink spread.
        int unknowns = 4 * knots + 1;
        double[] weights = new double[edges.size()];
        Arrays.fill(weights, 1);
        List<Equation> equations =
                edges.stream().map(edge -> Equation.of(edge, spacing, knots)).toList();
        double edgePx = EDGE_MM * samplesPerMm;
        double[] solution = new double[unknowns];
        for (int round = 0; round < ROUNDS; round++) {
            double[][] normal = penalty(knots, samplesPerMm);
            double[] right = new double[unknowns];
            for (int i = 0; i < weights.length; i++) {
                EdgeSurvey.Edge edge = edges.get(i);
                double weight = weights[i] * edge.weight() / (edgePx * edgePx);
                equations.get(i).addTo(normal, right, weight, edge.offPx());
            }
            mirror(normal);
            try {
                solution =
                        new CholeskyDecomposition(
                                        new Array2DRowRealMatrix(normal, false), 1e-9, 1e-12)
                                .getSolver()
                                .solve(new ArrayRealVector(right, false))
                                .toArray();
            } catch (NonPositiveDefiniteMatrixException e) {
                return null;
            }
            CarriageResidual now = new CarriageResidual(spacing, knots, solution);
            double[] errors = new double[weights.length];
            for (int i = 0; i < errors.length; i++) {
                errors[i] = Math.abs(now.left(edges.get(i)));
            }
            double usual = Math.max(edgePx / 2, Mad.TO_SIGMA * Median.upper(errors));
            for (int i = 0; i < errors.length; i++) {
                double z = errors[i] / usual / TUKEY;
                weights[i] = z < 1 ? (1 - z * z) * (1 - z * z) : 0;
            }
        }
        return new CarriageResidual(spacing, knots, solution);
    }

    private static double[][] penalty(int knots, double samplesPerMm) {
        int unknowns = 4 * knots + 1;
        double[][] normal = new double[unknowns][unknowns];
        double rough = 1 / Math.pow(ROUGHNESS_MM * samplesPerMm, 2);
        double level = 1 / Math.pow(LEVEL_MM * samplesPerMm, 2);
        double[] difference = {-1, 3, -3, 1};
        for (int block = 0; block < 4; block++) {
            int first = block * knots;
            for (int k = 0; k < knots; k++) {
                normal[first + k][first + k] += level;
            }
            for (int k = 0; k + 3 < knots; k++) {
                for (int i = 0; i < 4; i++) {
                    for (int j = 0; j < 4; j++) {
                        normal[first + k + i][first + k + j] +=
                                rough * (difference[i] * difference[j]);
                    }
                }
            }
        }
        normal[unknowns - 1][unknowns - 1] += level;
        return normal;
    }

    /** Copies what lies below the diagonal above it. */
    private static void mirror(double[][] normal) {
        for (int k = 0; k < normal.length; k++) {
            for (int l = 0; l < k; l++) {
                normal[l][k] = normal[k][l];
            }
        }
    }

    /**
     * Which unknowns an edge depends on, and how.
     *
     * @param at unknowns, rising
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    private record Equation(int[] at, double[] by) {
        static Equation of(EdgeSurvey.Edge edge, double spacing, int knots) {
            Equation equation = new Equation(new int[17], new double[17]);
            equation.fill(edge, spacing, knots);
            return equation;
        }

        private void fill(EdgeSurvey.Edge edge, double spacing, int knots) {
            double[] weights = new double[4];
            int row = basis(edge.at().y() / spacing, knots, weights);
            for (int k = 0; k < 4; k++) {
                at[k] = row + k;
                by[k] = edge.normalX() * weights[k];
                at[4 + k] = knots + row + k;
                by[4 + k] = edge.normalY() * weights[k];
            }
            int column = basis(edge.at().x() / spacing, knots, weights);
            for (int k = 0; k < 4; k++) {
                at[8 + k] = 2 * knots + column + k;
                by[8 + k] = edge.normalX() * weights[k];
                at[12 + k] = 3 * knots + column + k;
                by[12 + k] = edge.normalY() * weights[k];
            }
            at[16] = 4 * knots;
            by[16] = edge.outwardInk();
        }

        /** Adds it to normal equations, on and below their diagonal (modified). */
        void addTo(double[][] normal, double[] right, double weight, double offPx) {
            for (int k = 0; k < at.length; k++) {
                right[at[k]] += weight * by[k] * offPx;
                double[] row = normal[at[k]];
                for (int l = 0; l <= k; l++) {
                    row[at[l]] += weight * (by[k] * by[l]);
                }
            }
        }
    }

    /** Weights of four neighbouring coefficients of a uniform cubic B-spline; the first's index. */
    private static int basis(double t, int knots, double[] weights) {
        double held = Math.max(0, Math.min(knots - 3 - 1e-9, t));
        int first = (int) held;
        double u = held - first;
        weights[0] = (1 - u) * (1 - u) * (1 - u) / 6;
        weights[1] = (3 * u * u * u - 6 * u * u + 4) / 6;
        weights[2] = (-3 * u * u * u + 3 * u * u + 3 * u + 1) / 6;
        weights[3] = u * u * u / 6;
        return first;
    }

    /** What is left of an edge's offset, pixels. */
    double left(EdgeSurvey.Edge edge) {
        PointPx shift = shift(edge.at());
        return edge.offPx()
                - edge.normalX() * shift.x()
                - edge.normalY() * shift.y()
                - edge.outwardInk() * coefficients[4 * knots];
    }

    /** Where a point that the flat map puts here really is. */
    PointPx moved(PointPx flat) {
        PointPx shift = shift(flat);
        return new PointPx(flat.x() + shift.x(), flat.y() + shift.y());
    }

    private PointPx shift(PointPx at) {
        double[] weights = new double[4];
        double right = 0;
        double down = 0;
        int row = basis(at.y() / spacing, knots, weights);
        for (int k = 0; k < 4; k++) {
            right += weights[k] * coefficients[row + k];
            down += weights[k] * coefficients[knots + row + k];
        }
        int column = basis(at.x() / spacing, knots, weights);
        for (int k = 0; k < 4; k++) {
            right += weights[k] * coefficients[2 * knots + column + k];
            down += weights[k] * coefficients[3 * knots + column + k];
        }
        return new PointPx(right, down);
    }
}
