package org.printassay.colour;

/**
 * Black point compensation by straight scaling in XYZ (ISO 18619:2015, clause 4.2.5): the source
 * black lands on the destination black, white stays white, everything between moves linearly.
 *
 * <p>All values are <em>media-relative</em>: white is the connection space white {@link
 * Xyz#PCS_WHITE} on both sides, as in ICC relative colorimetric transforms. Absolute colours of a
 * print need its paper white too: see {@link PaperAim}.
 */
public final class BlackPointCompensation {
    private final Xyz scale;
    private final Xyz offset;

    private BlackPointCompensation(Xyz scale, Xyz offset) {
        this.scale = scale;
        this.offset = offset;
    }

    /**
     * Compensation between two media-relative black points. The standard estimates black points as
     * neutrals (a* = b* = 0); tinted ones are scaled channel by channel all the same.
     *
     * @throws IllegalArgumentException when the source black is not darker than white
     */
    public static BlackPointCompensation between(Xyz sourceBlack, Xyz destinationBlack) {
        Xyz white = Xyz.PCS_WHITE;
        if (sourceBlack.x() >= white.x()
                || sourceBlack.y() >= white.y()
                || sourceBlack.z() >= white.z()) {
            throw new IllegalArgumentException("a black point must be darker than white");
        }
        Xyz scale =
                new Xyz(
                        scale(sourceBlack.x(), destinationBlack.x(), white.x()),
                        scale(sourceBlack.y(), destinationBlack.y(), white.y()),
                        scale(sourceBlack.z(), destinationBlack.z(), white.z()));
        Xyz offset =
                new Xyz(
                        white.x() * (1 - scale.x()),
                        white.y() * (1 - scale.y()),
                        white.z() * (1 - scale.z()));
        return new BlackPointCompensation(scale, offset);
    }

    /** Media-relative colour after compensation. */
    public Xyz apply(Xyz relative) {
        return new Xyz(
                scale.x() * relative.x() + offset.x(),
                scale.y() * relative.y() + offset.y(),
                scale.z() * relative.z() + offset.z());
    }

    private static double scale(double sourceBlack, double destinationBlack, double white) {
        return (destinationBlack - white) / (sourceBlack - white);
    }
}
