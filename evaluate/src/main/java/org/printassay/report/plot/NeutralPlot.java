package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;
import org.printassay.metric.Neutrality;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** Greys in the a*b* plane, and their lean level by level. */
public final class NeutralPlot {
    private static final double LEFT = 40;
    private static final double RIGHT = 12;
    private static final double TOP = 30;
    private static final double SHAPE = 0.8;
    private static final double MIN_SPAN = 6;

    private NeutralPlot() {}

    private record Span(double low, double high) {
        Span with(double value) {
            return new Span(Math.min(low, value), Math.max(high, value));
        }

        double size() {
            return high - low;
        }

        double middle() {
            return (low + high) / 2;
        }
    }

    /**
     * Greys seen from above: a* to the right, b* up, with the way from neutral to the paper.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing plane(Neutrality n, @Nullable Lab paper, double width, double tall) {
        double plot = width - LEFT - RIGHT;
        double shape = tall * SHAPE;
        double height = plot * shape;
        Span spanA = new Span(0, 0);
        Span spanB = new Span(0, 0);
        for (Neutrality.Point p : n.points()) {
            spanA = spanA.with(p.a());
            spanB = spanB.with(p.b());
        }
        if (paper != null) {
            spanA = spanA.with(paper.a());
            spanB = spanB.with(paper.b());
        }
        // One unit is as long to the right as up, or hues would look wrong.
        double most = Math.max(spanB.size(), spanA.size() * shape);
        double high = Math.max(MIN_SPAN, most * 1.25);
        double wide = high / shape;
        Drawing d =
                new Drawing(
                        "Greys in the a* b* plane",
                        description(n, paper),
                        width,
                        TOP + height + 44);
        Frame f =
                new Frame(
                        LEFT,
                        TOP,
                        plot,
                        height,
                        spanA.middle() - wide / 2,
                        spanA.middle() + wide / 2,
                        spanB.middle() - high / 2,
                        spanB.middle() + high / 2);
        double step = Frame.step(high, 6);
        f.yAxis(d, step, "b*");
        f.xAxis(d, step, "a*");
        d.line(f.x(0), f.top(), f.x(0), f.bottom(), Ink.AXIS);
        d.text(f.x(0) + 6, f.top() + 12, Mark.Anchor.START, Ink.TEXT_QUIET, "yellow");
        d.text(f.x(0) + 6, f.bottom() - 6, Mark.Anchor.START, Ink.TEXT_QUIET, "blue");
        d.text(f.right() - 2, f.y(0) - 6, Mark.Anchor.END, Ink.TEXT_QUIET, "red");
        d.text(f.left() + 4, f.y(0) - 6, Mark.Anchor.START, Ink.TEXT_QUIET, "green");
        if (paper != null) {
            d.line(f.x(0), f.y(0), f.x(paper.a()), f.y(paper.b()), Ink.AIM);
        }
        for (Neutrality.Point p : n.points()) {
            Mark.Point at = f.point(p.a(), p.b());
            switch (ToneZone.of(p.l())) {
                case SHADOWS -> d.disc(at.x(), at.y(), 3.6, Ink.SIGN);
                case MIDTONES -> d.disc(at.x(), at.y(), 3.4, Ink.SIGN_OUTLINE);
                case HIGHLIGHTS -> d.box(at.x() - 3.2, at.y() - 3.2, 6.4, 6.4, Ink.SIGN_OUTLINE);
            }
        }
        if (paper != null) {
            double x = f.x(paper.a());
            double y = f.y(paper.b());
            d.area(
                    List.of(
                            new Mark.Point(x, y - 7),
                            new Mark.Point(x + 7, y),
                            new Mark.Point(x, y + 7),
                            new Mark.Point(x - 7, y)),
                    Ink.MEASURED_FILL);
            boolean leftHalf = paper.a() < 0;
            d.text(
                    x + (leftHalf ? -12 : 12),
                    y + 4,
                    leftHalf ? Mark.Anchor.END : Mark.Anchor.START,
                    Ink.TEXT_STRONG,
                    "paper");
        }
        return d;
    }

    /**
     * Lean of each grey from the reference grey of its lightness.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing lean(Neutrality n, double width, double tall) {
        double plot = width - LEFT - RIGHT;
        double height = tall * plot * SHAPE;
        double limit = 2;
        List<Mark.Point> a = new ArrayList<>();
        List<Mark.Point> b = new ArrayList<>();
        for (Neutrality.Point p : n.points()) {
            limit = Math.max(limit, Math.max(Math.abs(p.deltaA()), Math.abs(p.deltaB())) * 1.1);
        }
        limit = Math.ceil(limit);
        Drawing d =
                new Drawing(
                        "Lean of the greys, level by level",
                        "Difference in a* and b* from the reference grey. " + description(n, null),
                        width,
                        TOP + height + 44);
        Frame f = new Frame(LEFT, TOP, plot, height, 0, 255, -limit, limit);
        f.yAxis(d, Frame.step(2 * limit, 6), "difference from reference grey");
        f.xAxis(d, 64, "level");
        for (Neutrality.Point p : n.points()) {
            a.add(f.point(p.level(), p.deltaA()));
            b.add(f.point(p.level(), p.deltaB()));
        }
        d.path(a, Ink.SERIES_1);
        d.path(b, Ink.SERIES_2);
        a.forEach(p -> d.disc(p.x(), p.y(), 2.6, Ink.SIGN));
        b.forEach(p -> d.box(p.x() - 2.6, p.y() - 2.6, 5.2, 5.2, Ink.SIGN_OUTLINE));
        double y = f.bottom() - 12;
        d.line(f.left() + 8, y - 4, f.left() + 34, y - 4, Ink.SERIES_1);
        d.disc(f.left() + 21, y - 4, 2.6, Ink.SIGN);
        d.text(f.left() + 42, y, Mark.Anchor.START, Ink.TEXT, "da*");
        d.line(f.left() + 84, y - 4, f.left() + 110, y - 4, Ink.SERIES_2);
        d.box(f.left() + 94.4, y - 6.6, 5.2, 5.2, Ink.SIGN_OUTLINE);
        d.text(f.left() + 118, y, Mark.Anchor.START, Ink.TEXT, "db*");
        return d;
    }

    private static String description(Neutrality n, @Nullable Lab paper) {
        return "Mean chroma difference "
                + Frame.label(n.meanDeltaCh(), 0.1)
                + ", largest "
                + Frame.label(n.maxDeltaCh(), 0.1)
                + " at level "
                + n.maxAtLevel()
                + "; "
                + n.cast().words()
                + "."
                + (paper == null
                        ? ""
                        : " Paper at a* "
                                + Frame.label(paper.a(), 0.1)
                                + ", b* "
                                + Frame.label(paper.b(), 0.1)
                                + ".");
    }
}
