package org.printassay.evaluation;

import org.jspecify.annotations.Nullable;

/**
 * How a sheet was found in a scan.
 *
 * @param file name of the scan
 * @param sheet sheet number from 1
 * @param markersFound how many markers were used
 * @param markersExpected how many the sheet has
 * @param residualMm root mean square distance of marker corners from the fitted placement
 * @param scaleX printed size over intended size across the sheet; null when the declared resolution
 *     is missing or wrong
 * @param scaleY the same down the sheet
 * @param rotationDegrees clockwise, -180 to 180
 * @param samplesPerMm true sampling
 * @param profile SHA-256 of the scanner's profile that colours were read through; null when there
 *     was none
 */
public record PlacementSummary(
        String file,
        int sheet,
        int markersFound,
        int markersExpected,
        double residualMm,
        @Nullable Double scaleX,
        @Nullable Double scaleY,
        double rotationDegrees,
        double samplesPerMm,
        @Nullable String profile) {
    private static final double UNEQUAL = 0.005;
    private static final double RESIZED = 0.006;

    /** Read through no profile, or not known through which. */
    public PlacementSummary(
            String file,
            int sheet,
            int markersFound,
            int markersExpected,
            double residualMm,
            @Nullable Double scaleX,
            @Nullable Double scaleY,
            double rotationDegrees,
            double samplesPerMm) {
        this(
                file,
                sheet,
                markersFound,
                markersExpected,
                residualMm,
                scaleX,
                scaleY,
                rotationDegrees,
                samplesPerMm,
                null);
    }

    /**
     * Whether scales differ by more than printers and scanners that leave sizes alone do, half a
     * percent (common practice, no source).
     */
    static boolean unequal(double scaleX, double scaleY) {
        return Math.abs(scaleX - scaleY) > UNEQUAL;
    }

    /**
     * Whether a sheet was printed at another size: by more than papers stretch and scanners are off
     * (common practice, no source).
     */
    static boolean resized(double scaleX, double scaleY) {
        return Math.abs(scaleX - 1) > RESIZED || Math.abs(scaleY - 1) > RESIZED;
    }

    PlacementSummary through(@Nullable String sha256) {
        return new PlacementSummary(
                file,
                sheet,
                markersFound,
                markersExpected,
                residualMm,
                scaleX,
                scaleY,
                rotationDegrees,
                samplesPerMm,
                sha256);
    }
}
