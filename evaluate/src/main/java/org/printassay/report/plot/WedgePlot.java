package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.printassay.metric.LevelStep;
import org.printassay.metric.Verdict;
import org.printassay.metric.Wedge;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.report.draw.ScreenColour;

/**
 * A wedge level by level: its measured colours, a sign for the verdict, and how far each level is
 * from black or paper. The scale is a square root, because the answer lies in the first unit.
 */
public final class WedgePlot {
    private static final double LEFT = 34;
    private static final double RIGHT = 6;
    private static final double SWATCH = 40;
    private static final double SURROUND = 10;
    private static final double BARS = 150;

    /** Between the swatches and the bars, where the signs stand. */
    private static final double ABOVE_BARS = 54;

    private static final double TICK_GAP = 15;
    private static final double NARROWEST = 19;
    private static final double GAP = 30;

    /** Below the last row of levels. */
    private static final double BELOW = 6;

    /** Cells narrower than this have no room for three digits. */
    private static final double LABEL_ROOM = 27;

    private static final double[] TICKS = {0, 0.5, 1, 2, 5, 10, 20, 40};

    private WedgePlot() {}

    /**
     * The plot.
     *
     * @param from what differences are from: black or paper
     * @param tall how tall the bars are, against what is usual
     */
    public static Drawing draw(Wedge wedge, String name, String from, double width, double tall) {
        List<LevelStep> steps = wedge.steps();
        int most = Math.max(1, (int) ((width - LEFT - RIGHT) / NARROWEST));
        int rows = Math.max(1, (steps.size() + most - 1) / most);
        int perRow = (steps.size() + rows - 1) / rows;
        double bars = BARS * tall;
        double rowHeight = SWATCH + 2 * SURROUND + ABOVE_BARS + bars + 20;
        double height = rows * (rowHeight + GAP) - GAP + BELOW;
        Drawing d = new Drawing(name, description(wedge, from), width, height);
        double high = wedge.threshold() * 2;
        double low = 0;
        for (LevelStep s : steps) {
            high = Math.max(high, Math.max(s.high(), s.aim()));
            low = Math.min(low, s.low());
        }
        for (int row = 0; row < rows; row++) {
            int end = Math.min(steps.size(), (row + 1) * perRow);
            List<LevelStep> part = steps.subList(row * perRow, end);
            double cell = Math.min((width - LEFT - RIGHT) / perRow, 44);
            Frame frame =
                    new Frame(
                            LEFT,
                            row * (rowHeight + GAP) + SWATCH + 2 * SURROUND + ABOVE_BARS,
                            part.size() * cell,
                            bars,
                            0,
                            part.size(),
                            root(low),
                            root(high) * 1.04);
            row(d, wedge, part, from, frame);
        }
        return d;
    }

