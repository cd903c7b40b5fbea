package org.printassay.scannercalibration;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.locate.PointPx;

/**
 * What to calibrate a scanner with.
 *
 * @param scans scans of one print of a chart; one scan of a reference target
 * @param measurement an instrument's measurement of that same print; the target's data file
 * @param chart chart file of the print, when the sheet code is not enough
 * @param scanner name of the scanner; null when not said
 * @param printer name of the printer
 * @param paper name of the paper
 * @param family paper family that the calibration is meant for
 * @param target where the patches of a reference target are; empty for a chart
 */
public record CalibrationRequest(
        List<Path> scans,
        Path measurement,
        Optional<Path> chart,
        @Nullable String scanner,
        @Nullable String printer,
        @Nullable String paper,
        @Nullable String family,
        Optional<Target> target) {
    public CalibrationRequest {
        scans = List.copyOf(scans);
    }

    /**
     * A reference target in a scan.
     *
     * @param layout its layout file
     * @param corners where the layout's corners are in the scan, pixels, clockwise from top left
     */
    public record Target(Path layout, List<PointPx> corners) {
        public Target {
            corners = List.copyOf(corners);
        }
    }
}
