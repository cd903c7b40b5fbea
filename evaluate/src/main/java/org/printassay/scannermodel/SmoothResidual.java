package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.printassay.colour.Lab;

/**
 * What a polynomial leaves over, made smooth: where the filters of a scanner see inks otherwise
 * than eyes do, the difference is a smooth function of colour for one set of inks. It is taken as a
 * random field over CIELAB with a Matern correlation of order 3/2 and predicted by its best linear
 * predictor; far from all training colours it fades to nothing.
 *
 * <p>Source: C. E. Rasmussen, C. K. I. Williams, "Gaussian Processes for Machine Learning", 2006,
 * eqs. 2.25 and 4.17; leaving one out: eq. 5.12.
 */
final class SmoothResidual {
    /** Correlation lengths tried, CIELAB units. */
    static final List<Double> RANGES = List.of(25.0, 50.0, 100.0, 200.0);

    /** Shares of what is not smooth, against the smooth part, tried. */
    static final List<Double> NOISES = List.of(1e-4, 1e-3, 1e-2, 1e-1);

    private final double range;
    private final List<Lab> centres;
    private final List<Lab> weights;

    /**
     * A given field.
     *
     * @param range correlation length, CIELAB units
     * @param centres colours of the polynomial
     * @param weights what each adds at full correlation
     */
    SmoothResidual(double range, List<Lab> centres, List<Lab> weights) {
        this.range = range;
        this.centres = List.copyOf(centres);
        this.weights = List.copyOf(weights);
        if (centres.size() != weights.size()) {
            throw new IllegalArgumentException("a weight a centre");
        }
    }

    double range() {
        return range;
    }

    List<Lab> centres() {
        return centres;
    }

    List<Lab> weights() {
        return weights;
    }

    /** A colour of the polynomial with what it leaves over added. */
    Lab added(Lab seen) {
        double l = seen.l();
        double a = seen.a();
        double b = seen.b();
        for (int i = 0; i < centres.size(); i++) {
            double near = correlation(seen, centres.get(i), range);
            l += near * weights.get(i).l();
            a += near * weights.get(i).a();
            b += near * weights.get(i).b();
        }
        return new Lab(l, a, b);
    }

    /**
     * Fits the field.
     *
     * @param seen colours of the polynomial
     * @param wanted measured colours
     */
    static SmoothResidual fit(List<Lab> seen, List<Lab> wanted, double range, double noise) {
        RealMatrix over = left(seen, wanted);
        RealMatrix weights = decomposed(seen, range, noise).getSolver().solve(over);
        return new SmoothResidual(range, seen, labs(weights));
    }

    /**
     * What each colour is still off by, measured minus predicted, when the field is made without
     * it.
     *
     * @param over for each colour left out, what the polynomial made without it leaves over at all
     *     colours
     */
    static List<Lab> withoutEach(List<Lab> seen, Over over, double range, double noise) {
        int n = seen.size();
        double[][] inverse = decomposed(seen, range, noise).getSolver().getInverse().getData();
        List<Lab> off = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double l = 0;
            double a = 0;
            double b = 0;
            for (int k = 0; k < n; k++) {
                Lab left = over.at(i, k);
                l += inverse[i][k] * left.l();
                a += inverse[i][k] * left.a();
                b += inverse[i][k] * left.b();
            }
            double own = inverse[i][i];
            off.add(new Lab(l / own, a / own, b / own));
        }
        return off;
    }

    /** What a polynomial leaves over. */
    @FunctionalInterface
    interface Over {
        /** Measured minus predicted at a colour, by the polynomial made without another. */
        Lab at(int without, int colour);
    }

    private static CholeskyDecomposition decomposed(List<Lab> seen, double range, double noise) {
        int n = seen.size();
        double[][] matrix = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                matrix[i][k] = correlation(seen.get(i), seen.get(k), range);
                matrix[k][i] = matrix[i][k];
            }
            matrix[i][i] = 1 + noise;
        }
        return new CholeskyDecomposition(new Array2DRowRealMatrix(matrix, false), 1e-9, 1e-12);
    }

    private static double correlation(Lab one, Lab two, double range) {
        double dl = one.l() - two.l();
        double da = one.a() - two.a();
        double db = one.b() - two.b();
        double away = Math.sqrt(dl * dl + da * da + db * db) / range;
        return (1 + away) * Math.exp(-away);
    }

    private static RealMatrix left(List<Lab> seen, List<Lab> wanted) {
        double[][] over = new double[seen.size()][];
        for (int i = 0; i < over.length; i++) {
            over[i] =
                    new double[] {
                        wanted.get(i).l() - seen.get(i).l(),
                        wanted.get(i).a() - seen.get(i).a(),
                        wanted.get(i).b() - seen.get(i).b()
                    };
        }
        return new Array2DRowRealMatrix(over, false);
    }

    private static List<Lab> labs(RealMatrix rows) {
        List<Lab> labs = new ArrayList<>();
        for (int i = 0; i < rows.getRowDimension(); i++) {
            labs.add(new Lab(rows.getEntry(i, 0), rows.getEntry(i, 1), rows.getEntry(i, 2)));
        }
        return labs;
    }
}
