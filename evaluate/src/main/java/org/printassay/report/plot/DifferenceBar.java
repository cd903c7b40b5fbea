package org.printassay.report.plot;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/**
 * One difference with its 95 % interval on a line through zero, in units of what is just visible.
 * Beyond five of these the line ends with an arrow.
 */
public final class DifferenceBar {
    private static final double WIDTH = 220;
    private static final double HEIGHT = 22;
    private static final double REACH = 5;

    private DifferenceBar() {}

    /**
     * The drawing.
     *
     * @param times difference, in what is just visible
     * @param half 95 % half-width of it, likewise; null when unknown
     * @param description in words
     */
    public static Drawing draw(double times, @Nullable Double half, String description) {
        Drawing d = new Drawing("Difference", description, WIDTH, HEIGHT);
        double middle = HEIGHT / 2;
        d.box(x(-1), 3, x(1) - x(-1), HEIGHT - 6, Ink.BAND);
        d.line(x(0), 1, x(0), HEIGHT - 1, Ink.AXIS);
        if (half != null) {
            d.line(x(times - half), middle, x(times + half), middle, Ink.WHISKER);
            end(d, times - half, middle);
            end(d, times + half, middle);
        }
        if (Math.abs(times) <= REACH) {
            d.disc(x(times), middle, 4, Ink.MEASURED_FILL);
        } else {
            arrow(d, times, middle);
        }
        return d;
    }

    private static void end(Drawing d, double at, double middle) {
        if (Math.abs(at) <= REACH) {
            d.line(x(at), middle - 4, x(at), middle + 4, Ink.WHISKER);
        }
    }

    private static void arrow(Drawing d, double times, double middle) {
        double tip = x(times);
        double back = tip - Math.signum(times) * 9;
        d.line(x(Math.signum(times)), middle, back, middle, Ink.GRID);
        d.area(
                List.of(
                        new Mark.Point(tip, middle),
                        new Mark.Point(back, middle - 5),
                        new Mark.Point(back, middle + 5)),
                Ink.MEASURED_FILL);
    }

    private static double x(double times) {
        double inside = Math.max(-REACH, Math.min(REACH, times));
        return WIDTH / 2 + inside / REACH * (WIDTH / 2 - 6);
    }
}
