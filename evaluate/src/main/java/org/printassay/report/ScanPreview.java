package org.printassay.report;

import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;

/**
 * A scan made small, with what was found in it, for a person to see that the reading was right.
 *
 * @param file name of the scan, without folders
 * @param image the scan, about 600 to 1200 pixels long; not modified
 * @param patchOutlines corners of each patch that was read, in pixels of the image, in order around
 * @param doubtful those of them whose reading is doubtful
 * @param markers corners of each marker that was used, likewise
 */
public record ScanPreview(
        String file,
        BufferedImage image,
        List<List<Point2D>> patchOutlines,
        List<List<Point2D>> doubtful,
        List<List<Point2D>> markers) {
    public ScanPreview {
        patchOutlines = List.copyOf(patchOutlines);
        doubtful = List.copyOf(doubtful);
        markers = List.copyOf(markers);
    }
}
