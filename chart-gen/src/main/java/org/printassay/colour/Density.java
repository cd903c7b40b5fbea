package org.printassay.colour;

/**
 * Reflection density, D = -log10 of a reflectance factor (ISO 5-4). Absolute: relative to the
 * perfect diffuser, not to the paper; subtract the paper's density for density above paper.
 */
public final class Density {
    /**
     * Nothing on paper is darker; readings at or below 0.01 % of white are noise, not reflectance,
     * and come out as this.
     */
    public static final double MAX = 4;

    private Density() {}

    /**
     * Density of a reflectance factor (perfect diffuser = 1), at most {@link #MAX}. Of a luminance
     * factor (Y / 100) it is the visual density of a neutral: ISO 5-3 visual density is V(lambda)
     * under illuminant A, CIE Y here is V(lambda) under D50, and both agree for flat spectra;
     * strong colours need the spectrum.
     */
    public static double ofFactor(double reflectanceFactor) {
        return Math.min(MAX, -Math.log10(Math.max(reflectanceFactor, 1e-5)));
    }

    /** Visual density of a neutral of this L*; see {@link #ofFactor}. */
    public static double ofLightness(double lightness) {
        return ofFactor(Lab.luminanceFactor(lightness));
    }
}
