package org.printassay.scannercalibration;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What to calibrate a scanner with.
 *
 * @param scans scans of one print of a chart
 * @param measurement an instrument's measurement of that same print
 * @param chart chart file of the print, when the sheet code is not enough
 * @param scanner name of the scanner; null when not said
 * @param printer name of the printer
 * @param paper name of the paper
 * @param family paper family that the calibration is meant for
 */
public record CalibrationRequest(
        List<Path> scans,
        Path measurement,
        Optional<Path> chart,
        @Nullable String scanner,
        @Nullable String printer,
        @Nullable String paper,
        @Nullable String family) {
    public CalibrationRequest {
        scans = List.copyOf(scans);
    }
}
