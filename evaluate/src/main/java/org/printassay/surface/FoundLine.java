package org.printassay.surface;

import java.util.List;

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
 */
public record FoundLine(
        Along along,
        double positionMm,
        double widthMm,
        double contrast,
        double z,
        List<String> shows,
        List<String> lacks,
        boolean onPaper) {
    public FoundLine {
        shows = List.copyOf(shows);
        lacks = List.copyOf(lacks);
    }

    /** How much of a picture it takes: contrast times width, millimetres. */
    public double strength() {
        return Math.abs(contrast) * widthMm;
    }

    /** Light where ink is missing, dark where it is doubled. */
    public String polarity() {
        return contrast > 0 ? "light" : "dark";
    }
}
