package org.printassay.surface;

import org.apache.commons.math3.special.Erf;

/**
 * Matched filter for one width: a box blurred by a Gaussian, against the light beside it. Its
 * response is the least-squares contrast of such a line at each place.
 */
final class LineFilter {
    /** Light beside a line that is compared with, on each side. */
    private static final double BESIDE_MM = 0.45;

    private static final double SIGMAS = 2.5;

    private final double widthMm;
    private final int reach;
    private final double[] kernel;

    LineFilter(double widthMm, double sigmaMm, double stepMm) {
        this.widthMm = widthMm;
        this.reach = (int) Math.ceil((widthMm / 2 + SIGMAS * sigmaMm + BESIDE_MM) / stepMm);
        this.kernel = new double[2 * reach + 1];
        double mean = 0;
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] = shape((i - reach) * stepMm, widthMm, sigmaMm);
            mean += kernel[i] / kernel.length;
        }
        double squares = 0;
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] -= mean;
            squares += kernel[i] * kernel[i];
        }
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] /= squares;
        }
    }

    /** A box of height 1 blurred by a Gaussian, at a distance from its middle. */
    static double shape(double atMm, double widthMm, double sigmaMm) {
        double scale = Math.sqrt(2) * sigmaMm;
        return 0.5
                * (Erf.erf((atMm + widthMm / 2) / scale) - Erf.erf((atMm - widthMm / 2) / scale));
    }

    double widthMm() {
        return widthMm;
    }

    /** Bins at either end of a profile that have no response. */
    int reach() {
        return reach;
    }

    /** Response at one bin, which must be {@link #reach} bins from either end. */
    double at(double[] values, int bin) {
        double sum = 0;
        for (int k = 0; k < kernel.length; k++) {
            sum += kernel[k] * values[bin - reach + k];
        }
        return sum;
    }

    /** Responses at all bins; 0 where there is none. */
    double[] responses(double[] values) {
        double[] out = new double[values.length];
        for (int i = reach; i < values.length - reach; i++) {
            out[i] = at(values, i);
        }
        return out;
    }
}
