package org.printassay.report.paged;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** Paints one drawing onto a page. */
final class DrawingPainter {
    /** Size of text in units of the drawing, as on screen. */
    private static final double TEXT_SIZE = 13;

    private final Canvas canvas;
    private final Typeface typeface;
    private final double left;
    private final double top;
    private final double unit;

    /**
     * A painter.
     *
     * @param left where the drawing begins
     * @param top likewise
     * @param unit length of the drawing's unit
     */
    DrawingPainter(Canvas canvas, Typeface typeface, double left, double top, double unit) {
        this.canvas = canvas;
        this.typeface = typeface;
        this.left = left;
        this.top = top;
        this.unit = unit;
    }

    void paint(Drawing drawing) {
        drawing.marks().forEach(this::paint);
    }

    private void paint(Mark mark) {
        if (mark instanceof Mark.Line line) {
            Pens.Pen pen = Pens.of(line.ink());
            take(pen, null);
            canvas.move(x(line.x1()), y(line.y1()));
            canvas.lineTo(x(line.x2()), y(line.y2()));
            canvas.paint(false, false, true);
        } else if (mark instanceof Mark.Path path) {
            path(path);
        } else if (mark instanceof Mark.Box box) {
            Pens.Pen pen = Pens.of(box.ink());
            take(pen, box.fill());
            canvas.rectangle(x(box.x()), y(box.y()), unit * box.width(), unit * box.height());
            finish(pen, true, box.fill() != null);
        } else if (mark instanceof Mark.Disc disc) {
            Pens.Pen pen = Pens.of(disc.ink());
            take(pen, disc.fill());
            canvas.circle(x(disc.x()), y(disc.y()), unit * disc.radius());
            finish(pen, true, false);
        } else if (mark instanceof Mark.Label label) {
            label(label);
        }
    }

    private void path(Mark.Path path) {
        List<Mark.Point> points = path.points();
        if (points.isEmpty()) {
            return;
        }
        Pens.Pen pen = Pens.of(path.ink());
        take(pen, null);
        canvas.move(x(points.get(0).x()), y(points.get(0).y()));
        for (Mark.Point point : points.subList(1, points.size())) {
            canvas.lineTo(x(point.x()), y(point.y()));
        }
        finish(pen, path.closed(), false);
    }

    private void label(Mark.Label label) {
        Typeface.Shown shown = typeface.show(VisibleText.of(label.text()));
        double size = TEXT_SIZE * unit;
        double width = shown.width() * size;
        double start =
                switch (label.anchor()) {
                    case START -> 0;
                    case MIDDLE -> width / 2;
                    case END -> width;
                };
        Shade shade = Pens.of(label.ink()).fill();
        canvas.text(
                x(label.x()) - start,
                y(label.y()),
                shown,
                size,
                (shade == null ? Shade.INK : shade).colour(),
                label.ink() == Ink.TEXT_STRONG);
    }

    private void take(Pens.Pen pen, @Nullable String fill) {
        if (pen.thin()) {
            canvas.thin();
        }
        Shade shade = pen.fill();
        if (fill != null) {
            canvas.fill(fill);
        } else if (shade != null) {
            canvas.fill(shade.colour());
        }
        Shade line = pen.line();
        if (line != null) {
            canvas.stroke(line.colour());
            double scale = pen.onPaper() ? 1 : unit;
            double[] dashes = pen.dashes().stream().mapToDouble(d -> d * scale).toArray();
            canvas.pen(pen.width() * scale, line == Shade.ACCENT && dashes.length > 0, dashes);
        }
    }

    /** Paints the path that was made; only closed ones are filled. */
    private void finish(Pens.Pen pen, boolean closed, boolean coloured) {
        boolean fills = closed && (coloured || pen.fill() != null);
        canvas.paint(closed, fills, pen.line() != null && !coloured);
        if (pen.thin()) {
            canvas.restore();
        }
    }

    private double x(double units) {
        return left + unit * units;
    }

    private double y(double units) {
        return top + unit * units;
    }
}
