package org.printassay.locate;

import java.util.ArrayList;
import java.util.List;
import org.printassay.robust.Median;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Sheet;

/** A placement by markers, refined by the edges of patches. */
final class RefinedPlacement implements Placement {
    /** Fewer edges than this refine nothing. */
    private static final int FEWEST_EDGES = 120;

    /** Edges left out of the fit must come out this much better than by markers alone. */
    private static final double WORTH = 0.9;

    private static final int INVERSE_STEPS = 4;

    private final Placement markers;
    private final CarriageResidual residual;

    private RefinedPlacement(Placement markers, CarriageResidual residual) {
        this.markers = markers;
        this.residual = residual;
    }

    /** Refines a placement where that places edges better that it was not fitted to. */
    static Placement of(ScanInfo scan, LocatingImage image, Sheet sheet, Placement markers) {
        List<EdgeSurvey.Edge> edges = EdgeSurvey.edges(image, sheet, markers);
        if (edges.size() < FEWEST_EDGES) {
            return markers;
        }
        double longSide = Math.max(scan.width(), scan.height());
        List<Double> before = new ArrayList<>();
        List<Double> after = new ArrayList<>();
        for (int part = 0; part < 2; part++) {
            List<EdgeSurvey.Edge> fitted = new ArrayList<>();
            List<EdgeSurvey.Edge> held = new ArrayList<>();
            for (EdgeSurvey.Edge edge : edges) {
                // The edges of a patch are not independent: all of them go to one side.
                (edge.patch() % 2 == part ? fitted : held).add(edge);
            }
            CarriageResidual residual =
                    CarriageResidual.fit(fitted, longSide, markers.samplesPerMm());
            if (residual == null) {
                return markers;
            }
            for (EdgeSurvey.Edge edge : held) {
                before.add(Math.abs(edge.offPx()));
                after.add(Math.abs(residual.left(edge)));
            }
        }
        CarriageResidual all = CarriageResidual.fit(edges, longSide, markers.samplesPerMm());
        if (all == null || median(after) > WORTH * median(before)) {
            return markers;
        }
        return new RefinedPlacement(markers, all);
    }

    private static double median(List<Double> values) {
        return Median.of(values.stream().mapToDouble(v -> v).toArray());
    }

    @Override
    public PointPx toScan(PointMm page) {
        return residual.moved(markers.toScan(page));
    }

    @Override
    public PointMm toPage(PointPx scan) {
        PointPx flat = scan;
        for (int i = 0; i < INVERSE_STEPS; i++) {
            PointPx moved = residual.moved(flat);
            flat = new PointPx(flat.x() + scan.x() - moved.x(), flat.y() + scan.y() - moved.y());
        }
        return markers.toPage(flat);
    }

    @Override
    public double samplesPerMm() {
        return markers.samplesPerMm();
    }

    @Override
    public double rotationDegrees() {
        return markers.rotationDegrees();
    }
}
