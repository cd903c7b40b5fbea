package org.printassay.report.paged;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.report.draw.Ink;

/** How the inks of drawings look on paper; widths and dashes are units of the drawing. */
final class Pens {
    private static final Map<Ink, Pen> ALL = all();

    private Pens() {}

    /**
     * One ink.
     *
     * @param fill colour of areas and text; null when it fills nothing
     * @param line colour of lines; null when it draws none
     * @param width of lines
     * @param dashes lengths of dashes and gaps; empty for whole lines
     * @param thin whether what lies below shows through
     * @param onPaper whether {@code width} is points, whatever the scale of the drawing
     */
    record Pen(
            @Nullable Shade fill,
            @Nullable Shade line,
            double width,
            List<Double> dashes,
            boolean thin,
            boolean onPaper) {
        static Pen fills(Shade shade) {
            return new Pen(shade, null, 0, List.of(), false, false);
        }

        static Pen draws(Shade shade, double width, Double... dashes) {
            return new Pen(null, shade, width, List.of(dashes), false, false);
        }

        static Pen outlines(Shade fill, Shade line, double width) {
            return new Pen(fill, line, width, List.of(), false, false);
        }
    }

    static Pen of(Ink ink) {
        Pen pen = ALL.get(ink);
        if (pen == null) {
            throw new IllegalArgumentException("no pen for " + ink);
        }
        return pen;
    }

    private static Map<Ink, Pen> all() {
        Map<Ink, Pen> pens = new EnumMap<>(Ink.class);
        pens.put(Ink.GRID, Pen.draws(Shade.FAINT, 1));
        pens.put(Ink.AXIS, Pen.draws(Shade.QUIET, 1));
        pens.put(Ink.AIM, Pen.draws(Shade.INK, 1.3, 5.0, 3.5));
        pens.put(Ink.MEASURED, Pen.draws(Shade.ACCENT, 2));
        pens.put(Ink.MEASURED_FILL, Pen.fills(Shade.ACCENT));
        pens.put(Ink.BAR, Pen.fills(Shade.BAR));
        pens.put(Ink.MEASURED_OUTLINE, Pen.outlines(Shade.PAPER, Shade.ACCENT, 1.5));
        pens.put(Ink.FAINT_OUTLINE, Pen.outlines(Shade.PAPER, Shade.QUIET, 1));
        pens.put(Ink.BAND, new Pen(Shade.ACCENT, null, 0, List.of(), true, false));
        pens.put(Ink.WHISKER, Pen.draws(Shade.INK, 1.3));
        pens.put(Ink.THRESHOLD, Pen.draws(Shade.ACCENT, 1.5, 1.5, 3.0));
        pens.put(Ink.SIGN, Pen.fills(Shade.INK));
        pens.put(Ink.SIGN_OUTLINE, Pen.outlines(Shade.PAPER, Shade.INK, 1.4));
        pens.put(Ink.SURROUND, Pen.fills(Shade.SURROUND));
        pens.put(Ink.SERIES_1, Pen.draws(Shade.INK, 1.8));
        pens.put(Ink.SERIES_2, Pen.draws(Shade.ACCENT, 1.8, 7.0, 3.5));
        pens.put(Ink.SERIES_3, Pen.draws(Shade.QUIET, 1.8, 2.0, 3.0));
        pens.put(Ink.SERIES_4, Pen.draws(Shade.INK, 1.8, 9.0, 3.0, 2.0, 3.0));
        pens.put(Ink.FOUND_UNDER, new Pen(null, Shade.INK, 0.9, List.of(), false, true));
        pens.put(Ink.FOUND, new Pen(null, Shade.PAPER, 0.4, List.of(), false, true));
        pens.put(Ink.FOUND_MARKER, new Pen(null, Shade.ACCENT, 1.4, List.of(), false, true));
        pens.put(Ink.TEXT, Pen.fills(Shade.INK));
        pens.put(Ink.TEXT_QUIET, Pen.fills(Shade.QUIET));
        pens.put(Ink.TEXT_STRONG, Pen.fills(Shade.INK));
        return pens;
    }
}
