package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Point;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/**
 * One quantity over time: prints as dots in the order of time, the usual value and the limits as
 * lines, the running mean as a curve. What lies beyond is told by its shape: a square around a
 * jump, a ring around a print in a drift.
 */
public final class ControlPlot {
    /** More dots than this cannot be told apart. */
    public static final int MOST = 200;

    private static final double LEFT = 52;
    private static final double RIGHT = 14;
    private static final double TOP = 28;
    private static final double HEIGHT = 190;
    private static final double MARGIN = 0.08;

    private final Trend trend;
    private final int from;
    private final Frame frame;
    private final Drawing drawing;

    private ControlPlot(Trend trend, int newest, String words, double width) {
        this.trend = trend;
        this.from = Math.max(0, trend.points().size() - Math.min(newest, MOST));
        int count = trend.points().size() - from;
        double[] range = range();
        this.frame =
                new Frame(
                        LEFT,
                        TOP,
                        width - LEFT - RIGHT,
                        HEIGHT,
                        from - 0.7,
                        from + count - 0.3,
                        range[0],
                        range[1]);
        this.drawing = new Drawing(trend.quantity().label(), words, width, TOP + HEIGHT + 26);
    }

    /**
     * The plot.
     *
     * @param newest at most so many prints, and at most {@link #MOST}
     * @param words what can be seen, for people who cannot see it
     * @param days first and last day shown on the axis, by point
     */
    public static Drawing draw(Trend trend, int newest, String words, double width, DayWords days) {
        ControlPlot plot = new ControlPlot(trend, newest, words, width);
        plot.lines();
        plot.runningMean();
        plot.prints();
        plot.axes(days);
        return plot.drawing;
    }

    /** Days as people read them. */
    @FunctionalInterface
    public interface DayWords {
        /** The day of a point. */
        String of(Point point);
    }

    private double[] range() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Point point : trend.points().subList(from, trend.points().size())) {
            low = Math.min(low, point.value());
            high = Math.max(high, point.value());
        }
        ControlLimits limits = trend.limits();
        if (limits != null) {
            low = Math.min(low, limits.lower());
            high = Math.max(high, limits.upper());
        }
        double margin = Math.max(MARGIN * (high - low), trend.quantity().step());
        return new double[] {low - margin, high + margin};
    }

    private void lines() {
        ControlLimits limits = trend.limits();
        double span = frame.yHigh() - frame.yLow();
        frame.yAxis(drawing, Frame.step(span, 5), trend.quantity().unit());
        if (limits == null) {
            return;
        }
        across(limits.lower(), Ink.THRESHOLD);
        across(limits.upper(), Ink.THRESHOLD);
        across(limits.centre(), Ink.AIM);
    }

    private void across(double value, Ink ink) {
        double y = frame.y(value);
        drawing.line(frame.left(), y, frame.right(), y, ink);
    }

    private void runningMean() {
        List<Mark.Point> curve = new ArrayList<>();
        for (int i = Math.max(from, trend.judgedFrom()); i < trend.points().size(); i++) {
            if (i - trend.judgedFrom() < trend.running().size()) {
                curve.add(frame.point(i, trend.running().get(i - trend.judgedFrom())));
            }
        }
        if (curve.size() > 1) {
            drawing.path(curve, Ink.MEASURED);
        }
    }

    private void prints() {
        for (int i = from; i < trend.points().size(); i++) {
            Mark.Point at = frame.point(i, trend.points().get(i).value());
            if (within(Shift.Kind.DRIFT, i)) {
                drawing.disc(at.x(), at.y(), 5.2, Ink.SIGN_OUTLINE);
            }
            if (within(Shift.Kind.JUMP, i)) {
                drawing.box(at.x() - 5.5, at.y() - 5.5, 11, 11, Ink.SIGN_OUTLINE);
            }
            drawing.disc(at.x(), at.y(), 2.6, Ink.SIGN);
        }
    }

    private boolean within(Shift.Kind kind, int index) {
        return trend.changes().stream()
                .anyMatch(
                        change ->
                                change.kind() == kind
                                        && change.first() <= index
                                        && index <= change.last());
    }

    private void axes(DayWords days) {
        double bottom = frame.bottom();
        drawing.line(frame.left(), bottom, frame.right(), bottom, Ink.AXIS);
        Point first = trend.points().get(from);
        drawing.text(frame.left(), bottom + 18, Mark.Anchor.START, Ink.TEXT_QUIET, days.of(first));
        drawing.text(
                frame.right(),
                bottom + 18,
                Mark.Anchor.END,
                Ink.TEXT_QUIET,
                days.of(trend.newest()));
    }
}
