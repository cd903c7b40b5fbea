package org.printassay.colour;

/**
 * Codes for a colour that was asked for in CIELAB (D50). A colour outside the encoding's gamut gets
 * its linear channels cut at 0 and 1, which keeps it near and is told by {@link #outside}.
 *
 * @param rgb the codes
 * @param outside whether the encoding cannot hold the colour
 * @param deltaE00 CIEDE2000 between what was asked for and what the codes stand for; about 0.3 or
 *     less by rounding alone
 */
public record NearestCodes(Rgb8 rgb, boolean outside, double deltaE00) {
    /** Linear light beyond 0 to 1 by less than this is rounding. */
    private static final double HAIR = 1e-3;

    /** The nearest codes by {@code space}. */
    public static NearestCodes of(RgbSpace space, Lab lab) {
        Xyz xyz = lab.toXyz(Xyz.PCS_WHITE);
        double[] inverse = RgbMatrix.inverse(space.matrix());
        double[] linear =
                RgbMatrix.apply(
                        inverse, new double[] {xyz.x() / 100, xyz.y() / 100, xyz.z() / 100});
        int[] codes = new int[3];
        boolean outside = false;
        for (int i = 0; i < 3; i++) {
            outside |= linear[i] < -HAIR || linear[i] > 1 + HAIR;
            double inside = Math.min(1, Math.max(0, linear[i]));
            codes[i] = (int) Math.round(255 * space.encode(inside));
        }
        Rgb8 rgb = new Rgb8(codes[0], codes[1], codes[2]);
        return new NearestCodes(rgb, outside, DeltaE.ciede2000(lab, space.toLab(rgb)));
    }
}
