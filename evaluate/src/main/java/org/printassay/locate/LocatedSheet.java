package org.printassay.locate;

import java.util.List;
import java.util.Map;
import org.printassay.chart.Chart;
import org.printassay.sheet.Sheet;

/**
 * A sheet found in a scan.
 *
 * @param chart its chart, print number as the sheet code says
 * @param sheet which of its sheets
 * @param placement page to pixels
 * @param markerCentres where each used marker's centre was found, by marker id
 * @param residualMm root mean square distance of marker corners from the placement
 * @param outline corners of the page in the scan, clockwise from the page's top left
 */
public record LocatedSheet(
        Chart chart,
        Sheet sheet,
        Placement placement,
        Map<Integer, PointPx> markerCentres,
        double residualMm,
        List<PointPx> outline) {
    public LocatedSheet {
        markerCentres = Map.copyOf(markerCentres);
        outline = List.copyOf(outline);
    }
}
