package org.printassay.calibrate.light;

import org.apache.commons.math3.special.Erf;

/**
 * Shapes that the spread of stray light may have. Optics scatter with a narrow core and a tail that
 * can reach far, and the twins of one sheet seldom tell the tail by themselves: black and paper
 * would differ by what each shape makes of the far neighbourhood. Each is a mixture of Gaussians.
 * Two are bivariate t distributions, density (1 + r^2 / (nu b^2))^(-(nu + 2) / 2), of which the
 * Gaussian is the limit: their variance is nu b^2 over chi-square with nu degrees of freedom (S.
 * Kotz and S. Nadarajah, "Multivariate t Distributions and Their Applications", 2004, from memory).
 */
enum Kernel {
    /** nu = 3: a tail that dies away as the fifth power. */
    TAILED,
    /** nu = 1: a tail that dies away as the third power. */
    FAR_TAILED,
    /** A Gaussian core and, as large, a third-power tail four times as wide. */
    CORE_AND_VEIL,
    /** The same with a tail eight times as wide. */
    CORE_AND_FAR_VEIL;

    /** Widths of the Gaussians that are mixed, millimetres; beyond them everything counts alike. */
    static final double[] NODES = {1.5, 2.2, 3, 3.9, 5.1, 6.7, 8.7, 11.4, 15, 20, 28, 40, 60};

    /** Length b of the t distribution per standard deviation of a Gaussian with the same median. */
    private static final double T3_LENGTH = 0.885;

    private static final double T1_LENGTH = 0.680;

    private static final double VEIL_SHARE = 0.5;
    private static final double VEIL_WIDTH = 4;
    private static final double FAR_VEIL_WIDTH = 8;

    /**
     * How much of each Gaussian is in this kernel.
     *
     * @param sigmaMm width: standard deviation of a Gaussian that holds half its light within the
     *     same radius; of the core, where there is one
     * @return one share for each of {@link #NODES}, and one for everything alike; they add up to 1
     */
    double[] mixture(double sigmaMm) {
        return switch (this) {
            case TAILED -> student(3, T3_LENGTH * sigmaMm);
            case FAR_TAILED -> student(1, T1_LENGTH * sigmaMm);
            case CORE_AND_VEIL -> coreAndVeil(sigmaMm, VEIL_WIDTH);
            case CORE_AND_FAR_VEIL -> coreAndVeil(sigmaMm, FAR_VEIL_WIDTH);
        };
    }

    private static double[] coreAndVeil(double sigmaMm, double widths) {
        double[] shares = student(1, widths * T1_LENGTH * sigmaMm);
        for (int i = 0; i < shares.length; i++) {
            shares[i] *= VEIL_SHARE;
        }
        addGaussian(shares, sigmaMm, 1 - VEIL_SHARE);
        return shares;
    }

    /** The same of a Gaussian. */
    static double[] gaussian(double sigmaMm) {
        double[] shares = new double[NODES.length + 1];
        addGaussian(shares, sigmaMm, 1);
        return shares;
    }

    private static double[] student(int freedom, double length) {
        double[] shares = new double[NODES.length + 1];
        double below = 0;
        for (int i = 0; i < NODES.length; i++) {
            double next = i + 1 < NODES.length ? NODES[i + 1] : NODES[i] * NODES[i] / NODES[i - 1];
            double through = narrowerThan(Math.sqrt(NODES[i] * next), freedom, length);
            shares[i] = through - below;
            below = through;
        }
        shares[NODES.length] = 1 - below;
        return shares;
    }

    /** Share of Gaussians narrower than a width. */
    private static double narrowerThan(double widthMm, int freedom, double length) {
        double z = Math.sqrt(freedom) * length / widthMm;
        double tail = Erf.erfc(z / Math.sqrt(2));
        return freedom == 1 ? tail : tail + Math.sqrt(2 / Math.PI) * z * Math.exp(-z * z / 2);
    }

    /** A Gaussian between two nodes, so that its variance is kept. */
    private static void addGaussian(double[] shares, double sigmaMm, double share) {
        int right = 1;
        while (right < NODES.length - 1 && NODES[right] < sigmaMm) {
            right++;
        }
        double low = NODES[right - 1] * NODES[right - 1];
        double high = NODES[right] * NODES[right];
        double part = Math.max(0, Math.min(1, (sigmaMm * sigmaMm - low) / (high - low)));
        shares[right - 1] += (1 - part) * share;
        shares[right] += part * share;
    }
}
