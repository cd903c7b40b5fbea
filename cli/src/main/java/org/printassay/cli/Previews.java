package org.printassay.cli;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.evaluation.Evaluator;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.report.ScanPreview;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.Marker;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** What a report shows of each scan. */
final class Previews {
    private Previews() {}

    static List<ScanPreview> of(Evaluator.Result result) {
        Set<Key> doubtful = new HashSet<>();
        for (Reading reading : result.evaluation().patches()) {
            if (isDoubtful(reading.flags())) {
                doubtful.add(new Key(reading.sheet(), reading.id()));
            }
        }
        return result.scans().stream().map(scan -> of(scan, doubtful)).toList();
    }

    private record Key(int sheet, String id) {}

    private static boolean isDoubtful(Set<ReadingFlag> flags) {
        return flags.stream().anyMatch(ReadingFlag.DOUBTFUL::contains);
    }

    /**
     * One scan.
     *
     * @param doubtful what all scans of the print together leave in doubt
     */
    private static ScanPreview of(SheetSamples scan, Set<Key> doubtful) {
        Placement placement = scan.located().placement();
        double factor = scan.preview().factor();
        List<List<Point2D>> patches = new ArrayList<>();
        List<List<Point2D>> crossed = new ArrayList<>();
        int sheet = scan.located().sheet().number();
        for (PatchSample sample : scan.samples()) {
            List<Point2D> corners = corners(placement, sample.patch().area(), factor);
            patches.add(corners);
            if (isDoubtful(sample.flags())
                    || doubtful.contains(new Key(sheet, sample.patch().id()))) {
                crossed.add(corners);
            }
        }
        List<List<Point2D>> markers = new ArrayList<>();
        for (Marker marker : scan.located().sheet().markers()) {
            if (scan.located().markerCentres().containsKey(marker.id())) {
                markers.add(corners(placement, marker.area(), factor));
            }
        }
        return new ScanPreview(
                scan.scan().name(), scan.preview().picture(), patches, crossed, markers);
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
