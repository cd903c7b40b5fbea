package org.printassay.locate;

import java.util.List;
import java.util.Map;
import org.printassay.chart.Chart;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

/**
 * A sheet found in a scan.
 *
 * @param chart its chart, print number as the sheet code says
 * @param sheet which of its sheets
 * @param placement page to pixels
 * @param markerCentres where each used marker's centre was found, by marker id
 * @param residualMm root mean square distance of marker corners from the placement
 * @param perspective how much larger the nearest corner is seen than the middle, as a share; about
 *     0 on a flatbed, which looks at all of the sheet from the same distance
 * @param codeRead whether the sheet code was read; else the chart is what the user named
 * @param unlike patches that are covered or not where they should be, by the steps around them; not
 *     to be read
 * @param outline corners of the page in the scan, clockwise from the page's top left
 */
public record LocatedSheet(
        Chart chart,
        Sheet sheet,
        Placement placement,
        Map<Integer, PointPx> markerCentres,
        double residualMm,
        double perspective,
        boolean codeRead,
        List<Patch> unlike,
        List<PointPx> outline) {
    /**
     * A carriage that runs 0.3 mm off bends a sheet by less than half of this; a camera half a
     * metre away does more when it is tilted by two degrees.
     */
    private static final double CAMERA_PERSPECTIVE = 0.01;

    public LocatedSheet {
        markerCentres = Map.copyOf(markerCentres);
        unlike = List.copyOf(unlike);
        outline = List.copyOf(outline);
    }

    /** Whether the sheet was seen by a camera, at an angle. */
    public boolean photographed() {
        return perspective > CAMERA_PERSPECTIVE;
    }
}
