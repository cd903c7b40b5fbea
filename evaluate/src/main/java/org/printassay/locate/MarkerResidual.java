package org.printassay.locate;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What a flat map leaves over when a scanner's carriage does not run evenly: a cubic polynomial in
 * the position, held back by a small ridge so that a few markers cannot bend it wildly.
 */
final class MarkerResidual {
    /** No residual at all. */
    static final MarkerResidual NONE = new MarkerResidual(0, 0, 1, new double[10], new double[10]);

    private static final double RIDGE = 0.05;

    private final double middleX;
    private final double middleY;
    private final double scale;
    private final double[] dx;
    private final double[] dy;

    private MarkerResidual(double middleX, double middleY, double scale, double[] dx, double[] dy) {
        this.middleX = middleX;
        this.middleY = middleY;
        this.scale = scale;
        this.dx = dx;
        this.dy = dy;
    }

    /** Where a point is, and how far it is from where the flat map puts it. */
    record Offset(double x, double y, double dx, double dy) {}

    static MarkerResidual fit(List<Offset> offsets) {
        double mx = offsets.stream().mapToDouble(Offset::x).average().orElse(0);
        double my = offsets.stream().mapToDouble(Offset::y).average().orElse(0);
        double reach =
                offsets.stream()
                        .mapToDouble(o -> Math.max(Math.abs(o.x - mx), Math.abs(o.y - my)))
                        .max()
                        .orElse(1);
        int rows = offsets.size();
        RealMatrix a = new Array2DRowRealMatrix(rows + 10, 10);
        double[] bx = new double[rows + 10];
        double[] by = new double[rows + 10];
        for (int i = 0; i < rows; i++) {
            Offset o = offsets.get(i);
            a.setRow(i, terms((o.x - mx) / reach, (o.y - my) / reach));
            bx[i] = o.dx;
            by[i] = o.dy;
        }
        double hold = RIDGE * Math.sqrt(rows);
        for (int k = 0; k < 10; k++) {
            a.setEntry(rows + k, k, hold);
        }
        var solver = new QRDecomposition(a).getSolver();
        return new MarkerResidual(
                mx,
                my,
                reach,
                solver.solve(new ArrayRealVector(bx)).toArray(),
                solver.solve(new ArrayRealVector(by)).toArray());
    }

    /**
     * A scan point of the flat map where it really is.
     *
     * @param x page position that it belongs to
     * @param sign 1 to move there, -1 to move back
     */
    PointPx moved(PointPx flat, double x, double y, int sign) {
        if (this == NONE) {
            return flat;
        }
        double[] terms = terms(clamped((x - middleX) / scale), clamped((y - middleY) / scale));
        double right = 0;
        double down = 0;
        for (int k = 0; k < terms.length; k++) {
            right += dx[k] * terms[k];
            down += dy[k] * terms[k];
        }
        return new PointPx(flat.x() + sign * right, flat.y() + sign * down);
    }

    /** Beyond the markers the polynomial is not trusted: it stays at its value there. */
    private static double clamped(double t) {
        return Math.max(-1.1, Math.min(1.1, t));
    }

    private static double[] terms(double u, double v) {
        return new double[] {
            1, u, v, u * u, u * v, v * v, u * u * u, u * u * v, u * v * v, v * v * v
        };
    }
}
