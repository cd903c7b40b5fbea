package org.printassay.report.plot;

import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Mark;

/** What the lines of {@link SideCurves} and {@link SideGamuts} mean. */
public final class SideKeys {
    private static final double WIDTH = 64;
    private static final double HEIGHT = 20;

    private SideKeys() {}

    /** Whether so many sides are drawn over each other. */
    public static boolean over(int sides) {
        return sides <= Pens.MOST;
    }

    /** The line and number of one side, from 0. */
    public static Drawing key(int side) {
        Drawing d = new Drawing("Line " + (side + 1), "line and number", WIDTH, HEIGHT);
        double middle = HEIGHT / 2;
        d.line(0, middle, WIDTH, middle, Pens.line(side));
        Pens.number(d, new Mark.Point(WIDTH / 2, middle), side + 1);
        return d;
    }
}
