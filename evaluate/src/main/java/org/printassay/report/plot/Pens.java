package org.printassay.report.plot;

import java.util.List;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** Lines and numbers of things that are drawn over each other. */
final class Pens {
    /** More lines than this over each other cannot be told apart. */
    static final int MOST = 4;

    private static final List<Ink> LINES =
            List.of(Ink.SERIES_1, Ink.SERIES_2, Ink.SERIES_3, Ink.SERIES_4);
    private static final double RADIUS = 9;

    /** Mean width of a character of a plot's text, units. */
    private static final double CHARACTER = 7;

    private Pens() {}

    static Ink line(int index) {
        return LINES.get(index);
    }

    /** A number in a ring, standing on its line. */
    static void number(Drawing d, Mark.Point at, int number) {
        d.disc(at.x(), at.y(), RADIUS, Ink.SIGN_OUTLINE);
        d.text(at.x(), at.y() + 4.5, Mark.Anchor.MIDDLE, Ink.TEXT_STRONG, String.valueOf(number));
    }

    /** As much of a text as fits. */
    static String fitted(String text, double width) {
        int fit = Math.max(4, (int) (width / CHARACTER));
        int length = text.codePointCount(0, text.length());
        return length <= fit
                ? text
                : text.substring(0, text.offsetByCodePoints(0, fit - 1)).strip() + "\u2026";
    }
}
