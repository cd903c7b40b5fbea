package org.printassay.evaluation;

import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.sheet.PointMm;
import org.printassay.surface.Along;

/**
 * Columns or rows of a scan, whichever run across an axis of the page: what a scanner does in one
 * of them keeps to its pixels, not to a sheet that lies a little turned.
 */
record ScanColumns(Placement placement) {
    /** Whether what varies along an axis runs along the scan's columns, as streaks do. */
    boolean upright(Along along) {
        double turned = Math.abs(Math.sin(Math.toRadians(placement.rotationDegrees())));
        return along == Along.X ? turned < 0.5 : turned > 0.5;
    }

    /** Column or row of the scan, whichever a line keeps to, of a place. */
    double inScan(Along along, double positionMm, double acrossMm) {
        PointPx at = placement.toScan(page(along, positionMm, acrossMm));
        return upright(along) ? at.x() : at.y();
    }

    /** Where the column of the scan goes that a place of the page stands in. */
    double through(Along along, double positionMm, double acrossMm, double otherMm) {
        double column = inScan(along, positionMm, acrossMm);
        PointPx other = placement.toScan(page(along, positionMm, otherMm));
        PointPx crossing =
                upright(along) ? new PointPx(column, other.y()) : new PointPx(other.x(), column);
        PointMm there = placement.toPage(crossing);
        return along == Along.X ? there.x() : there.y();
    }

    private static PointMm page(Along along, double positionMm, double acrossMm) {
        return along == Along.X
                ? new PointMm(positionMm, acrossMm)
                : new PointMm(acrossMm, positionMm);
    }
}
