package org.printassay.scannermodel;

import java.util.Arrays;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;

/**
 * From linear device light to XYZ by a root polynomial: light times two gives XYZ times two, at any
 * order, so that a scanner's gain does not turn hues.
 *
 * <p>Source: G. D. Finlayson, M. Mackiewicz, A. Hurlbert, "Color correction using root-polynomial
 * regression", IEEE Trans. Image Process. 24(5), 1460-1470, 2015, doi:10.1109/TIP.2015.2405336.
 */
final class RootPolynomial {
    private static final int SECOND_ORDER_TERMS = 6;
    private static final int THIRD_ORDER_TERMS = 13;

    private final int order;

    /** Of X, Y and Z; not to be modified. */
    final double[][] coefficients;

    /**
     * A given polynomial.
     *
     * @param order 2 or 3
     * @param coefficients of X, Y and Z, one a term; copied
     */
    RootPolynomial(int order, double[][] coefficients) {
        if (order != 2 && order != 3) {
            throw new IllegalArgumentException("order 2 or 3, got " + order);
        }
        this.order = order;
        this.coefficients = new double[3][];
        for (int i = 0; i < 3; i++) {
            this.coefficients[i] = coefficients[i].clone();
            if (coefficients[i].length != terms(order)) {
                throw new IllegalArgumentException("order " + order + " has " + terms(order));
            }
        }
    }

    /** How many terms an order has. */
    static int terms(int order) {
        return order == 2 ? SECOND_ORDER_TERMS : THIRD_ORDER_TERMS;
    }

    /** The terms of a light: light below nothing counts as none. */
    static double[] terms(LinearRgb light, int order) {
        double r = Math.max(0, light.r());
        double g = Math.max(0, light.g());
        double b = Math.max(0, light.b());
        double[] terms = {r, g, b, Math.sqrt(r * g), Math.sqrt(g * b), Math.sqrt(r * b)};
        if (order == 2) {
            return terms;
        }
        terms = Arrays.copyOf(terms, THIRD_ORDER_TERMS);
        terms[6] = Math.cbrt(r * g * g);
        terms[7] = Math.cbrt(g * b * b);
        terms[8] = Math.cbrt(r * b * b);
        terms[9] = Math.cbrt(g * r * r);
        terms[10] = Math.cbrt(b * g * g);
        terms[11] = Math.cbrt(b * r * r);
        terms[12] = Math.cbrt(r * g * b);
        return terms;
    }

    int order() {
        return order;
    }

    /** Coefficients of X, Y and Z, a fresh copy. */
    double[][] coefficients() {
        return new double[][] {
            coefficients[0].clone(), coefficients[1].clone(), coefficients[2].clone()
        };
    }

    /** Tristimulus values of a light. */
    Xyz at(LinearRgb light) {
        double[] terms = terms(light, order);
        return new Xyz(
                dot(coefficients[0], terms),
                dot(coefficients[1], terms),
                dot(coefficients[2], terms));
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
