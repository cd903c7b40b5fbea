package org.printassay.demo.paper;

/**
 * What makes two areas of the same code differ. Amplitudes are standard deviations in L* unless
 * said otherwise; all departures have mean zero.
 *
 * @param twinL spread between patches of the same code
 * @param twinAb the same in a* and in b*
 * @param grain fine unevenness of the ink, greatest in the mid-tones, none on bare paper
 * @param grainLengthMm size of the grains (correlation length)
 * @param texture fine unevenness of the paper itself, the same in every tone
 * @param textureLengthMm size of the texture
 * @param drift slow unevenness over the sheet, from edge to edge (range, not deviation)
 */
public record Surface(
        double twinL,
        double twinAb,
        double grain,
        double grainLengthMm,
        double texture,
        double textureLengthMm,
        double drift) {
    /** Perfectly even. */
    public static final Surface EVEN = new Surface(0, 0, 0, 0.06, 0, 0.3, 0);

    public Surface {
        if (twinL < 0 || twinAb < 0 || grain < 0 || texture < 0) {
            throw new IllegalArgumentException("amplitudes of a surface are not negative");
        }
        if (grainLengthMm < 0.01 || textureLengthMm < 0.01) {
            throw new IllegalArgumentException("lengths of a surface are at least 0.01 mm");
        }
    }
}
