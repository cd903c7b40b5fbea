package org.printassay.colour.icc;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Linear interpolation in a table of evenly spaced points. */
final class TableCurve implements IccCurve {
    private final double[] points;

    /** The table made to rise (or fall) all the way, so that it can be turned round. */
    private final double[] steady;

    private final boolean falls;

    /**
     * @param points at least two; kept, not copied
     */
    TableCurve(double[] points) {
        this.points = points;
        this.falls = points[points.length - 1] < points[0];
        this.steady = new double[points.length];
        double reached = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.length; i++) {
            reached = Math.max(reached, falls ? -points[i] : points[i]);
            steady[i] = reached;
        }
    }

    @Override
    public double at(double x) {
        int last = points.length - 1;
        double place = IccCurve.clamp(x) * last;
        int i = Math.min((int) place, last - 1);
        return points[i] + (place - i) * (points[i + 1] - points[i]);
    }

    @Override
    public double inverse(double y) {
        double sought = falls ? -IccCurve.clamp(y) : IccCurve.clamp(y);
        int low = 0;
        int high = steady.length - 1;
        if (sought < steady[0]) {
            return 0;
        }
        if (sought >= steady[high]) {
            return 1;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (steady[middle] <= sought) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + (sought - steady[low]) / (steady[high] - steady[low])) / (steady.length - 1);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof TableCurve curve && Arrays.equals(points, curve.points);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(points);
    }
}
