package org.printassay.calibrate.light;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * The stray light of all channels of a scan together. The light of every colour goes through the
 * same glass, so amounts that differ from channel to channel are mostly chance, and chance here is
 * a false cast: each amount is drawn towards what the channels have in common, as far as its error
 * lets it (random effects; N. M. Laird and J. H. Ware, "Random-Effects Models for Longitudinal
 * Data", Biometrics 38, 1982).
 *
 * @param outcome the model with amounts so drawn and surfaces fitted to them; the covariances of
 *     its fits are of the surfaces alone, for these amounts
 * @param covariance of the amounts, channel by channel, its parts in order
 * @param surfaceByAmount for each channel, change of each surface coefficient by each amount
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record ChannelsTogether(
        LightFitter.Outcome outcome, double[][] covariance, double[][][] surfaceByAmount) {
    /** Standard deviation of amounts between channels, as share of their mean: optics differ. */
    private static final double DIFFERENT = 0.1;

    /** The same where there is next to nothing. */
    private static final double DIFFERENT_AT_LEAST = 0.0003;

    static ChannelsTogether of(ScanLight scan, LightFitter.Outcome outcome) {
        int channels = outcome.fits().length;
        int parts = outcome.kinds().length;
        double[][] joint = jointCovariance(outcome);
        double[][][] byAmount = new double[channels][][];
        for (int c = 0; c < channels; c++) {
            byAmount[c] = surfaceByAmount(outcome.fits()[c], parts);
        }
        if (parts == 0 || channels == 1) {
            return new ChannelsTogether(outcome, joint, byAmount);
        }
        int n = channels * parts;
        double[] amounts = new double[n];
        for (int c = 0; c < channels; c++) {
            System.arraycopy(outcome.fits()[c].amounts(), 0, amounts, c * parts, parts);
        }
        try {
            RealMatrix precision = inverse(new Array2DRowRealMatrix(joint));
            RealMatrix posterior = inverse(precision.add(likeness(amounts, channels, parts)));
            RealVector drawn =
                    posterior.operate(precision.operate(new ArrayRealVector(amounts, false)));
            TwinFit.Result[] fits = new TwinFit.Result[channels];
            for (int c = 0; c < channels; c++) {
                TwinFit.Result fit =
                        TwinFit.around(
                                scan.channels().get(c).data(),
                                outcome.kinds(),
                                outcome.around()[c],
                                outcome.fits()[c],
                                drawn.getSubVector(c * parts, parts).toArray());
                if (fit == null) {
                    return new ChannelsTogether(outcome, joint, byAmount);
                }
                fits[c] = fit;
            }
            return new ChannelsTogether(outcome.with(fits), posterior.getData(), byAmount);
        } catch (SingularMatrixException e) {
            return new ChannelsTogether(outcome, joint, byAmount);
        }
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        return new LUDecomposition(matrix, 1e-30).getSolver().getInverse();
    }

    /** Precision of the amounts' differences between channels; their mean is free. */
    private static RealMatrix likeness(double[] amounts, int channels, int parts) {
        RealMatrix likeness = new Array2DRowRealMatrix(channels * parts, channels * parts);
        for (int k = 0; k < parts; k++) {
            double mean = 0;
            for (int c = 0; c < channels; c++) {
                mean += amounts[c * parts + k] / channels;
            }
            double deviation = Math.max(DIFFERENT_AT_LEAST, DIFFERENT * Math.abs(mean));
            for (int c = 0; c < channels; c++) {
                for (int d = 0; d < channels; d++) {
                    double centred = (c == d ? 1 : 0) - 1.0 / channels;
                    likeness.setEntry(
                            c * parts + k, d * parts + k, centred / (deviation * deviation));
                }
            }
        }
        return likeness;
    }

    /** Covariance of all amounts; how far channels err together is read from their residuals. */
    private static double[][] jointCovariance(LightFitter.Outcome outcome) {
        TwinFit.Result[] fits = outcome.fits();
        int parts = outcome.kinds().length;
        double[][] together = correlation(fits);
        double[][][] roots = new double[fits.length][][];
        for (int c = 0; c < fits.length; c++) {
            int first = fits[c].surface().length;
            double[][] own = new double[parts][parts];
            for (int k = 0; k < parts; k++) {
                for (int l = 0; l < parts; l++) {
                    own[k][l] =
                            fits[c].covariance()[first + k][first + l]
                                    * outcome.widening(c, k)
                                    * outcome.widening(c, l);
                }
            }
            roots[c] = Triangle.of(own);
        }
        double[][] joint = new double[fits.length * parts][fits.length * parts];
        for (int c = 0; c < fits.length; c++) {
            for (int d = 0; d < fits.length; d++) {
                for (int k = 0; k < parts; k++) {
                    for (int l = 0; l < parts; l++) {
                        double sum = 0;
                        for (int m = 0; m < parts; m++) {
                            sum += roots[c][k][m] * roots[d][l][m];
                        }
                        joint[c * parts + k][d * parts + l] = together[c][d] * sum;
                    }
                }
            }
        }
        return joint;
    }

    /** How the residuals of the channels go together. */
    static double[][] correlation(TwinFit.Result[] fits) {
        int n = fits.length;
        double[][] sums = new double[n][n];
        for (int c = 0; c < n; c++) {
            for (int d = 0; d < n; d++) {
                for (int i = 0; i < fits[c].residuals().length; i++) {
                    sums[c][d] += fits[c].residuals()[i] * fits[d].residuals()[i];
                }
            }
        }
        double[][] correlation = new double[n][n];
        for (int c = 0; c < n; c++) {
            for (int d = 0; d < n; d++) {
                double size = Math.sqrt(sums[c][c] * sums[d][d]);
                correlation[c][d] = c == d ? 1 : size > 0 ? 0.999 * sums[c][d] / size : 0;
            }
        }
        return correlation;
    }

    private static double[][] surfaceByAmount(TwinFit.Result fit, int parts) {
        int surface = fit.surface().length;
        if (surface == 0 || parts == 0) {
            return new double[surface][parts];
        }
        RealMatrix all = new Array2DRowRealMatrix(fit.covariance());
        int last = surface + parts - 1;
        RealMatrix amounts = all.getSubMatrix(surface, last, surface, last);
        RealMatrix across = all.getSubMatrix(0, surface - 1, surface, last);
        try {
            return across.multiply(inverse(amounts)).getData();
        } catch (SingularMatrixException e) {
            return new double[surface][parts];
        }
    }

    /** Standard error of a channel's glare, all of it. */
    double glareError(int channel) {
        int parts = outcome.kinds().length;
        double variance = 0;
        for (int k = 0; k < parts; k++) {
            for (int l = 0; l < parts; l++) {
                if (outcome.kinds()[k] == StrayKind.GLARE
                        && outcome.kinds()[l] == StrayKind.GLARE) {
                    variance += covariance[channel * parts + k][channel * parts + l];
                }
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }
}
