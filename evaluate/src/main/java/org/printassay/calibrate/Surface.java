package org.printassay.calibrate;

import org.printassay.chart.RectMm;

/**
 * Terms of a low-order polynomial over the page, without the constant. Coordinates run from -1 to 1
 * over the page and are held a little outside it.
 */
final class Surface {
    /** Terms up to second order. */
    static final int QUADRATIC = 5;

    /** Terms up to third order. */
    static final int CUBIC = 9;

    private static final double HELD = 1.1;

    private final RectMm page;
    private final double[] offset = new double[CUBIC];

    /**
     * @param zero where the mean of each term is to be nil, page millimetres: x and y one after the
     *     other
     */
    Surface(RectMm page, double[] zero) {
        this.page = page;
        double[] mean = new double[CUBIC];
        double points = zero.length / 2.0;
        for (int i = 0; i + 1 < zero.length; i += 2) {
            double[] terms = terms(zero[i], zero[i + 1]);
            for (int k = 0; k < CUBIC; k++) {
                mean[k] += terms[k] / points;
            }
        }
        System.arraycopy(mean, 0, offset, 0, CUBIC);
    }

    /** All terms at a place on the page. */
    double[] terms(double xMm, double yMm) {
        double u = hold(2 * (xMm - page.x()) / page.width() - 1);
        double v = hold(2 * (yMm - page.y()) / page.height() - 1);
        double[] terms = {u, v, u * u, u * v, v * v, u * u * u, u * u * v, u * v * v, v * v * v};
        for (int k = 0; k < CUBIC; k++) {
            terms[k] -= offset[k];
        }
        return terms;
    }

    /** 1 + the surface with these coefficients, as many as are given. */
    static double at(double[] coefficients, double[] terms) {
        double sum = 1;
        for (int k = 0; k < coefficients.length; k++) {
            sum += coefficients[k] * terms[k];
        }
        return sum;
    }

    private static double hold(double x) {
        return Math.max(-HELD, Math.min(HELD, x));
    }
}
