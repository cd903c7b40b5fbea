package org.printassay.colour;

/**
 * What a file colour should become on one paper: relative colorimetric with black point
 * compensation (ISO 15076-1 for the relative intent, ISO 18619 for the compensation), the usual lab
 * route.
 *
 * <p>Three frames, never to be mixed:
 *
 * <ul>
 *   <li>the <em>file</em> colour, relative to the encoding's white: {@link RgbSpace#toXyz};
 *   <li><em>media-relative</em>: this paper's white is L* 100, its black is the darkest neutral;
 *   <li><em>absolute</em>: what an instrument reads on the print, D50, perfect diffuser Y = 100.
 * </ul>
 *
 * Black is taken as a neutral of this paper (same chromaticity as the paper), as ISO 18619 sets a*
 * = b* = 0 for black points: a tinted black ink is a fault to be reported, not an aim.
 */
public final class PaperAim {
    private final Xyz paper;
    private final BlackPointCompensation compensation;

    private PaperAim(Xyz paper, BlackPointCompensation compensation) {
        this.paper = paper;
        this.compensation = compensation;
    }

    /**
     * Aim for a paper.
     *
     * @param white paper white, absolute CIELAB (or 100, 0, 0 to stay media-relative)
     * @param black darkest neutral, in the same frame; only its L* counts
     * @throws IllegalArgumentException when black is not darker than white
     */
    public static PaperAim relativeColorimetric(Lab white, Lab black) {
        Xyz paper = white.toXyz(Xyz.PCS_WHITE);
        double share = Lab.luminanceFactor(black.l()) / Lab.luminanceFactor(white.l());
        if (!(share < 1)) {
            throw new IllegalArgumentException(
                    "black (L* "
                            + black.l()
                            + ") must be darker than white (L* "
                            + white.l()
                            + ")");
        }
        return new PaperAim(
                paper,
                BlackPointCompensation.between(new Xyz(0, 0, 0), Xyz.PCS_WHITE.times(share)));
    }

    /** Media-relative aim of a file colour given relative to its encoding's white. */
    public Xyz relative(Xyz file) {
        return compensation.apply(file);
    }

    /** Absolute aim of a file colour given relative to its encoding's white. */
    public Xyz absolute(Xyz file) {
        Xyz relative = relative(file);
        Xyz white = Xyz.PCS_WHITE;
        // ISO 15076-1, 6.3.2.2: absolute = relative scaled by the media white, channel by channel.
        return new Xyz(
                relative.x() * paper.x() / white.x(),
                relative.y() * paper.y() / white.y(),
                relative.z() * paper.z() / white.z());
    }

    /** Media-relative CIELAB aim of codes. */
    public Lab relativeLab(RgbSpace space, Rgb8 codes) {
        return Lab.of(relative(space.toXyz(codes)), Xyz.PCS_WHITE);
    }

    /** Absolute CIELAB (D50) aim of codes. */
    public Lab absoluteLab(RgbSpace space, Rgb8 codes) {
        return Lab.of(absolute(space.toXyz(codes)), Xyz.PCS_WHITE);
    }
}
