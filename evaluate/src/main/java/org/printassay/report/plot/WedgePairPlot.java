package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Wedge;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** One wedge of two prints over each other: how far each level is from black or from paper. */
public final class WedgePairPlot {
    private static final double LEFT = 40;
    private static final double RIGHT = 12;
    private static final double TOP = 28;
    private static final double SHAPE = 0.62;
    private static final int SIGN_EVERY = 3;

    private WedgePairPlot() {}

    /**
     * The plot.
     *
     * @param before a solid line with discs
     * @param after a broken line with rings
     * @param from what levels are from: black or paper
     * @param tall how tall, against what is usual
     */
    public static Drawing draw(Wedge before, Wedge after, String from, double width, double tall) {
        double plot = width - LEFT - RIGHT;
        double height = tall * plot * SHAPE;
        double high = Math.max(top(before), top(after));
        Drawing d =
                new Drawing(
                        "Levels from " + from,
                        description(before, after, from),
                        width,
                        TOP + height + 44);
        double low = Math.min(lowest(before), lowest(after));
        double end = Math.max(highest(before), highest(after));
        Frame f = new Frame(LEFT, TOP, plot, height, low, end, 0, high * 1.04);
        f.yAxis(d, Frame.step(high, 5), "dL* from " + from);
        f.xAxis(d, 8, "level");
        d.line(f.x(low), f.y(before.threshold()), f.x(end), f.y(before.threshold()), Ink.THRESHOLD);
        curve(d, f, before, Ink.SERIES_1, Ink.SIGN, 0);
        curve(d, f, after, Ink.SERIES_2, Ink.SIGN_OUTLINE, 1);
        return d;
    }

    private static void curve(Drawing d, Frame f, Wedge wedge, Ink pen, Ink sign, int first) {
        List<Mark.Point> points = new ArrayList<>();
        for (LevelStep step : wedge.steps()) {
            points.add(f.point(step.level(), Math.max(0, step.difference())));
        }
        d.path(points, pen);
        for (int i = first; i < points.size(); i += SIGN_EVERY) {
            d.disc(points.get(i).x(), points.get(i).y(), 3.4, sign);
        }
    }

    private static double top(Wedge wedge) {
        return wedge.steps().stream()
                .mapToDouble(LevelStep::difference)
                .max()
                .orElse(wedge.threshold());
    }

    private static double lowest(Wedge wedge) {
        return wedge.steps().get(0).level();
    }

    private static double highest(Wedge wedge) {
        return wedge.steps().get(wedge.steps().size() - 1).level();
    }

    private static String description(Wedge before, Wedge after, String from) {
        return String.format(
                Locale.ROOT,
                "First told from %s: level %s before, level %s now.",
                from,
                before.best() == null ? "not judged" : before.best().toString(),
                after.best() == null ? "not judged" : after.best().toString());
    }
}
