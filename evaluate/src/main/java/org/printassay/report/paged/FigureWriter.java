package org.printassay.report.paged;

import java.util.List;
import java.util.OptionalDouble;
import org.printassay.report.draw.Drawing;

/** Lays drawings and pictures into the flow. */
final class FigureWriter {
    /** Between what stands side by side. */
    static final double COLUMN_GAP = 22;

    /** No picture takes more of a page's height than this. */
    private static final double TALLEST_PICTURE = 0.8;

    private static final int MOST_CAPTION_LINES = 40;

    private final Flow flow;
    private final Structure structure;
    private final Typeface typeface;
    private final PageFormat format;
    private final double width;

    FigureWriter(Flow flow, Structure structure, Typeface typeface, PageFormat format) {
        this.flow = flow;
        this.structure = structure;
        this.typeface = typeface;
        this.format = format;
        this.width = format.textWidth();
    }

    /** Drawings side by side. */
    void sideBySide(List<Drawing> drawings) {
        double tallest = drawings.stream().mapToDouble(Drawing::height).max().orElse(0);
        double unit = fitting(tallest);
        flow.need(tallest * unit);
        double x = PageFormat.SIDE;
        for (Drawing drawing : drawings) {
            figure(drawing, x, unit);
            x += drawing.width() * unit + COLUMN_GAP;
        }
        flow.advance(tallest * unit + PagedDocument.GAP);
    }

    /** A smaller unit where the drawing would be taller than a page. */
    private double fitting(double height) {
        return Math.min(PagedDocument.UNIT, format.textHeight() / Math.max(1, height));
    }

    private void figure(Drawing drawing, double x, double unit) {
        beginFigure(drawing, x, unit);
        new DrawingPainter(flow.canvas(), typeface, x, flow.y(), unit).paint(drawing);
        endFigure();
    }

    private void beginFigure(Drawing drawing, double x, double unit) {
        structure.open("Figure");
        double top = format.height() - flow.y();
        String words = VisibleText.of(drawing.title() + ". " + drawing.description());
        structure.figure(words, x, top - drawing.height() * unit, x + drawing.width() * unit, top);
        structure.begin(flow.canvas());
    }

    private void endFigure() {
        flow.canvas().end();
        structure.close();
    }

    /**
     * A drawing with figures to its right.
     *
     * @return false where they are too many or have no room; nothing was written then
     */
    boolean beside(Drawing drawing, List<NamedFigure> entries) {
        OptionalDouble height = heightBeside(drawing, entries);
        if (height.isEmpty()) {
            return false;
        }
        flow.need(height.getAsDouble());
        figure(drawing, PageFormat.SIDE, fitting(drawing.height()));
        double top = flow.y();
        list(drawing).write(entries, PageFormat.SIDE + right(drawing));
        flow.to(top + height.getAsDouble() + PagedDocument.GAP);
        return true;
    }

    /**
     * Height of a drawing with figures to its right, points; empty where they have no room there.
     */
    OptionalDouble heightBeside(Drawing drawing, List<NamedFigure> entries) {
        if (width - right(drawing) < SideList.NARROWEST) {
            return OptionalDouble.empty();
        }
        double height = Math.max(height(drawing), list(drawing).height(entries));
        return height > format.textHeight() ? OptionalDouble.empty() : OptionalDouble.of(height);
    }

    /** Height that a drawing by itself takes, points. */
    double height(Drawing drawing) {
        return drawing.height() * fitting(drawing.height());
    }

    private SideList list(Drawing drawing) {
        return new SideList(flow, structure, typeface, width - right(drawing));
    }

    /** Where what stands to the right of a drawing begins, from the left margin. */
    private double right(Drawing drawing) {
        return drawing.width() * fitting(drawing.height()) + COLUMN_GAP;
    }

    /** Signs and what they mean, in running lines. */
    void key(List<Drawing> signs) {
        structure.open("L");
        structure.numbering("None");
        flow.need(Type.SMALL.leading());
        double x = PageFormat.SIDE;
        for (Drawing sign : signs) {
            String words = VisibleText.of(sign.title());
            double wide = sign.width() * PagedDocument.UNIT;
            double all = wide + 4 + typeface.width(words) * Type.SMALL.size();
            if (x + all > PageFormat.SIDE + width && x > PageFormat.SIDE) {
                x = PageFormat.SIDE;
                flow.advance(Type.SMALL.leading());
                flow.need(Type.SMALL.leading());
            }
            Canvas canvas = flow.canvas();
            canvas.beginDecoration();
            double middle =
                    flow.y() + (Type.SMALL.leading() - sign.height() * PagedDocument.UNIT) / 2;
            new DrawingPainter(canvas, typeface, x, middle, PagedDocument.UNIT).paint(sign);
            canvas.end();
            structure.open("LI");
            structure.open("LBody");
            structure.begin(canvas);
            flow.line(words, Type.SMALL, x + wide + 4, flow.y());
            canvas.end();
            structure.close();
            structure.close();
            x += all + 16;
        }
        structure.close();
        flow.advance(Type.SMALL.leading() + PagedDocument.GAP);
    }

    /**
     * A photograph with its caption at the right.
     *
     * @param name of the image in the resources
     */
    void picture(Picture picture, String name, double share, String caption) {
        Drawing over = picture.over();
        double unit = unit(over, share);
        double tall = over.height() * unit;
        flow.need(tall);
        beginFigure(over, PageFormat.SIDE, unit);
        flow.canvas().picture(name, PageFormat.SIDE, flow.y(), over.width() * unit, tall);
        new DrawingPainter(flow.canvas(), typeface, PageFormat.SIDE, flow.y(), unit).paint(over);
        endFigure();
        double top = flow.y();
        double x = PageFormat.SIDE + over.width() * unit + COLUMN_GAP;
        structure.open("P");
        flow.text(caption, Type.SMALL, x, PageFormat.SIDE + width - x, MOST_CAPTION_LINES);
        structure.close();
        flow.to(top + tall + PagedDocument.GAP);
    }

    /** Height of the photograph that {@link #picture} paints, points, its caption left out. */
    double height(Picture picture, double share) {
        return picture.over().height() * unit(picture.over(), share);
    }

    private double unit(Drawing over, double share) {
        return Math.min(
                share * width / over.width(),
                TALLEST_PICTURE * format.textHeight() / over.height());
    }
}
