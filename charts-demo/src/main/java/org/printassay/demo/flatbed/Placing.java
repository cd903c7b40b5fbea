package org.printassay.demo.flatbed;

/**
 * How a sheet lies on the glass and what of the bed is scanned. The full frame just holds the
 * turned sheet and a border on all sides; the crop then keeps a part of it.
 *
 * @param degrees how far the sheet is turned in the scan; positive is clockwise as seen in the scan
 * @param offsetXMm the sheet's middle off the frame's middle, to the right
 * @param offsetYMm the same, down
 * @param borderMm bed shown around the sheet
 * @param mirrored whether the scan is flipped left to right, after turning
 * @param crop part of the frame that is scanned
 * @param wobbleMm amplitude of the carriage's uneven travel, down the scan
 * @param wobblePeriodMm its period
 * @param lid reflectance of what lies behind and beyond the sheet, 0 to 1
 */
public record Placing(
        double degrees,
        double offsetXMm,
        double offsetYMm,
        double borderMm,
        boolean mirrored,
        Crop crop,
        double wobbleMm,
        double wobblePeriodMm,
        double lid) {
    /** White of a usual lid. */
    public static final double WHITE_LID = 0.84;

    /** A black lid or sheet behind. */
    public static final double BLACK_LID = 0.03;

    /** Upright and centred with 5 mm of white lid around. */
    public static final Placing STRAIGHT =
            new Placing(0, 0, 0, 5, false, Crop.WHOLE, 0, 100, WHITE_LID);

    /**
     * A part of the frame, as fractions 0 to 1 of its width and height.
     *
     * @param left left edge
     * @param top top edge
     * @param right right edge
     * @param bottom bottom edge
     */
    public record Crop(double left, double top, double right, double bottom) {
        /** Everything. */
        public static final Crop WHOLE = new Crop(0, 0, 1, 1);

        public Crop {
            if (left < 0 || top < 0 || right > 1 || bottom > 1 || left >= right || top >= bottom) {
                throw new IllegalArgumentException(
                        "a crop needs 0 <= left < right <= 1 and 0 <= top < bottom <= 1");
            }
        }
    }

    /** This placing, turned otherwise. */
    public Placing withDegrees(double other) {
        return new Placing(
                other,
                offsetXMm,
                offsetYMm,
                borderMm,
                mirrored,
                crop,
                wobbleMm,
                wobblePeriodMm,
                lid);
    }

    /** This placing, moved otherwise. */
    public Placing withOffset(double xMm, double yMm) {
        return new Placing(
                degrees, xMm, yMm, borderMm, mirrored, crop, wobbleMm, wobblePeriodMm, lid);
    }

    /** This placing with another border; negative cuts into the sheet. */
    public Placing withBorder(double mm) {
        return new Placing(
                degrees, offsetXMm, offsetYMm, mm, mirrored, crop, wobbleMm, wobblePeriodMm, lid);
    }

    /** This placing, mirrored or not. */
    public Placing withMirrored(boolean other) {
        return new Placing(
                degrees,
                offsetXMm,
                offsetYMm,
                borderMm,
                other,
                crop,
                wobbleMm,
                wobblePeriodMm,
                lid);
    }

    /** This placing with another part scanned. */
    public Placing withCrop(Crop other) {
        return new Placing(
                degrees,
                offsetXMm,
                offsetYMm,
                borderMm,
                mirrored,
                other,
                wobbleMm,
                wobblePeriodMm,
                lid);
    }

    /** This placing with another carriage. */
    public Placing withWobble(double mm, double periodMm) {
        return new Placing(
                degrees, offsetXMm, offsetYMm, borderMm, mirrored, crop, mm, periodMm, lid);
    }

    /** This placing with another lid. */
    public Placing withLid(double reflectance) {
        return new Placing(
                degrees,
                offsetXMm,
                offsetYMm,
                borderMm,
                mirrored,
                crop,
                wobbleMm,
                wobblePeriodMm,
                reflectance);
    }
}
