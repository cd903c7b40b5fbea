package org.printassay.report.plot;

import java.util.List;
import java.util.Locale;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;

/** Where lines run on the page: an outline of it with every line in its place. */
public final class LinesPlot {
    private static final double SIDE = 46;
    private static final double TOP = 22;
    private static final double LARGEST = 320;

    /** Labels nearer to each other than this would cover each other. */
    private static final double LABEL_GAP = 14;

    private LinesPlot() {}

    /**
     * The plot.
     *
     * @param lines of one page
     */
    public static Drawing draw(List<PrintLine> lines, RectMm page, double width) {
        double right = SIDE + Math.min(LARGEST, width - 2 * SIDE);
        double scale = (right - SIDE) / page.width();
        double height = scale * page.height();
        Drawing d =
                new Drawing(
                        "Where lines run",
                        lines.size() + " lines on the page; numbers are millimetres.",
                        width,
                        TOP + height + 24);
        d.box(SIDE, TOP, right - SIDE, height, Ink.FAINT_OUTLINE);
        double lastY = Double.NEGATIVE_INFINITY;
        double lastX = Double.NEGATIVE_INFINITY;
        for (PrintLine one : lines) {
            boolean light = one.line().contrast() > 0;
            boolean unsure = one.cause() == SurfaceCause.UNDECIDED;
            Ink ink = unsure ? Ink.FAINT_OUTLINE : light ? Ink.SERIES_1 : Ink.SERIES_2;
            String label = String.format(Locale.ROOT, "%.1f", one.line().positionMm());
            if (one.line().along() == Along.Y) {
                double y = TOP + scale * one.line().positionMm();
                d.line(SIDE, y, right, y, ink);
                if (y - lastY >= LABEL_GAP) {
                    d.text(right + 4, y + 4, Mark.Anchor.START, Ink.TEXT_QUIET, label);
                    lastY = y;
                }
            } else {
                double x = SIDE + scale * one.line().positionMm();
                d.line(x, TOP, x, TOP + height, ink);
                if (x - lastX >= 3 * LABEL_GAP) {
                    d.text(x, TOP + height + 16, Mark.Anchor.MIDDLE, Ink.TEXT_QUIET, label);
                    lastX = x;
                }
            }
        }
        d.text(SIDE, TOP - 8, Mark.Anchor.START, Ink.TEXT_QUIET, "top edge");
        return d;
    }
}
