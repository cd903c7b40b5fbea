package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/** What of a fitted model of the light is there for sure, and not by chance. */
final class Significance {
    /** Standard errors from which some stray light, in any channel, is taken for real. */
    private static final double SIGNIFICANT = 3.3;

    /** Standard errors from which one of its two parts is kept. */
    private static final double KEPT = 2.5;

    /** Chi-square for 5 and 4 degrees of freedom, 0.1 % level. */
    private static final double SURFACE_CHI2 = 20.52;

    private static final double CUBIC_CHI2 = 18.47;

    private Significance() {}

    /** Whether there is stray light of any part in any channel. */
    static boolean strayIsSure(LightFitter.Outcome outcome) {
        for (int t = 0; t < outcome.kinds().length; t++) {
            if (largestRatio(outcome, t) > SIGNIFICANT) {
                return true;
            }
        }
        return false;
    }

    /** The parts that are there for themselves. */
    static StrayKind[] kept(LightFitter.Outcome outcome) {
        List<StrayKind> kept = new ArrayList<>();
        for (int t = 0; t < outcome.kinds().length; t++) {
            if (largestRatio(outcome, t) > KEPT) {
                kept.add(outcome.kinds()[t]);
            }
        }
        return kept.toArray(new StrayKind[0]);
    }

    /** Largest amount of a part over its standard error, of all channels. */
    private static double largestRatio(LightFitter.Outcome outcome, int part) {
        WidthSearch search = outcome.search();
        double largest = 0;
        for (int c = 0; c < outcome.fits().length && search != null; c++) {
            TwinFit.Result fit = outcome.fits()[c];
            largest = Math.max(largest, fit.amounts()[part] / search.error(fit, c, part));
        }
        return largest;
    }

    /** Whether any channel's surface differs from none (Wald's test). */
    static boolean surfaceIsSure(LightFitter.Outcome outcome) {
        int k = outcome.surfaceTerms();
        for (TwinFit.Result fit : outcome.fits()) {
            double[][] block = new double[k][];
            for (int i = 0; i < k; i++) {
                block[i] = Arrays.copyOf(fit.covariance()[i], k);
            }
            if (k > 0) {
                ArrayRealVector surface = new ArrayRealVector(fit.surface());
                double chi2 =
                        surface.dotProduct(
                                new LUDecomposition(new Array2DRowRealMatrix(block, false))
                                        .getSolver()
                                        .solve(surface));
                if (chi2 > SURFACE_CHI2 * k / LightSurface.QUADRATIC) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether third-order terms explain more, in any channel, than chance would. */
    static boolean cubicIsSure(ScanLight scan, LightFitter.Outcome square) {
        for (int c = 0; c < square.fits().length; c++) {
            TwinData data = scan.channels().get(c).data();
            TwinFit.Result like = square.fits()[c];
            double[][] around = square.around()[c];
            TwinFit.Result two =
                    TwinFit.fit(data, square.kinds(), around, LightSurface.QUADRATIC, like);
            TwinFit.Result three =
                    TwinFit.fit(data, square.kinds(), around, LightSurface.CUBIC, like);
            if (two != null && three != null && two.misfit() - three.misfit() > CUBIC_CHI2) {
                return true;
            }
        }
        return false;
    }

    /** Whether no amount is clearly below zero, which no light can be. */
    static boolean noneNegative(LightFitter.Outcome outcome) {
        for (TwinFit.Result fit : outcome.fits()) {
            for (int t = 0; t < fit.amounts().length; t++) {
                if (fit.amounts()[t] < -2 * fit.error(t)) {
                    return false;
                }
            }
        }
        return true;
    }
}