    private static void row(
            Drawing d, Wedge wedge, List<LevelStep> steps, String from, Frame frame) {
        double barsTop = frame.top();
        double top = barsTop - ABOVE_BARS - SWATCH - 2 * SURROUND;
        double right = frame.right();
        double cell = frame.width() / steps.size();
        d.box(
                LEFT - SURROUND,
                top,
                right - LEFT + 2 * SURROUND - (SURROUND - RIGHT),
                SWATCH + 2 * SURROUND,
                Ink.SURROUND);
        double signY = top + SWATCH + 2 * SURROUND + 14;
        double last = Double.POSITIVE_INFINITY;
        for (double tick : TICKS) {
            double y = frame.y(root(tick));
            if (y < barsTop) {
                break;
            }
            if (last - y < TICK_GAP) {
                continue;
            }
            last = y;
            d.line(LEFT, y, right, y, tick == 0 ? Ink.AXIS : Ink.GRID);
            String label = Frame.label(tick, tickStep(tick));
            d.text(LEFT - 7, y + 4, Mark.Anchor.END, Ink.TEXT_QUIET, label);
        }
        d.text(0, barsTop - 9, Mark.Anchor.START, Ink.TEXT_QUIET, "dL* from " + from);
        for (int i = 0; i < steps.size(); i++) {
            LevelStep s = steps.get(i);
            double x = LEFT + i * cell;
            d.swatch(
                    x,
                    top + SURROUND,
                    cell + (i + 1 < steps.size() ? 0.3 : 0),
                    SWATCH,
                    ScreenColour.of(s.colour()));
            sign(d, s.verdict(), x + cell / 2, signY);
            bar(d, frame, s, x, cell);
            d.text(
                    x + cell / 2,
                    frame.bottom() + 16,
                    Mark.Anchor.MIDDLE,
                    isBest(wedge, s) ? Ink.TEXT_STRONG : Ink.TEXT_QUIET,
                    labelled(wedge, steps, i, cell) ? "" + s.level() : "");
        }
        List<Mark.Point> aims = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            aims.add(frame.point(i + 0.5, root(steps.get(i).aim())));
        }
        d.path(aims, Ink.AIM);
        double y = frame.y(root(wedge.threshold()));
        d.line(LEFT, y, right, y, Ink.THRESHOLD);
    }

    /** Where three digits have no room, every second level, and the one that matters. */
    private static boolean labelled(Wedge wedge, List<LevelStep> steps, int i, double cell) {
        if (cell >= LABEL_ROOM || steps.get(i).level() < 100 || isBest(wedge, steps.get(i))) {
            return true;
        }
        boolean besideBest =
                (i > 0 && isBest(wedge, steps.get(i - 1)))
                        || (i + 1 < steps.size() && isBest(wedge, steps.get(i + 1)));
        return i % 2 == 0 && !besideBest;
    }

    private static void bar(Drawing d, Frame frame, LevelStep s, double x, double cell) {
        double zero = frame.y(0);
        double end = frame.y(root(s.difference()));
        double inset = cell * 0.22;
        Ink ink =
                switch (s.verdict()) {
                    case SEPARATED -> Ink.BAR;
                    case UNCERTAIN -> Ink.MEASURED_OUTLINE;
                    case MERGED -> Ink.FAINT_OUTLINE;
                };
        d.box(x + inset, Math.min(zero, end), cell - 2 * inset, Math.abs(end - zero), ink);
        double middle = x + cell / 2;
        double top = frame.y(root(s.high()));
        double bottom = frame.y(root(s.low()));
        d.line(middle, top, middle, bottom, Ink.WHISKER);
        d.line(middle - 3, top, middle + 3, top, Ink.WHISKER);
        d.line(middle - 3, bottom, middle + 3, bottom, Ink.WHISKER);
    }

    /** Draws the sign of a verdict: full disc, ring, or cross. */
    static void sign(Drawing d, Verdict verdict, double x, double y) {
        switch (verdict) {
            case SEPARATED -> d.disc(x, y, 4.2, Ink.SIGN);
            case UNCERTAIN -> d.disc(x, y, 3.8, Ink.SIGN_OUTLINE);
            case MERGED -> {
                d.line(x - 3.6, y - 3.6, x + 3.6, y + 3.6, Ink.WHISKER);
                d.line(x - 3.6, y + 3.6, x + 3.6, y - 3.6, Ink.WHISKER);
            }
        }
    }

    private static boolean isBest(Wedge wedge, LevelStep step) {
        return wedge.best() != null && wedge.best() == step.level();
    }

    private static double root(double value) {
        return Math.copySign(Math.sqrt(Math.abs(value)), value);
    }

    private static double tickStep(double tick) {
        return tick == Math.rint(tick) ? 1 : 0.1;
    }

    private static String description(Wedge wedge, String from) {
        List<String> parts = new ArrayList<>();
        for (Verdict verdict : Verdict.values()) {
            String levels =
                    wedge.steps().stream()
                            .filter(s -> s.verdict() == verdict)
                            .map(s -> String.valueOf(s.level()))
                            .collect(Collectors.joining(", "));
            parts.add(verdict.key() + ": " + (levels.isEmpty() ? "none" : levels));
        }
        return "Each level's difference from "
                + from
                + " with its 95 percent interval against the threshold of "
                + wedge.threshold()
                + " dL*. Levels "
                + String.join("; ", parts)
                + ".";
    }
}
