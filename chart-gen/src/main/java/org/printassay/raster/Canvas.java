package org.printassay.raster;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.printassay.colour.Rgb8;

/** An RGB image that flat areas and outlines are drawn into. Mutable, used by one thread. */
final class Canvas {
    /** Lines a pixel is cut into for coverage; along a line coverage is exact. */
    private static final int LINES = 16;

    private static final double FLATNESS = 0.02;

    private final int width;
    private final int height;
    private final byte[] rgb;

    /** A white image. */
    Canvas(int width, int height) {
        this.width = width;
        this.height = height;
        this.rgb = new byte[Math.multiplyExact(Math.multiplyExact(width, height), 3)];
        Arrays.fill(rgb, (byte) 255);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Interleaved codes, row by row; shared, not to be modified. */
    byte[] bytes() {
        return rgb;
    }

    /** Fills whole pixels from the edges rounded to the nearest pixel. */
    void rectangle(double left, double top, double right, double bottom, Rgb8 colour) {
        int x0 = inside(left, width);
        int x1 = inside(right, width);
        int y0 = inside(top, height);
        int y1 = inside(bottom, height);
        for (int y = y0; y < y1; y++) {
            for (int x = x0; x < x1; x++) {
                set(x, y, colour);
            }
        }
    }

    private static int inside(double at, int most) {
        return (int) Math.max(0, Math.min(most, Math.round(at)));
    }

    void set(int x, int y, Rgb8 colour) {
        int at = 3 * (y * width + x);
        rgb[at] = (byte) colour.r();
        rgb[at + 1] = (byte) colour.g();
        rgb[at + 2] = (byte) colour.b();
    }

    private record Edge(double x0, double y0, double x1, double y1, int turn) {}

    /** Edges of an outline that the present line crosses, and where, from left to right. */
    private static final class Crossings {
        private final List<Edge> edges;
        private final List<Edge> active = new ArrayList<>();
        private final double[] x;
        private final int[] turn;
        private int begun;
        private int count;

        /**
         * @param edges by their upper ends
         */
        Crossings(List<Edge> edges) {
            this.edges = edges;
            x = new double[edges.size()];
            turn = new int[edges.size()];
        }

        /** Goes on to a line below the last one. */
        void at(double y) {
            while (begun < edges.size() && edges.get(begun).y0 <= y) {
                active.add(edges.get(begun++));
            }
            active.removeIf(edge -> edge.y1 <= y);
            count = 0;
            for (Edge e : active) {
                add(e.x0 + (y - e.y0) / (e.y1 - e.y0) * (e.x1 - e.x0), e.turn);
            }
        }

        private void add(double at, int turns) {
            int place = count++;
            while (place > 0 && x[place - 1] > at) {
                x[place] = x[place - 1];
                turn[place] = turn[place - 1];
                place--;
            }
            x[place] = at;
            turn[place] = turns;
        }
    }

    /** Fills an outline in pixel coordinates by area coverage, non-zero winding. */
    void fill(Shape outline, Rgb8 colour) {
        List<Edge> edges = edges(outline);
        edges.sort(Comparator.comparingDouble(Edge::y0));
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        double leftmost = Double.POSITIVE_INFINITY;
        double rightmost = Double.NEGATIVE_INFINITY;
        for (Edge edge : edges) {
            top = Math.min(top, edge.y0);
            bottom = Math.max(bottom, edge.y1);
            leftmost = Math.min(leftmost, Math.min(edge.x0, edge.x1));
            rightmost = Math.max(rightmost, Math.max(edge.x0, edge.x1));
        }
        int left = Math.max(0, (int) Math.floor(leftmost));
        int right = Math.min(width - 1, (int) Math.ceil(rightmost));
        int first = Math.max(0, (int) Math.floor(top));
        int last = Math.min(height - 1, (int) Math.ceil(bottom));
        double[] cover = new double[width + 1];
        Crossings crossings = new Crossings(edges);
        for (int y = first; y <= last; y++) {
            if (left > right) {
                return;
            }
            Arrays.fill(cover, left, right + 1, 0);
            boolean touched = false;
            for (int line = 0; line < LINES; line++) {
                crossings.at(y + (line + 0.5) / LINES);
                touched |= cover(crossings, cover);
            }
            if (touched) {
                for (int x = left; x <= right; x++) {
                    if (cover[x] > 0) {
                        blend(x, y, colour, Math.min(1, cover[x] / LINES));
                    }
                }
            }
        }
    }

    private static List<Edge> edges(Shape outline) {
        List<Edge> edges = new ArrayList<>();
        double[] c = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (PathIterator i = outline.getPathIterator(null, FLATNESS); !i.isDone(); i.next()) {
            int kind = i.currentSegment(c);
            double toX = kind == PathIterator.SEG_CLOSE ? startX : c[0];
            double toY = kind == PathIterator.SEG_CLOSE ? startY : c[1];
            if (kind == PathIterator.SEG_MOVETO) {
                startX = toX;
                startY = toY;
            } else if (y < toY) {
                edges.add(new Edge(x, y, toX, toY, 1));
            } else if (y > toY) {
                edges.add(new Edge(toX, toY, x, y, -1));
            }
            x = toX;
            y = toY;
        }
        return edges;
    }

    private boolean cover(Crossings crossings, double[] cover) {
        int winding = 0;
        for (int i = 0; i + 1 < crossings.count; i++) {
            winding += crossings.turn[i];
            if (winding != 0) {
                span(crossings.x[i], crossings.x[i + 1], cover);
            }
        }
        return crossings.count > 0;
    }

    private void span(double from, double to, double[] cover) {
        double left = Math.max(0, from);
        double right = Math.min(width, to);
        for (int x = (int) left; x < right; x++) {
            cover[x] += Math.min(x + 1, right) - Math.max(x, left);
        }
    }

    private void blend(int x, int y, Rgb8 colour, double share) {
        int at = 3 * (y * width + x);
        rgb[at] = mixed(rgb[at], colour.r(), share);
        rgb[at + 1] = mixed(rgb[at + 1], colour.g(), share);
        rgb[at + 2] = mixed(rgb[at + 2], colour.b(), share);
    }

    private static byte mixed(byte under, int over, double share) {
        return (byte) Math.round((under & 0xff) * (1 - share) + over * share);
    }
}
