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

    /** ISO 5-3 visual density of a spectrum. */
    public static double visual(Spectrum spectrum) {
        return ofFactor(DensityWeights.factors(spectrum)[0]);
    }

    /** ISO 5-3 status A densities, meant for photographic prints. */
    public static Filters statusA(Spectrum spectrum) {
        return filters(spectrum, 1);
    }

    /** ISO 5-3 status T densities, meant for graphic arts. */
    public static Filters statusT(Spectrum spectrum) {
        return filters(spectrum, 4);
    }

    /**
     * Densities behind the three filters.
     *
     * @param red density to red light, what cyan ink absorbs
     * @param green density to green light, what magenta ink absorbs
     * @param blue density to blue light, what yellow ink absorbs
     */
    public record Filters(double red, double green, double blue) {}

    private static Filters filters(Spectrum spectrum, int column) {
        double[] factors = DensityWeights.factors(spectrum);
        return new Filters(
                ofFactor(factors[column]),
                ofFactor(factors[column + 1]),
                ofFactor(factors[column + 2]));
    }
}
