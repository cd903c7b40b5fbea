package org.printassay.sheet;

import org.printassay.colour.Rgb8;

/** Everything on a sheet that is not a patch, a marker or the sheet code, in drawing order. */
public sealed interface Artwork {
    /** A flat area under the patches, such as the black surround of stray-light patches. */
    record Field(RectMm area, Rgb8 rgb) implements Artwork {}

    /** A horizontal neutral gradient, continuous from one level to another. */
    record Vignette(RectMm area, double fromLevel, double toLevel) implements Artwork {}

    /**
     * A dark square turned by a few degrees on a light field: slanted edges in two directions.
     *
     * @param area the light field
     * @param square the dark square before it is turned about its centre
     * @param degrees turned clockwise
     */
    record SlantedSquare(RectMm area, RectMm square, double degrees, Rgb8 light, Rgb8 dark)
            implements Artwork {}

    /** A disc under the patches, a surround of a known radius. */
    record Disc(PointMm centre, double radius, Rgb8 rgb) implements Artwork {}

    /**
     * One line of text.
     *
     * @param anchor left end, middle or right end of the baseline, by {@code align}
     * @param sizePt height of the type in points
     * @param align -1 anchored at the left, 0 in the middle, 1 at the right
     */
    record Text(PointMm anchor, String text, double sizePt, boolean bold, int align, Rgb8 rgb)
            implements Artwork {}

    /** A straight line, such as one to write on. */
    record Rule(PointMm from, PointMm to, double widthMm, Rgb8 rgb) implements Artwork {}
}
