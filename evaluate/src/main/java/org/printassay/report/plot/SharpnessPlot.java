package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.PrintSurface;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** Contrast that edges keep, by frequency, in both directions of the page. */
public final class SharpnessPlot {
    private static final double LEFT = 40;
    private static final double RIGHT = 12;
    private static final double TOP = 28;
    private static final double HALF = 0.5;

    private SharpnessPlot() {}

    /**
     * The plot; curves that are missing are left out.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing draw(PrintSurface.Sharpness s, double width, double tall) {
        double plot = width - LEFT - RIGHT;
        double height = tall * plot * 0.6;
        int steps = Math.max(s.across().size(), s.down().size());
        double highest = Math.max(1, (steps - 1) * s.stepPerMm());
        Drawing d =
                new Drawing(
                        "Sharpness",
                        "Contrast that edges keep against cycles per millimetre, from left to right"
                                + " (whole line) and from top to bottom (second line).",
                        width,
                        TOP + height + 44);
        Frame f = new Frame(LEFT, TOP, plot, height, 0, highest, 0, 1.1);
        f.yAxis(d, 0.2, "contrast kept");
        f.xAxis(d, Frame.step(highest, 8), "cycles per millimetre");
        d.line(f.left(), f.y(HALF), f.right(), f.y(HALF), Ink.THRESHOLD);
        curve(d, f, s.across(), s.stepPerMm(), Ink.SERIES_1);
        curve(d, f, s.down(), s.stepPerMm(), Ink.SERIES_2);
        return d;
    }

    private static void curve(Drawing d, Frame f, List<Double> values, double step, Ink ink) {
        List<Mark.Point> points = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            points.add(f.point(i * step, values.get(i)));
        }
        if (!points.isEmpty()) {
            d.path(points, ink);
        }
    }
}
