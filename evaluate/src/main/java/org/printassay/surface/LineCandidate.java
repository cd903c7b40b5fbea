package org.printassay.surface;

/**
 * A place where a tint shows something like a line.
 *
 * @param bin of the tint
 * @param positionMm along the tint, between bins too
 * @param widthMm that of the filter that answers
 * @param contrast positive where it is lighter than the tint
 * @param z contrast in robust standard deviations of the filter's answers
 */
record LineCandidate(int bin, double positionMm, double widthMm, double contrast, double z) {
    /** Lines nearer to each other than this are one. */
    private static final double APART_MM = 0.3;

    /**
     * A filter answers with the other sign beside a line: at least so far, in widths, so strongly.
     */
    private static final double LOBE_MM = 1.2;

    private static final double LOBE_WIDTHS = 1.2;
    private static final double LOBE = 0.9;

    /** Whether both lie so near that they are one line. */
    boolean isPlacedLike(LineCandidate other) {
        return apart(other) <= APART_MM;
    }

    private double apart(LineCandidate other) {
        return Math.abs(positionMm - other.positionMm);
    }

    /** Whether a weaker one is but the same again, or the light beside it. */
    boolean accountsFor(LineCandidate weak) {
        double width = Math.max(widthMm, weak.widthMm);
        if (contrast > 0 == weak.contrast > 0) {
            return apart(weak) <= Math.max(APART_MM, 1.5 * width);
        }
        double lobe = Math.max(LOBE_MM, LOBE_WIDTHS * widthMm) + width;
        return apart(weak) <= lobe && Math.abs(weak.z) < LOBE * Math.abs(z);
    }
}
