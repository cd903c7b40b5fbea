package org.printassay.locate;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.printassay.sheet.PointMm;

/** A projective map of the plane, page millimetres to pixels or back. */
final class Homography {
    private final double[] h;

    private Homography(double[] h) {
        this.h = h;
    }

    /** A pair of points that belong together. */
    record Pair(PointMm page, PointPx scan) {}

    /**
     * Least squares fit by the normalised direct linear transformation (R. Hartley, "In defense of
     * the eight-point algorithm", IEEE Trans. PAMI 19(6), 1997).
     *
     * @param pairs four or more, not all on a line
     */
    static Homography fit(List<Pair> pairs) {
        Scaling from =
                Scaling.of(
                        pairs.stream().mapToDouble(p -> p.page().x()).toArray(),
                        pairs.stream().mapToDouble(p -> p.page().y()).toArray());
        Scaling to =
                Scaling.of(
                        pairs.stream().mapToDouble(p -> p.scan().x()).toArray(),
                        pairs.stream().mapToDouble(p -> p.scan().y()).toArray());
        RealMatrix a = new Array2DRowRealMatrix(Math.max(9, 2 * pairs.size()), 9);
        for (int i = 0; i < pairs.size(); i++) {
            double x = from.x(pairs.get(i).page().x());
            double y = from.y(pairs.get(i).page().y());
            double u = to.x(pairs.get(i).scan().x());
            double v = to.y(pairs.get(i).scan().y());
            a.setRow(2 * i, new double[] {x, y, 1, 0, 0, 0, -u * x, -u * y, -u});
            a.setRow(2 * i + 1, new double[] {0, 0, 0, x, y, 1, -v * x, -v * y, -v});
        }
        double[] n = new SingularValueDecomposition(a).getV().getColumn(8);
        double[] normal = multiply(to.inverse(), multiply(n, from.matrix()));
        return new Homography(normal);
    }

    PointPx apply(double x, double y) {
        double w = h[6] * x + h[7] * y + h[8];
        return new PointPx((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w);
    }

    /**
     * How much the scale changes from a point to the place at a distance where it has grown most,
     * as a share; 0 when the map is affine.
     */
    double perspective(PointMm from, double distance) {
        double w = h[6] * from.x() + h[7] * from.y() + h[8];
        return Math.hypot(h[6], h[7]) * distance / Math.abs(w);
    }

    /** The map back, pixels to page millimetres. */
    Homography inverse() {
        return new Homography(adjugate(h));
    }

    private static double[] adjugate(double[] m) {
        return new double[] {
            m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
    }

    private static double[] multiply(double[] p, double[] q) {
        double[] r = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int col = 0; col < 3; col++) {
                for (int k = 0; k < 3; k++) {
                    r[3 * row + col] += p[3 * row + k] * q[3 * k + col];
                }
            }
        }
        return r;
    }

    /** Moves points to their mean and scales them to a mean distance of about one. */
    private record Scaling(double middleX, double middleY, double scale) {
        static Scaling of(double[] xs, double[] ys) {
            double mx = 0;
            double my = 0;
            for (int i = 0; i < xs.length; i++) {
                mx += xs[i] / xs.length;
                my += ys[i] / xs.length;
            }
            double distance = 0;
            for (int i = 0; i < xs.length; i++) {
                distance += Math.hypot(xs[i] - mx, ys[i] - my) / xs.length;
            }
            return new Scaling(mx, my, 1 / Math.max(distance, 1e-9));
        }

        double x(double x) {
            return (x - middleX) * scale;
        }

        double y(double y) {
            return (y - middleY) * scale;
        }

        double[] matrix() {
            return new double[] {scale, 0, -middleX * scale, 0, scale, -middleY * scale, 0, 0, 1};
        }

        double[] inverse() {
            return new double[] {1 / scale, 0, middleX, 0, 1 / scale, middleY, 0, 0, 1};
        }
    }
}
