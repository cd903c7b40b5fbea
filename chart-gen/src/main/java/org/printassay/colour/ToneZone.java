package org.printassay.colour;

/**
 * Zones that tones are told in, by L*: shadows, mid-tones and highlights take a third each (common
 * practice, no source). Both bounds belong to the mid-tones.
 */
public enum ToneZone {
    SHADOWS,
    MIDTONES,
    HIGHLIGHTS;

    private static final int MIDTONES_FROM = 33;
    private static final int MIDTONES_TO = 67;

    /** The zone of a lightness. */
    public static ToneZone of(double lightness) {
        return lightness < MIDTONES_FROM
                ? SHADOWS
                : lightness <= MIDTONES_TO ? MIDTONES : HIGHLIGHTS;
    }

    /** Its bounds for readers: "below 33". */
    public String bounds() {
        return switch (this) {
            case SHADOWS -> "below " + MIDTONES_FROM;
            case MIDTONES -> MIDTONES_FROM + " to " + MIDTONES_TO;
            case HIGHLIGHTS -> "above " + MIDTONES_TO;
        };
    }
}
