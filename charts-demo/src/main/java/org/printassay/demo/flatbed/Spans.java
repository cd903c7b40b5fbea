package org.printassay.demo.flatbed;

/**
 * Which cells of a rectangle matter: from one column up to another, row by row. A tile of a turned
 * scan needs a turned piece of the sheet, half of the rectangle around it.
 */
final class Spans {
    private final int[] from;
    private final int[] to;

    private Spans(int[] from, int[] to) {
        this.from = from;
        this.to = to;
    }

    /**
     * Cells within a convex piece and so many beside it on all sides.
     *
     * @param x its corners in turn, cells from the rectangle's left
     * @param y the same from its top
     * @param beside cells wanted beyond the piece
     */
    static Spans around(double[] x, double[] y, int beside, int width, int height) {
        int[] from = new int[height];
        int[] to = new int[height];
        for (int row = 0; row < height; row++) {
            double top = row - beside - 1;
            double bottom = row + beside + 2;
            double left = Double.POSITIVE_INFINITY;
            double right = Double.NEGATIVE_INFINITY;
            for (int a = 0; a < x.length; a++) {
                int b = (a + 1) % x.length;
                double start = share(top, y[a], y[b]);
                double end = share(bottom, y[a], y[b]);
                if (Math.max(y[a], y[b]) < top || Math.min(y[a], y[b]) > bottom) {
                    continue;
                }
                double first = x[a] + start * (x[b] - x[a]);
                double last = x[a] + end * (x[b] - x[a]);
                left = Math.min(left, Math.min(first, last));
                right = Math.max(right, Math.max(first, last));
            }
            from[row] = left > right ? 0 : clamp(Math.floor(left) - beside - 1, width);
            to[row] = left > right ? 0 : clamp(Math.ceil(right) + beside + 1, width);
        }
        return new Spans(from, to);
    }

    /**
     * Where on an edge from one height to another a height is met: 0 to 1, the nearer end beyond.
     */
    private static double share(double at, double start, double end) {
        if (start == end) {
            return at < start ? 0 : 1;
        }
        return Math.min(1, Math.max(0, (at - start) / (end - start)));
    }

    private static int clamp(double column, int width) {
        return (int) Math.min(width, Math.max(0, column));
    }

    int rows() {
        return from.length;
    }

    /** First column that matters in a row. */
    int from(int row) {
        return from[row];
    }

    /** Column after the last that matters; as {@link #from} when none does. */
    int to(int row) {
        return to[row];
    }
}
