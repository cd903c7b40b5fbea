package org.printassay.colour;

/**
 * CIE 1931 2 degree tristimulus values, Y = 100 for the perfect reflecting diffuser.
 *
 * @param x X, about 0 to 97 under D50
 * @param y Y, luminance factor in percent
 * @param z Z, about 0 to 83 under D50
 */
public record Xyz(double x, double y, double z) {
    /** White of the ICC profile connection space, ISO 15076-1 (D50): 96.42 100 82.49. */
    public static final Xyz PCS_WHITE = new Xyz(96.42, 100, 82.49);

    /** White of spectral data computed with ASTM E308 Table 5 weights (D50, 10 nm). */
    public static final Xyz E308_D50_WHITE = new Xyz(96.422, 100, 82.521);

    /** All three values multiplied by one factor. */
    public Xyz times(double factor) {
        return new Xyz(x * factor, y * factor, z * factor);
    }
}
