package org.printassay.locate;

import org.printassay.sheet.PointMm;

/** The map from chart millimetres to pixels of one scan: a homography and a smooth residual. */
public interface Placement {
    /** Where a point of the page lies in the scan. */
    PointPx toScan(PointMm page);

    /** Which point of the page lies at a pixel. */
    PointMm toPage(PointPx scan);

    /** True sampling: pixels per millimetre of the page, mean over the sheet. */
    double samplesPerMm();

    /** Rotation of the sheet in the scan, clockwise, -180 to 180 degrees. */
    double rotationDegrees();
}
