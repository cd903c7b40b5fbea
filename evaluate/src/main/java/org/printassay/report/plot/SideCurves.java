package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/**
 * How far the tones of several sides are off their aims: over each other while that is readable,
 * else one small plot a side with the others thin behind it. Told apart by number, dash and place,
 * never by colour.
 */
public final class SideCurves {
    private static final double LEFT = 34;
    private static final double RIGHT = 14;
    private static final double TOP = 28;
    private static final double BOTTOM = 44;
    private static final double GAP = 26;
    private static final double LEAST = 1;

    /** A plot of this width is as tall as it need be. */
    private static final double FULL = 355;

    private static final int TICKS = 5;

    private SideCurves() {}

    /**
     * One side.
     *
     * @param number what it is called in plots
     * @param name in full
     */
    public record Side(int number, String name, List<Spot> spots) {
        public Side {
            spots = List.copyOf(spots);
        }
    }

    /**
     * One grey.
     *
     * @param fileL L* of its code
     * @param deltaL printed less aim
     */
    public record Spot(double fileL, double deltaL) {}

    /**
     * The plot, of at least one side.
     *
     * @param tall how tall, against what is usual; where each side has a place of its own, its
     *     height is as usual
     */
    public static Drawing draw(List<Side> sides, double width, double tall) {
        return sides.size() <= Pens.MOST ? over(sides, width, tall) : apart(sides, width);
    }

    private static Drawing over(List<Side> sides, double width, double tall) {
        Range range = range(sides);
        double plot = width - LEFT - RIGHT;
        double height = tall * Math.max(0.62 * Math.min(plot, FULL), 0.42 * plot);
        Drawing d = drawing(sides, width, TOP + height + BOTTOM);
        Frame f = new Frame(LEFT, TOP, plot, height, 0, 100, range.low(), range.high());
        axes(d, f, range, true);
        for (int i = 0; i < sides.size(); i++) {
            d.path(points(f, sides.get(i)), Pens.line(i));
        }
        List<Mark.Point> taken = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            Mark.Point at = clearest(f, sides, i, taken);
            taken.add(at);
            Pens.number(d, at, sides.get(i).number());
        }
        return d;
    }

    /** Where a curve is furthest from the others and from numbers that stand already. */
    private static Mark.Point clearest(
            Frame f, List<Side> sides, int mine, List<Mark.Point> taken) {
        List<Mark.Point> points = points(f, sides.get(mine));
        Mark.Point best = points.get(points.size() / 2);
        double most = -1;
        for (Mark.Point point : points) {
            double room = f.width();
            for (int i = 0; i < sides.size(); i++) {
                if (i != mine) {
                    double across = Math.abs(at(points(f, sides.get(i)), point.x()) - point.y());
                    room = Math.min(room, across);
                }
            }
            for (Mark.Point other : taken) {
                room = Math.min(room, Math.hypot(other.x() - point.x(), other.y() - point.y()) / 2);
            }
            boolean inside = point.x() > f.left() + 12 && point.x() < f.right() - 12;
            if (inside && room > most) {
                most = room;
                best = point;
            }
        }
        return best;
    }

    private static double at(List<Mark.Point> points, double x) {
        Mark.Point last = points.get(0);
        for (Mark.Point p : points) {
            if (p.x() >= x) {
                double span = p.x() - last.x();
                double share = span <= 0 ? 1 : (x - last.x()) / span;
                return last.y() + share * (p.y() - last.y());
            }
            last = p;
        }
        return last.y();
    }

    private static Drawing apart(List<Side> sides, double width) {
        Range range = range(sides);
        int columns = width > 700 ? 3 : 2;
        int rows = (sides.size() + columns - 1) / columns;
        double across = (width - GAP * (columns - 1)) / columns;
        double plot = across - LEFT;
        double height = Math.max(110, 0.62 * plot);
        double row = TOP + height + BOTTOM;
        Drawing d = drawing(sides, width, rows * row);
        for (int i = 0; i < sides.size(); i++) {
            int line = i / columns;
            double left = (i - line * columns) * (across + GAP) + LEFT;
            Frame f =
                    new Frame(
                            left,
                            line * row + TOP,
                            plot,
                            height,
                            0,
                            100,
                            range.low(),
                            range.high());
            axes(d, f, range, false);
            for (int k = 0; k < sides.size(); k++) {
                if (k != i) {
                    d.path(points(f, sides.get(k)), Ink.AXIS);
                }
            }
            d.path(points(f, sides.get(i)), Ink.MEASURED);
            String head = sides.get(i).number() + "  " + sides.get(i).name();
            d.text(
                    left - LEFT,
                    f.top() - 12,
                    Mark.Anchor.START,
                    Ink.TEXT_STRONG,
                    Pens.fitted(head, across));
        }
        return d;
    }

    private static void axes(Drawing d, Frame f, Range range, boolean named) {
        double step = Frame.step(range.high() - range.low(), TICKS);
        if (named) {
            f.yAxis(d, step, "printed \u2212 aim, dL*");
            f.xAxis(d, 20, "L* of the file");
            return;
        }
        for (double v = Math.ceil(range.low() / step) * step; v <= range.high() + 1e-9; v += step) {
            boolean zero = Math.abs(v) < step * 1e-6;
            d.line(f.left(), f.y(v), f.right(), f.y(v), zero ? Ink.AIM : Ink.GRID);
            String label = Frame.label(v, step);
            d.text(f.left() - 6, f.y(v) + 4, Mark.Anchor.END, Ink.TEXT_QUIET, label);
        }
        for (int l = 0; l <= 100; l += 50) {
            Mark.Anchor anchor = l == 100 ? Mark.Anchor.END : Mark.Anchor.MIDDLE;
            d.line(f.x(l), f.bottom(), f.x(l), f.bottom() + 4, Ink.AXIS);
            String label = l == 100 ? "L* 100" : String.valueOf(l);
            d.text(f.x(l), f.bottom() + 18, anchor, Ink.TEXT_QUIET, label);
        }
    }

    private static List<Mark.Point> points(Frame f, Side side) {
        return side.spots().stream().map(s -> f.point(s.fileL(), s.deltaL())).toList();
    }

    /** Whole L* around all curves, and at least one either way. */
    private record Range(double low, double high) {}

    private static Range range(List<Side> sides) {
        double low = -LEAST;
        double high = LEAST;
        for (Side side : sides) {
            for (Spot spot : side.spots()) {
                low = Math.min(low, spot.deltaL());
                high = Math.max(high, spot.deltaL());
            }
        }
        return new Range(Math.floor(low), Math.ceil(high));
    }

    private static Drawing drawing(List<Side> sides, double width, double height) {
        StringBuilder text = new StringBuilder("Printed less aimed-at lightness over L* 0 to 100.");
        for (Side side : sides) {
            Spot most = side.spots().get(0);
            for (Spot spot : side.spots()) {
                most = Math.abs(spot.deltaL()) > Math.abs(most.deltaL()) ? spot : most;
            }
            text.append(' ').append(side.number()).append(", ").append(side.name());
            text.append(": furthest off by ").append(Frame.label(most.deltaL(), 0.1));
            text.append(" at L* ").append(Frame.label(most.fileL(), 1)).append('.');
        }
        return new Drawing("Tone of each against its aim", text.toString(), width, height);
    }
}
