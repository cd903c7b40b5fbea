package org.printassay.surface;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * A line across tints.
 *
 * @param along axis that it was found along; it runs across that axis
 * @param positionMm of its middle, from the top edge (left edge for {@link Along#X}) of the page
 * @param widthMm width of the equal box of constant contrast
 * @param contrast dR/R of the tint that shows it best, linear light; above 0 for a light line
 * @param z robust standard deviations in that tint
 * @param shows ids of tints that show it
 * @param lacks ids of tints that it would cross and that do not show it
 * @param onPaper whether bare paper shows it too, so that it is no matter of ink
 * @param tintL L* of the tint that shows it best, relative to paper (paper is L* 100); null where
 *     that is not known
 */
public record FoundLine(
        Along along,
        double positionMm,
        double widthMm,
        double contrast,
        double z,
        List<String> shows,
        List<String> lacks,
        boolean onPaper,
        @Nullable Double tintL) {
    /**
     * Luminance factor below which L* goes by differences of light, no more by ratios: 216/24389,
     * L* 8 (CIE 15).
     */
    private static final double LEAST_Y = 216.0 / 24389;

    /** No print is blacker than density 3 above paper: common practice, no source. */
    private static final double BLACKEST_Y = 0.001;

    public FoundLine {
        shows = List.copyOf(shows);
        lacks = List.copyOf(lacks);
        tintL = tintL == null || tintL.isNaN() ? null : tintL;
    }

    /**
     * Contrast as an eye takes it: dR/R, in tints darker than L* 8 the difference as a share of the
     * light of L* 8. A ratio to hardly any light says nothing of what is seen, so CIELAB does not
     * form it there either.
     *
     * @return {@link #contrast} where the lightness of the tint is not known
     */
    public double seenContrast() {
        return tintL == null ? contrast : contrast * Math.min(1, luminance(tintL) / LEAST_Y);
    }

    /** Whether its tint is so dark that a share of the tint's light says little. */
    public boolean isInTheDark() {
        return tintL != null && luminance(tintL) < LEAST_Y;
    }

    /**
     * How much lighter than its tint it is, L* relative to paper; below 0 for a dark line. No
     * lighter than paper, L* 100: contrasts of lines narrower than the blur are told badly.
     *
     * @return null where the lightness of the tint is not known
     */
    public @Nullable Double deltaL() {
        if (tintL == null) {
            return null;
        }
        double y = luminance(tintL);
        double there = Math.min(1, Math.max(0, y * (1 + contrast)));
        return Lab.lightness(there) - Lab.lightness(y);
    }

    private static double luminance(double lightness) {
        return Math.max(BLACKEST_Y, Lab.luminanceFactor(lightness));
    }

    /** How much of a picture it takes: {@link #seenContrast} times width, millimetres. */
    public double strength() {
        return Math.abs(seenContrast()) * widthMm;
    }

    /** Light where ink is missing, dark where it is doubled. */
    public String polarity() {
        return contrast > 0 ? "light" : "dark";
    }
}
