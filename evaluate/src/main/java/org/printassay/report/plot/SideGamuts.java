package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.printassay.metric.GamutMesh;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/**
 * Gamuts of several sides cut at one or more lightnesses: over each other while that is readable,
 * else one small plane a side, filled, with the side that others are shown against as a line.
 */
public final class SideGamuts {
    private static final double GAP = 16;
    private static final double HEAD = 24;
    private static final double MARGIN = 1.06;
    private static final double LEAST_REACH = 30;

    /** So far from the outline, in units, a number stands outside it. */
    private static final double BESIDE = 4;

    /** A number nearer to the middle of a name than this hides some of it. */
    private static final double NAME_WIDTH = 30;

    private static final double NAME_HEIGHT = 16;

    private static final double TICK = 20;
    private static final double TICK_END = 140;

    private SideGamuts() {}

    /**
     * One side.
     *
     * @param number what it is called in plots
     * @param cuts its outlines at each lightness, in the order of the lightnesses
     */
    public record Side(int number, String name, List<List<List<GamutMesh.Place>>> cuts) {
        public Side {
            cuts = List.copyOf(cuts);
        }
    }

    /**
     * The plot.
     *
     * @param lightnesses where gamuts are cut
     * @param against place in the list of the side that others are shown against
     */
    public static Drawing draw(
            List<Side> sides, List<Double> lightnesses, int against, double width) {
        return sides.size() <= Pens.MOST
                ? over(sides, lightnesses, width)
                : apart(sides, lightnesses, against, width);
    }

    private static Drawing over(List<Side> sides, List<Double> lightnesses, double width) {
        int columns = width > 700 ? 3 : 1;
        Grid grid = new Grid(width, columns, lightnesses.size(), window(sides));
        Drawing d = drawing(sides, lightnesses, width, grid.height());
        for (int cut = 0; cut < lightnesses.size(); cut++) {
            Frame f = grid.plane(d, cut, lightness(lightnesses.get(cut)), true);
            List<Mark.Point> taken = new ArrayList<>();
            for (int i = 0; i < sides.size(); i++) {
                outlines(d, f, sides.get(i).cuts().get(cut), Pens.line(i));
            }
            for (int i = 0; i < sides.size(); i++) {
                number(d, f, sides, i, cut, taken);
            }
        }
        return d;
    }

    /** Puts a side's number where its outline is clearest of the others. */
    private static void number(
            Drawing d, Frame f, List<Side> sides, int mine, int cut, List<Mark.Point> taken) {
        List<Mark.Point> mayBe = points(f, sides.get(mine).cuts().get(cut));
        List<Mark.Point> free = mayBe.stream().filter(p -> hidesNoName(f, p)).toList();
        List<Mark.Point> all = free.isEmpty() ? mayBe : free;
        Mark.Point best = null;
        double most = -1;
        for (Mark.Point p : all) {
            double room = f.width();
            for (int i = 0; i < sides.size(); i++) {
                if (i != mine) {
                    for (Mark.Point q : points(f, sides.get(i).cuts().get(cut))) {
                        room = Math.min(room, distance(p, q));
                    }
                }
            }
            for (Mark.Point q : taken) {
                room = Math.min(room, distance(p, q) / BESIDE);
            }
            if (room > most) {
                most = room;
                best = p;
            }
        }
        if (best != null) {
            taken.add(best);
            Pens.number(d, best, sides.get(mine).number());
        }
    }

    /** Whether a number at a point leaves the names of the axes readable. */
    private static boolean hidesNoName(Frame f, Mark.Point p) {
        List<Mark.Point> names =
                List.of(
                        new Mark.Point(f.x(0) + 22, f.top() + 7),
                        new Mark.Point(f.x(0) + 17, f.bottom() - 8),
                        new Mark.Point(f.left() + 16, f.y(0) - 9),
                        new Mark.Point(f.right() - 11, f.y(0) - 9));
        return names.stream()
                .noneMatch(
                        name ->
                                Math.abs(name.x() - p.x()) < NAME_WIDTH
                                        && Math.abs(name.y() - p.y()) < NAME_HEIGHT);
    }

    private static double distance(Mark.Point p, Mark.Point q) {
        return Math.hypot(p.x() - q.x(), p.y() - q.y());
    }

    private static Drawing apart(
            List<Side> sides, List<Double> lightnesses, int against, double width) {
        int columns = width > 700 ? Math.min(6, sides.size()) : 3;
        int rows = (sides.size() + columns - 1) / columns;
        Grid grid = new Grid(width, columns, rows * columns * lightnesses.size(), window(sides));
        Drawing d = drawing(sides, lightnesses, width, grid.height());
        for (int cut = 0; cut < lightnesses.size(); cut++) {
            for (int i = 0; i < sides.size(); i++) {
                String head = sides.get(i).number() + "  " + lightness(lightnesses.get(cut));
                Frame f = grid.plane(d, cut * rows * columns + i, head, false);
                List<List<GamutMesh.Place>> mine = sides.get(i).cuts().get(cut);
                for (List<GamutMesh.Place> outline : mine) {
                    d.area(points(f, List.of(outline)), Ink.BAND);
                }
                outlines(d, f, mine, Ink.MEASURED);
                if (i != against) {
                    outlines(d, f, sides.get(against).cuts().get(cut), Ink.AIM);
                }
            }
        }
        return d;
    }

