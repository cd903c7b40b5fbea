package org.printassay.report.plot;

import java.util.List;
import java.util.Locale;
import org.printassay.check.Change;
import org.printassay.check.Outcome;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/**
 * Every change with its interval against its tolerance, one row each; all tolerances are drawn
 * equally wide. Outcomes are told apart by sign, not by colour: ring within, disc drifted, square
 * outline cannot tell, filled square failed.
 */
public final class ChangesPlot {
    private static final double ROW = 26;
    private static final double TOP = 34;
    private static final double BOTTOM = 26;
    private static final double REACH = 2.2;
    private static final double TURN = 620;

    /** Height of a name above its row, and what is left bare below the row. */
    private static final double LABEL = 21;

    private static final double GAP = 4;
    private static final double RIGHT = 14;

    private ChangesPlot() {}

    /**
     * The plot; on narrow pages names stand above their rows.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing draw(List<Change> changes, double width, double tall) {
        boolean wide = width > TURN;
        double row = wide ? ROW * tall : LABEL + ROW;
        double left = wide ? 300 : 10;
        Drawing d =
                new Drawing(
                        "Changes against their tolerances",
                        description(changes),
                        width,
                        TOP + row * changes.size() + BOTTOM);
        Frame f =
                new Frame(
                        left, TOP, width - left - RIGHT, row * changes.size(), -REACH, REACH, 0, 1);
        if (wide) {
            allowed(d, f, TOP, f.bottom());
        }
        for (int side : new int[] {-1, 1}) {
            d.text(
                    f.x(side),
                    TOP - 10,
                    Mark.Anchor.MIDDLE,
                    Ink.TEXT_QUIET,
                    side < 0 ? "\u2212 allowed" : "+ allowed");
        }
        d.text(f.x(0), TOP - 10, Mark.Anchor.MIDDLE, Ink.TEXT_QUIET, "as before");
        for (int i = 0; i < changes.size(); i++) {
            double top = TOP + i * row;
            Change change = changes.get(i);
            double y = top + (wide ? row / 2 : LABEL + (ROW - GAP) / 2);
            if (i > 0) {
                d.line(wide ? 0 : left, top, width - RIGHT, top, Ink.GRID);
            }
            if (!wide) {
                allowed(d, f, top + LABEL, top + row - GAP);
            }
            d.text(
                    wide ? 0 : left,
                    wide ? y + 4 : top + 15,
                    Mark.Anchor.START,
                    change.outcome() == Outcome.FAILED ? Ink.TEXT_STRONG : Ink.TEXT,
                    change.quantity().label());
            row(d, f, change, y);
        }
        return d;
    }

    /** What is allowed, from one height to another: no name may stand on it. */
    private static void allowed(Drawing d, Frame f, double top, double bottom) {
        d.box(f.x(-1), top, f.x(1) - f.x(-1), bottom - top, Ink.BAND);
        d.line(f.x(0), top, f.x(0), bottom, Ink.AXIS);
        d.line(f.x(-1), top, f.x(-1), bottom, Ink.THRESHOLD);
        d.line(f.x(1), top, f.x(1), bottom, Ink.THRESHOLD);
    }

    private static void row(Drawing d, Frame f, Change change, double y) {
        double at = inside(change.share());
        Double half = change.halfWidth();
        if (half != null) {
            double low = inside((change.change() - half) / change.limit());
            double high = inside((change.change() + half) / change.limit());
            d.line(f.x(low), y, f.x(high), y, Ink.WHISKER);
            end(d, f, y, low);
            end(d, f, y, high);
        }
        sign(d, change.outcome(), f.x(at), y);
    }

    /** A cross stroke, or an arrow where the interval goes on beyond the plot. */
    private static void end(Drawing d, Frame f, double y, double at) {
        double x = f.x(at);
        if (Math.abs(at) < REACH) {
            d.line(x, y - 4, x, y + 4, Ink.WHISKER);
        } else {
            double back = x - Math.signum(at) * 6;
            d.path(
                    List.of(
                            new Mark.Point(back, y - 4),
                            new Mark.Point(x, y),
                            new Mark.Point(back, y + 4)),
                    Ink.WHISKER);
        }
    }

    /** The sign of an outcome. */
    static void sign(Drawing d, Outcome outcome, double x, double y) {
        switch (outcome) {
            case WITHIN -> d.disc(x, y, 4, Ink.SIGN_OUTLINE);
            case DRIFTED -> d.disc(x, y, 4.4, Ink.SIGN);
            case CANNOT_TELL -> d.box(x - 4, y - 4, 8, 8, Ink.SIGN_OUTLINE);
            case FAILED -> d.box(x - 4.6, y - 4.6, 9.2, 9.2, Ink.SIGN);
        }
    }

    /** The sign of an outcome alone, for a key. */
    public static Drawing key(Outcome outcome) {
        Drawing d = new Drawing(outcome.words(), "sign of " + outcome.words(), 14, 14);
        sign(d, outcome, 7, 7);
        return d;
    }

    private static double inside(double share) {
        return Math.max(-REACH, Math.min(REACH, share));
    }

    private static String description(List<Change> changes) {
        StringBuilder out = new StringBuilder("In shares of what is allowed: ");
        for (Change change : changes) {
            out.append(
                    String.format(
                            Locale.ROOT,
                            "%s %+.2f %s; ",
                            change.quantity().label(),
                            change.share(),
                            change.outcome().words()));
        }
        return out.substring(0, Math.max(0, out.length() - 2)) + ".";
    }
}
