package org.printassay.calibrate.light;

import java.util.Arrays;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;
import org.printassay.robust.Mad;

/**
 * How far twins lie apart, in L*, by tone: printers repeat about equally well in L*, not in linear
 * light, and bare paper repeats better than ink.
 *
 * @param zones standard deviation of one reading: shadows, mid-tones, highlights, bare paper
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
public record TwinScales(double[] zones) {
    public static final int PAPER = 3;
    private static final int ALL = 4;
    private static final double LEAST_L = 0.02;

    /** Residuals count no further than this many standard deviations. */
    private static final double HELD = 2.5;

    /** Mean of min(z^2, 2.5^2) of a standard normal z. */
    private static final double HELD_MEAN_SQUARE = 0.97757;

    private static final int ENOUGH = 12;

    /** Zone of a reflectance, paper = 1. */
    public static int zone(double reflectance, boolean paper) {
        if (paper) {
            return PAPER;
        }
        return switch (ToneZone.of(Lab.lightness(reflectance))) {
            case SHADOWS -> 0;
            case MIDTONES -> 1;
            case HIGHLIGHTS -> 2;
        };
    }

    /**
     * Estimates all zones; zones with few twins share the spread of all inks.
     *
     * @param residuals in L*, standardised for the group mean taken out; NaN where no evidence
     * @param zone of each residual
     * @param paperTerms how many numbers the paper group fixes by itself
     */
    public static TwinScales of(double[] residuals, int[] zone, int paperTerms) {
        double[] zones = new double[4];
        double inks = scale(residuals, zone, ALL, 1, LEAST_L);
        for (int z = 0; z < 4; z++) {
            zones[z] = scale(residuals, zone, z, z == PAPER ? paperTerms : 1, inks);
        }
        return new TwinScales(zones);
    }

    private static double scale(
            double[] residuals, int[] zone, int wanted, int lost, double otherwise) {
        double[] sizes = new double[residuals.length];
        int n = 0;
        for (int i = 0; i < residuals.length; i++) {
            boolean counts = wanted == ALL ? zone[i] != PAPER : zone[i] == wanted;
            if (counts && !Double.isNaN(residuals[i])) {
                sizes[n++] = Math.abs(residuals[i]);
            }
        }
        if (n < ENOUGH) {
            return otherwise;
        }
        double first = Mad.sigma(Arrays.copyOf(sizes, n));
        double limit = HELD * Math.max(first, LEAST_L);
        double squares = 0;
        for (int i = 0; i < n; i++) {
            squares += Math.pow(Math.min(sizes[i], limit), 2);
        }
        double free = Math.max(n - lost, n / 2.0);
        return Math.max(LEAST_L, Math.sqrt(squares / HELD_MEAN_SQUARE / free));
    }
}
