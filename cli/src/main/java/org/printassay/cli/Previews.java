package org.printassay.cli;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.report.ScanPreview;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** What a report shows of each scan. */
final class Previews {
    private Previews() {}

    static List<ScanPreview> of(List<SheetSamples> scans) {
        return scans.stream().map(Previews::of).toList();
    }

    private static ScanPreview of(SheetSamples scan) {
        Placement placement = scan.located().placement();
        double factor = scan.preview().factor();
        List<List<Point2D>> patches = new ArrayList<>();
        for (PatchSample sample : scan.samples()) {
            patches.add(corners(placement, sample.patch().area(), factor));
        }
        List<List<Point2D>> markers = new ArrayList<>();
        for (Marker marker : scan.located().sheet().markers()) {
            if (scan.located().markerCentres().containsKey(marker.id())) {
                markers.add(corners(placement, marker.area(), factor));
            }
        }
        return new ScanPreview(scan.scan().name(), scan.preview().picture(), patches, markers);
    }

    private static List<Point2D> corners(Placement placement, RectMm area, double factor) {
        List<Point2D> corners = new ArrayList<>();
        for (PointMm corner :
                List.of(
                        new PointMm(area.x(), area.y()),
                        new PointMm(area.right(), area.y()),
                        new PointMm(area.right(), area.bottom()),
                        new PointMm(area.x(), area.bottom()))) {
            PointPx at = placement.toScan(corner);
            corners.add(new Point2D.Double(at.x() / factor, at.y() / factor));
        }
        return corners;
    }
}