    private static void outlines(
            Drawing d, Frame f, List<List<GamutMesh.Place>> outlines, Ink ink) {
        for (List<GamutMesh.Place> outline : outlines) {
            List<Mark.Point> points = new ArrayList<>(points(f, List.of(outline)));
            if (!points.isEmpty()) {
                points.add(points.get(0));
            }
            d.path(points, ink);
        }
    }

    private static List<Mark.Point> points(Frame f, List<List<GamutMesh.Place>> outlines) {
        return outlines.stream()
                .flatMap(List::stream)
                .map(p -> new Mark.Point(f.x(p.a()), f.y(p.b())))
                .toList();
    }

    /** The part of the plane that all outlines and the neutral axis lie in: a square. */
    private record Window(double a, double b, double half) {}

    private static Window window(List<Side> sides) {
        List<GamutMesh.Place> all = new ArrayList<>();
        all.add(new GamutMesh.Place(0, 0));
        sides.forEach(s -> s.cuts().forEach(cut -> cut.forEach(all::addAll)));
        DoubleSummaryStatistics a =
                all.stream().mapToDouble(GamutMesh.Place::a).summaryStatistics();
        DoubleSummaryStatistics b =
                all.stream().mapToDouble(GamutMesh.Place::b).summaryStatistics();
        double half = Math.max(a.getMax() - a.getMin(), b.getMax() - b.getMin()) / 2;
        return new Window(
                (a.getMax() + a.getMin()) / 2,
                (b.getMax() + b.getMin()) / 2,
                Math.max(LEAST_REACH, MARGIN * half));
    }

    private static String lightness(double l) {
        return "L* " + Frame.label(l, 1);
    }

    private static Drawing drawing(
            List<Side> sides, List<Double> lightnesses, double width, double height) {
        StringBuilder text = new StringBuilder("Outlines in the a* b* plane. Reached a* and b*: ");
        for (Side side : sides) {
            text.append(side.number()).append(", ").append(side.name()).append(':');
            for (int cut = 0; cut < lightnesses.size(); cut++) {
                text.append(" at ").append(lightness(lightnesses.get(cut)));
                text.append(extent(side.cuts().get(cut)));
            }
            text.append(". ");
        }
        return new Drawing("Gamuts at equal lightness", text.toString().strip(), width, height);
    }

    private static String extent(List<List<GamutMesh.Place>> cut) {
        List<GamutMesh.Place> all = cut.stream().flatMap(List::stream).toList();
        if (all.isEmpty()) {
            return " nothing,";
        }
        return " a* "
                + Frame.label(all.stream().mapToDouble(GamutMesh.Place::a).min().orElse(0), 1)
                + " to "
                + Frame.label(all.stream().mapToDouble(GamutMesh.Place::a).max().orElse(0), 1)
                + " and b* "
                + Frame.label(all.stream().mapToDouble(GamutMesh.Place::b).min().orElse(0), 1)
                + " to "
                + Frame.label(all.stream().mapToDouble(GamutMesh.Place::b).max().orElse(0), 1)
                + ",";
    }

    /** Equal squares in rows. */
    private record Grid(double width, int columns, int planes, Window window) {
        double side() {
            return (width - GAP * (columns - 1)) / columns;
        }

        double height() {
            int rows = (planes + columns - 1) / columns;
            return rows * (side() + HEAD + GAP) - GAP + 4;
        }

        /** The neutral axis, and a tick every 20 units. */
        private static void cross(Drawing d, Frame f) {
            d.line(f.left(), f.y(0), f.right(), f.y(0), Ink.GRID);
            d.line(f.x(0), f.top(), f.x(0), f.bottom(), Ink.GRID);
            for (double v = -TICK_END; v <= TICK_END; v += TICK) {
                if (v > f.xLow() && v < f.xHigh()) {
                    d.line(f.x(v), f.y(0) - 2, f.x(v), f.y(0) + 2, Ink.AXIS);
                }
                if (v > f.yLow() && v < f.yHigh()) {
                    d.line(f.x(0) - 2, f.y(v), f.x(0) + 2, f.y(v), Ink.AXIS);
                }
            }
        }

        /** One plane with its cross and heading. */
        Frame plane(Drawing d, int index, String head, boolean named) {
            int row = index / columns;
            double left = (index - row * columns) * (side() + GAP);
            double top = row * (side() + HEAD + GAP) + HEAD;
            Frame f =
                    new Frame(
                            left,
                            top,
                            side(),
                            side(),
                            window.a() - window.half(),
                            window.a() + window.half(),
                            window.b() - window.half(),
                            window.b() + window.half());
            d.text(left, top - 7, Mark.Anchor.START, Ink.TEXT_STRONG, head);
            cross(d, f);
            if (named) {
                d.text(f.right(), f.y(0) - 5, Mark.Anchor.END, Ink.TEXT_QUIET, "red");
                d.text(f.left(), f.y(0) - 5, Mark.Anchor.START, Ink.TEXT_QUIET, "green");
                d.text(f.x(0) + 5, f.top() + 11, Mark.Anchor.START, Ink.TEXT_QUIET, "yellow");
                d.text(f.x(0) + 5, f.bottom() - 4, Mark.Anchor.START, Ink.TEXT_QUIET, "blue");
            }
            return f;
        }
    }
}
