package org.printassay.calibrate.light;

import org.printassay.sheet.RectMm;

/**
 * Terms of a low-order polynomial over the page, without the constant: light is relative to the
 * middle of the page, where fall-off is least and a slope is at its mean. Coordinates run from -1
 * to 1 over the page and are held a little outside it.
 */
public final class LightSurface {
    /** Terms up to second order. */
    public static final int QUADRATIC = 5;

    /** Terms up to third order. */
    static final int CUBIC = 9;

    private static final double HELD = 1.1;

    private final RectMm page;

    public LightSurface(RectMm page) {
        this.page = page;
    }

    /** All terms at a place on the page. */
    public double[] terms(double xMm, double yMm) {
        double u = hold(2 * (xMm - page.x()) / page.width() - 1);
        double v = hold(2 * (yMm - page.y()) / page.height() - 1);
        return new double[] {u, v, u * u, u * v, v * v, u * u * u, u * u * v, u * v * v, v * v * v};
    }

    /** The terms at the opposite place: odd ones change their sign. */
    public double[] opposite(double[] terms) {
        double[] opposite = terms.clone();
        for (int k = 0; k < opposite.length; k++) {
            boolean even = k >= 2 && k < QUADRATIC;
            opposite[k] *= even ? 1 : -1;
        }
        return opposite;
    }

    /** 1 + the surface with these coefficients, as many as are given. */
    public static double at(double[] coefficients, double[] terms) {
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
