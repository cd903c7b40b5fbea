package org.printassay.colour;

import java.util.List;

/**
 * Spectral reflectance factors at an even step. Colorimetry is for D50 and the 2 degree observer.
 *
 * @param startNm first wavelength, nanometres
 * @param stepNm step, nanometres
 * @param factors reflectance factors, perfect diffuser = 1; brighteners may lift them above 1
 */
public record Spectrum(int startNm, int stepNm, List<Double> factors) {
    /** Colour needs at least this part of the spectrum; what lies outside hardly counts. */
    private static final int NEEDED_FROM_NM = 420;

    private static final int NEEDED_TO_NM = 660;

    /** The widest step that ASTM E308 has weights for. */
    private static final int COARSEST_NM = 20;

    public Spectrum {
        factors = List.copyOf(factors);
        String why = whyNot(startNm, stepNm, factors.size());
        if (!why.isEmpty()) {
            throw new IllegalArgumentException(why);
        }
        for (double factor : factors) {
            if (!Double.isFinite(factor)) {
                throw new IllegalArgumentException("a reflectance factor is not a finite number");
            }
        }
    }

    /**
     * Why colour cannot be computed from bands like these; empty when it can. Steps of 1 to 20 nm
     * are understood.
     */
    public static String whyNot(int startNm, int stepNm, int count) {
        if (stepNm < 1 || stepNm > COARSEST_NM) {
            return "spectra every " + stepNm + " nm; steps of 1 to 20 nm are understood";
        }
        int endNm = startNm + stepNm * (count - 1);
        if (count < 2 || startNm > NEEDED_FROM_NM || endNm < NEEDED_TO_NM) {
            return "spectra from "
                    + startNm
                    + " to "
                    + endNm
                    + " nm; colour needs at least "
                    + NEEDED_FROM_NM
                    + " to "
                    + NEEDED_TO_NM
                    + " nm";
        }
        return "";
    }

    /** Last wavelength, nanometres. */
    public int endNm() {
        return startNm + stepNm * (factors.size() - 1);
    }

    /**
     * Tristimulus values, D50, 2 degree, by the weights of ASTM E308 Table 5 (made for the step of
     * the data by ASTM E2022); missing end bands are folded into the first and last measured one.
     * The white to go with them is {@link Xyz#E308_D50_WHITE}.
     */
    public Xyz toXyz() {
        double[] sums = ObserverWeights.sums(this);
        return new Xyz(sums[0], sums[1], sums[2]);
    }

    /** CIELAB, D50, 2 degree. */
    public Lab toLab() {
        return Lab.of(toXyz(), Xyz.E308_D50_WHITE);
    }

    /**
     * Reflectance factor at a wavelength; beyond the ends the first or last band, between two bands
     * a cubic through the four around (Lagrange, ASTM E2022).
     */
    double at(int nm) {
        int from = Math.max(startNm, Math.min(nm, endNm())) - startNm;
        if (from % stepNm == 0) {
            return factors.get(from / stepNm);
        }
        int first = Math.max(0, Math.min(from / stepNm - 1, factors.size() - 4));
        double place = (double) from / stepNm - first;
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            double weight = 1;
            for (int k = 0; k < 4; k++) {
                weight *= k == i ? 1 : (place - k) / (i - k);
            }
            sum += weight * factors.get(first + i);
        }
        return sum;
    }
}
