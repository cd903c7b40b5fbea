package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.printassay.metric.Tone;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** Tone curves of several prints over each other, told apart by dash and sign, not by colour. */
public final class CurvesPlot {
    /** More curves than this cannot be told apart. */
    public static final int MOST = 4;

    private static final List<Ink> PENS =
            List.of(Ink.SERIES_1, Ink.SERIES_2, Ink.SERIES_3, Ink.SERIES_4);
    private static final double LEFT = 40;
    private static final double RIGHT = 12;
    private static final double TOP = 28;
    private static final int SIGN_EVERY = 4;

    private CurvesPlot() {}

    /** One print. */
    public record Curve(String name, Tone tone) {}

    /** Printed lightness against the lightness of the file. */
    public static Drawing lightness(List<Curve> curves, double width) {
        double plot = width - LEFT - RIGHT;
        double height = plot * 0.8;
        Drawing d =
                new Drawing(
                        "Tone curves",
                        "Printed lightness against the lightness of the file for "
                                + names(curves)
                                + ".",
                        width,
                        TOP + height + 44);
        Frame f = new Frame(LEFT, TOP, plot, height, 0, 100, 0, 100);
        f.yAxis(d, 20, "printed L*");
        f.xAxis(d, 20, "L* of the file");
        for (int i = 0; i < count(curves); i++) {
            List<Mark.Point> points = new ArrayList<>();
            for (Tone.Point p : curves.get(i).tone().points()) {
                points.add(f.point(p.fileL(), p.measuredL()));
            }
            curve(d, i, points);
        }
        return d;
    }

    /** Measured minus aim, each print against its own aim. */
    public static Drawing difference(List<Curve> curves, double width) {
        double plot = width - LEFT - RIGHT;
        double height = plot * 0.8;
        double limit = 1;
        for (Curve curve : curves) {
            limit = Math.max(limit, TonePlot.limit(curve.tone()));
        }
        Drawing d =
                new Drawing(
                        "Differences from the aim",
                        "Measured minus aim, each print against its own aim, for "
                                + names(curves)
                                + ".",
                        width,
                        TOP + height + 44);
        Frame f = new Frame(LEFT, TOP, plot, height, 0, 100, -limit, limit);
        f.yAxis(d, Frame.step(2 * limit, 6), "measured \u2212 aim, dL*");
        f.xAxis(d, 20, "L* of the file");
        for (int i = 0; i < count(curves); i++) {
            List<Mark.Point> points = new ArrayList<>();
            for (Tone.Point p : curves.get(i).tone().points()) {
                points.add(f.point(p.fileL(), p.measuredL() - p.aimL()));
            }
            curve(d, i, points);
        }
        return d;
    }

    /** The line and sign of one curve, for a key. */
    public static Drawing key(int index, String name) {
        Drawing d = new Drawing(name, "line of " + name, 44, 14);
        d.line(1, 7, 43, 7, PENS.get(index));
        sign(d, index, 22, 7);
        return d;
    }

    private static void curve(Drawing d, int index, List<Mark.Point> points) {
        d.path(points, PENS.get(index));
        for (int i = index; i < points.size(); i += SIGN_EVERY) {
            sign(d, index, points.get(i).x(), points.get(i).y());
        }
    }

    private static void sign(Drawing d, int index, double x, double y) {
        switch (index) {
            case 0 -> d.disc(x, y, 3.6, Ink.SIGN);
            case 1 -> d.disc(x, y, 3.8, Ink.SIGN_OUTLINE);
            case 2 -> d.box(x - 3.4, y - 3.4, 6.8, 6.8, Ink.SIGN_OUTLINE);
            default ->
                    d.area(
                            List.of(
                                    new Mark.Point(x, y - 5),
                                    new Mark.Point(x + 5, y),
                                    new Mark.Point(x, y + 5),
                                    new Mark.Point(x - 5, y)),
                            Ink.SIGN_OUTLINE);
        }
    }

    private static int count(List<Curve> curves) {
        return Math.min(MOST, curves.size());
    }

    private static String names(List<Curve> curves) {
        return String.join(", ", curves.stream().map(Curve::name).toList());
    }
}
