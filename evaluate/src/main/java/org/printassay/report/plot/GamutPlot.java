package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.printassay.metric.ColourDetail;
import org.printassay.metric.GamutMesh;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.report.draw.ScreenColour;

/** Gamuts cut at several lightnesses, and skin-like tones beside their aim. */
public final class GamutPlot {
    private static final double GAP = 18;
    private static final double HEAD = 22;
    private static final double UNIT = 20;

    /** Up to this width two planes stand side by side, else three. */
    private static final double NARROW = 450;

    private static final double LEAST_REACH = 60;
    private static final double SWATCH_GAP = 4;

    private GamutPlot() {}

    /** Small a*b* planes at rising lightness: the print filled, its aim a broken line. */
    public static Drawing slices(ColourDetail colours, double width) {
        int columns = width > NARROW ? 3 : 2;
        int rows = (colours.slices().size() + columns - 1) / columns;
        double side = (width - GAP * (columns - 1)) / columns;
        double reach = reach(colours);
        Drawing d =
                new Drawing(
                        "Gamut at several lightnesses",
                        description(colours),
                        width,
                        rows * (side + HEAD + GAP));
        for (int i = 0; i < colours.slices().size(); i++) {
            ColourDetail.Slice slice = colours.slices().get(i);
            int row = i / columns;
            double left = (i - row * columns) * (side + GAP);
            double top = row * (side + HEAD + GAP) + HEAD;
            Frame f = new Frame(left, top, side, side, -reach, reach, -reach, reach);
            d.text(
                    left,
                    top - 7,
                    Mark.Anchor.START,
                    Ink.TEXT_STRONG,
                    String.format(Locale.ROOT, "L* %.0f", slice.lightness()));
            d.line(f.left(), f.y(0), f.right(), f.y(0), Ink.GRID);
            d.line(f.x(0), f.top(), f.x(0), f.bottom(), Ink.GRID);
            for (List<GamutMesh.Place> outline : slice.print()) {
                d.area(points(f, outline), Ink.BAND);
                d.path(closed(points(f, outline)), Ink.MEASURED);
            }
            for (List<GamutMesh.Place> outline : slice.aim()) {
                d.path(closed(points(f, outline)), Ink.AIM);
            }
            d.text(f.right(), f.y(0) - 5, Mark.Anchor.END, Ink.TEXT_QUIET, "red");
            d.text(f.left(), f.y(0) - 5, Mark.Anchor.START, Ink.TEXT_QUIET, "green");
            if (i == 0) {
                // The darkest plane is the emptiest; all are of one scale.
                d.text(
                        f.right(),
                        f.y(0) + 14,
                        Mark.Anchor.END,
                        Ink.TEXT_QUIET,
                        String.format(Locale.ROOT, "a* %.0f", reach));
            }
            d.text(f.x(0) + 5, f.top() + 11, Mark.Anchor.START, Ink.TEXT_QUIET, "yellow");
            d.text(f.x(0) + 5, f.bottom() - 4, Mark.Anchor.START, Ink.TEXT_QUIET, "blue");
        }
        return d;
    }

    /** How far to draw: whole steps, so that prints of one kind are drawn alike. */
    private static double reach(ColourDetail colours) {
        double most = LEAST_REACH;
        for (ColourDetail.Slice slice : colours.slices()) {
            for (List<List<GamutMesh.Place>> outlines : List.of(slice.print(), slice.aim())) {
                for (List<GamutMesh.Place> outline : outlines) {
                    for (GamutMesh.Place place : outline) {
                        most = Math.max(most, Math.max(Math.abs(place.a()), Math.abs(place.b())));
                    }
                }
            }
        }
        return UNIT * Math.ceil(most / UNIT);
    }

    private static List<Mark.Point> points(Frame f, List<GamutMesh.Place> outline) {
        return outline.stream().map(p -> new Mark.Point(f.x(p.a()), f.y(p.b()))).toList();
    }

    private static List<Mark.Point> closed(List<Mark.Point> points) {
        List<Mark.Point> all = new ArrayList<>(points);
        if (!points.isEmpty()) {
            all.add(points.get(0));
        }
        return all;
    }

    private static String description(ColourDetail colours) {
        StringBuilder text =
                new StringBuilder("Filled what the print reaches, broken line what is aimed at.");
        for (ColourDetail.Hue hue : colours.hues()) {
            text.append(
                    String.format(
                            Locale.ROOT,
                            " Full %s: chroma %.0f of %.0f.",
                            hue.name(),
                            hue.full().chroma(),
                            hue.aim().chroma()));
        }
        return text.toString();
    }

    /**
     * Each tone as printed, below it as aimed at, edge to edge.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing skin(ColourDetail colours, double width, double tall) {
        int n = colours.skin().size();
        double side = (width - SWATCH_GAP * (n - 1)) / n;
        double height = tall * Math.min(2 * side, 120);
        StringBuilder text = new StringBuilder("Above as printed, below as aimed at.");
        for (ColourDetail.SkinTone tone : colours.skin()) {
            text.append(
                    String.format(
                            Locale.ROOT,
                            " L* %.0f: dE00 %.1f, %s.",
                            tone.aim().l(),
                            tone.deltaE00(),
                            tone.words()));
        }
        Drawing d = new Drawing("Skin-like tones", text.toString(), width, height + 24);
        for (int i = 0; i < n; i++) {
            ColourDetail.SkinTone tone = colours.skin().get(i);
            double left = i * (side + SWATCH_GAP);
            d.swatch(left, 0, side, height / 2, ScreenColour.of(tone.measured()));
            d.swatch(left, height / 2, side, height / 2, ScreenColour.of(tone.aim()));
            d.text(
                    left + side / 2,
                    height + 16,
                    Mark.Anchor.MIDDLE,
                    Ink.TEXT_QUIET,
                    String.format(Locale.ROOT, "%.1f", tone.deltaE00()));
        }
        return d;
    }
}
