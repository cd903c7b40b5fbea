package org.printassay.locate;

import boofcv.struct.image.GrayU8;
import java.util.ArrayList;
import java.util.List;
import org.printassay.layout.SheetLayout;
import org.printassay.robust.Median;

/**
 * How wide the edges of markers are where no sheet is placed yet: told from their steepest part.
 */
final class MarkerBlur {
    /** Across an edge, from inside to outside, this share of the marker's side each way. */
    private static final double REACH = 0.12;

    private static final int HALF = 24;

    /** Points along an edge that are averaged over, and the part of the edge they cover. */
    private static final int ALONG = 15;

    private static final double PART = 0.6;

    /**
     * A Gaussian edge rises from 10 % to 90 % in so many times its step over its steepest slope.
     */
    private static final double WIDTH_BY_SLOPE = 2.563 / Math.sqrt(2 * Math.PI);

    /** Codes between the sides of an edge that is one. */
    private static final double LEAST_STEP = 20;

    private MarkerBlur() {}

    /**
     * Whether the edges of most markers are wider than a module of the sheet code, so that modules
     * run into each other.
     */
    static boolean hidesCode(double widthMm) {
        return widthMm > SheetLayout.CODE_MM / SheetLayout.CODE_MODULES;
    }

    /**
     * Median width of the markers' edges between 10 % and 90 %, millimetres on the sheet; 0 without
     * any.
     *
     * @param scale full-resolution pixels a pixel of the image
     */
    static double widthMm(GrayU8 image, double scale, List<FoundMarker> markers) {
        List<Double> widths = new ArrayList<>();
        for (FoundMarker marker : markers) {
            for (int side = 0; side < 4; side++) {
                double width = width(image, scale, marker, side);
                if (width > 0) {
                    widths.add(width * SheetLayout.MARKER_MM);
                }
            }
        }
        return widths.isEmpty() ? 0 : Median.upper(widths.stream().mapToDouble(w -> w).toArray());
    }

    /** Width of one edge as a share of the marker's side; 0 where it is none. */
    private static double width(GrayU8 image, double scale, FoundMarker marker, int side) {
        PointPx from = marker.corners().get(side);
        PointPx to = marker.corners().get((side + 1) % 4);
        PointPx centre = marker.centre();
        double outX = (from.x() + to.x()) / 2 - centre.x();
        double outY = (from.y() + to.y()) / 2 - centre.y();
        double[] profile = new double[2 * HALF + 1];
        for (int k = 0; k < ALONG; k++) {
            double along = 0.5 + ((k + 0.5) / ALONG - 0.5) * PART;
            for (int i = -HALF; i <= HALF; i++) {
                // From the centre to an edge is half a side.
                double out = 2 * REACH * i / HALF;
                double x = from.x() + along * (to.x() - from.x()) + out * outX;
                double y = from.y() + along * (to.y() - from.y()) + out * outY;
                double value = value(image, x / scale - 0.5, y / scale - 0.5);
                if (Double.isNaN(value)) {
                    return 0;
                }
                profile[i + HALF] += value / ALONG;
            }
        }
        double least = profile[0];
        double most = profile[0];
        double steepest = 0;
        for (int i = 1; i < profile.length; i++) {
            least = Math.min(least, profile[i]);
            most = Math.max(most, profile[i]);
            if (i >= 2) {
                steepest = Math.max(steepest, (profile[i] - profile[i - 2]) / 2);
            }
        }
        return most - least < LEAST_STEP || steepest <= 0
                ? 0
                : WIDTH_BY_SLOPE * (most - least) / steepest * REACH / HALF;
    }

    private static double value(GrayU8 image, double x, double y) {
        int column = (int) Math.floor(x);
        int row = (int) Math.floor(y);
        if (column < 0 || row < 0 || column + 1 >= image.width || row + 1 >= image.height) {
            return Double.NaN;
        }
        double fx = x - column;
        double fy = y - row;
        return (1 - fy) * ((1 - fx) * image.get(column, row) + fx * image.get(column + 1, row))
                + fy
                        * ((1 - fx) * image.get(column, row + 1)
                                + fx * image.get(column + 1, row + 1));
    }
}
