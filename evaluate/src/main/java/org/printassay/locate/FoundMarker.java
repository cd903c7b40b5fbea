package org.printassay.locate;

import java.util.List;

/**
 * A marker found in a scan.
 *
 * @param id number in the dictionary
 * @param corners outer corners of its black square in full-resolution pixels, clockwise from its
 *     own top left
 */
public record FoundMarker(int id, List<PointPx> corners) {
    public FoundMarker {
        corners = List.copyOf(corners);
    }

    /** Where the diagonals cross is near enough: the mean of the corners. */
    public PointPx centre() {
        double x = 0;
        double y = 0;
        for (PointPx corner : corners) {
            x += corner.x() / corners.size();
            y += corner.y() / corners.size();
        }
        return new PointPx(x, y);
    }

    /** Side of the square in pixels, from its perimeter. */
    public double sidePx() {
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            PointPx a = corners.get(i);
            PointPx b = corners.get((i + 1) % 4);
            sum += Math.hypot(a.x() - b.x(), a.y() - b.y());
        }
        return sum / 4;
    }
}
