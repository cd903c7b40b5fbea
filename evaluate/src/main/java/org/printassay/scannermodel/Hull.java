package org.printassay.scannermodel;

import java.util.List;
import org.printassay.colour.Lab;

/**
 * How far a colour lies outside the convex hull of others: the distance to its nearest point, found
 * by pairwise steps (M. Frank, P. Wolfe 1956; S. Lacoste-Julien, M. Jaggi, NIPS 2015).
 */
final class Hull {
    private static final int STEPS = 300;

    /** Near enough, CIELAB units. */
    private static final double TOLERANCE = 0.05;

    private final List<Lab> points;

    Hull(List<Lab> points) {
        this.points = List.copyOf(points);
    }

    /** CIELAB distance to the hull; 0 inside. */
    double outside(Lab from) {
        int n = points.size();
        double[] weights = new double[n];
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            double away = length(minus(points.get(i), from));
            if (away < least) {
                least = away;
                nearest = i;
            }
        }
        weights[nearest] = 1;
        double[] off = minus(points.get(nearest), from);
        for (int step = 0; step < STEPS; step++) {
            int best = -1;
            int worst = -1;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                double along = dot(off, minus(points.get(i), from));
                if (along < low) {
                    low = along;
                    best = i;
                }
                if (weights[i] > 0 && along > high) {
                    high = along;
                    worst = i;
                }
            }
            double square = dot(off, off);
            // The hull reaches at most this much nearer than where we are.
            if (square < TOLERANCE * TOLERANCE
                    || square - low < TOLERANCE * Math.sqrt(square)
                    || best == worst) {
                break;
            }
            double[] way = minus(points.get(best), points.get(worst));
            double share = Math.min(weights[worst], -dot(off, way) / dot(way, way));
            if (!(share > 0)) {
                break;
            }
            weights[best] += share;
            weights[worst] -= share;
            for (int k = 0; k < 3; k++) {
                off[k] += share * way[k];
            }
        }
        double away = length(off);
        return away < 2 * TOLERANCE ? 0 : away;
    }

    private static double[] minus(Lab one, Lab two) {
        return new double[] {one.l() - two.l(), one.a() - two.a(), one.b() - two.b()};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double length(double[] a) {
        return Math.sqrt(dot(a, a));
    }
}
