package org.printassay.chart;

import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/** Distances for tests. */
final class Geometry {
    private Geometry() {}

    /** From a point to the nearest point of a rectangle; 0 inside. */
    static double distance(PointMm point, RectMm area) {
        double dx = Math.max(0, Math.max(area.x() - point.x(), point.x() - area.right()));
        double dy = Math.max(0, Math.max(area.y() - point.y(), point.y() - area.bottom()));
        return Math.hypot(dx, dy);
    }

    /** White between two rectangles, the larger of both directions; negative when they overlap. */
    static double gap(RectMm one, RectMm other) {
        double dx = Math.max(one.x() - other.right(), other.x() - one.right());
        double dy = Math.max(one.y() - other.bottom(), other.y() - one.bottom());
        return Math.max(dx, dy);
    }

    static double distance(PointMm one, PointMm other) {
        return Math.hypot(one.x() - other.x(), one.y() - other.y());
    }
}
