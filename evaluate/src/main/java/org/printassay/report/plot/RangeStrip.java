package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.report.draw.ScreenColour;

/** All levels from black to paper in their measured colours, with the range that holds apart. */
public final class RangeStrip {
    private static final int LEVELS = 256;
    private static final double LINE_Y = 30;
    private static final double STRIP_Y = 46;
    private static final double STRIP_HEIGHT = 44;
    private static final double EDGE = 10;

    private RangeStrip() {}

    /** The strip; null when no neutrals were measured. */
    public static @Nullable Drawing draw(Evaluation e, double width) {
        NavigableMap<Integer, Lab> greys = greys(e);
        if (greys.size() < 2) {
            return null;
        }
        String lowText = lowText(e.shadows());
        String highText = highText(e.highlights());
        Drawing d =
                new Drawing(
                        "What this print can tell apart",
                        "Levels 0 to 255 in their measured colours. "
                                + (lowText.isEmpty() ? "" : lowText + ". ")
                                + (highText.isEmpty() ? "" : highText + "."),
                        width,
                        STRIP_Y + STRIP_HEIGHT + 2 * EDGE + 22);
        d.box(0, STRIP_Y, width, STRIP_HEIGHT + 2 * EDGE, Ink.SURROUND);
        double unit = (width - 2 * EDGE) / LEVELS;
        int stride = width > 600 ? 1 : 2;
        for (int level = 0; level < LEVELS; level += stride) {
            double x = EDGE + level * unit;
            // A little overlap: neighbours must not show a seam.
            double right = Math.min(x + stride * unit + 0.4, width - EDGE);
            String colour = ScreenColour.of(at(greys, level));
            d.swatch(x, STRIP_Y + EDGE, right - x, STRIP_HEIGHT, colour);
        }
        double axisY = STRIP_Y + STRIP_HEIGHT + 2 * EDGE + 16;
        for (int level = 0; level < LEVELS; level += 64) {
            Mark.Anchor anchor = level == 0 ? Mark.Anchor.START : Mark.Anchor.MIDDLE;
            double x = EDGE + (level == 0 ? 0 : (level + 0.5) * unit);
            d.text(x, axisY, anchor, Ink.TEXT_QUIET, level == 0 ? "level 0" : "" + level);
        }
        d.text(width - EDGE, axisY, Mark.Anchor.END, Ink.TEXT_QUIET, "255");
        range(d, e, width, unit);
        d.text(0, 14, Mark.Anchor.START, Ink.TEXT, lowText);
        d.text(width, 14, Mark.Anchor.END, Ink.TEXT, highText);
        return d;
    }

    private static void range(Drawing d, Evaluation e, double width, double unit) {
        Wedge low = e.shadows();
        Wedge high = e.highlights();
        Integer from = low == null ? null : told(low);
        Integer to = high == null ? null : told(high);
        double left = EDGE + (from == null ? LEVELS / 2.0 : from) * unit;
        double right = EDGE + (to == null ? LEVELS / 2.0 : to + 1) * unit;
        if (from != null || to != null) {
            d.box(left, LINE_Y - 1.5, Math.max(0, right - left), 3, Ink.MEASURED_FILL);
        }
        if (low != null && low.interval() != null) {
            whisker(d, low.interval(), unit);
        }
        if (high != null && high.interval() != null) {
            whisker(d, high.interval(), unit);
        }
        if (width > 600 && from != null && to != null) {
            d.text(
                    width / 2,
                    14,
                    Mark.Anchor.MIDDLE,
                    Ink.TEXT_STRONG,
                    "levels " + from + " to " + to + " hold apart");
        }
    }

    /**
     * The level that an end is told to lie at: where that is known roughly, the one that is sure.
     */
    private static @Nullable Integer told(Wedge w) {
        return w.isRough() ? w.separated() : w.best();
    }

    private static void whisker(Drawing d, Wedge.Interval interval, double unit) {
        double left = EDGE + interval.low() * unit;
        double right = EDGE + (interval.high() + 1) * unit;
        d.line(left, LINE_Y, right, LINE_Y, Ink.WHISKER);
        d.line(left, LINE_Y - 6, left, LINE_Y + 6, Ink.WHISKER);
        d.line(right, LINE_Y - 6, right, LINE_Y + 6, Ink.WHISKER);
    }

    private static String lowText(@Nullable Wedge w) {
        Integer first = w == null ? null : told(w);
        if (w == null || first == null) {
            return "";
        }
        if (w.isRough()) {
            return "0 to " + (first - 1) + " at most: black";
        }
        return first <= 1 ? "no level is lost to black" : "0 to " + (first - 1) + ": black";
    }

    private static String highText(@Nullable Wedge w) {
        Integer last = w == null ? null : told(w);
        if (w == null || last == null) {
            return "";
        }
        int first = last + 1;
        if (w.isRough()) {
            return first + " to 255 at most: paper";
        }
        if (first > 254) {
            return first > 255 ? "no level is lost to paper" : "255: paper";
        }
        return first + " to 255: paper";
    }

    private static NavigableMap<Integer, Lab> greys(Evaluation e) {
        NavigableMap<Integer, Lab> out = new TreeMap<>();
        if (e.tone() != null) {
            for (Tone.Point p : e.tone().points()) {
                out.put(p.level(), new Lab(p.measuredL(), 0, 0));
            }
        }
        if (e.neutrality() != null) {
            for (Neutrality.Point p : e.neutrality().points()) {
                out.put(p.level(), new Lab(p.l(), p.a(), p.b()));
            }
        }
        for (Wedge w : wedges(e)) {
            w.steps().forEach(s -> out.put(s.level(), s.colour()));
        }
        return out;
    }

    private static List<Wedge> wedges(Evaluation e) {
        List<Wedge> out = new ArrayList<>();
        if (e.shadows() != null) {
            out.add(e.shadows());
        }
        if (e.highlights() != null) {
            out.add(e.highlights());
        }
        return out;
    }

    private static Lab at(NavigableMap<Integer, Lab> greys, int level) {
        Map.Entry<Integer, Lab> below = greys.floorEntry(level);
        Map.Entry<Integer, Lab> above = greys.ceilingEntry(level);
        if (below == null || above == null) {
            return (below == null ? greys.firstEntry() : greys.lastEntry()).getValue();
        }
        int span = above.getKey() - below.getKey();
        double t = span == 0 ? 0 : (level - below.getKey()) / (double) span;
        Lab p = below.getValue();
        Lab q = above.getValue();
        return new Lab(
                p.l() + t * (q.l() - p.l()),
                p.a() + t * (q.a() - p.a()),
                p.b() + t * (q.b() - p.b()));
    }
}
