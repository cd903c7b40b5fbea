package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.printassay.report.draw.Drawing;

/** Lays drawings and pictures into the sequence. */
final class FigureWriter {
    /** Between what stands side by side. */
    static final double COLUMN_GAP = 22;

    /** No picture takes more of a page's height than this. */
    private static final double TALLEST_PICTURE = 0.8;

    /** A drawing and what stands beside it take no more than this, so that a heading fits above. */
    private static final double MOST_BESIDE = 0.9;

    private static final int MOST_CAPTION_LINES = 40;

    private final Sequence sequence;
    private final Flow flow;
    private final Structure structure;
    private final Typeface typeface;
    private final PageFormat format;
    private final double width;

    FigureWriter(
            Sequence sequence,
            Flow flow,
            Structure structure,
            Typeface typeface,
            PageFormat format) {
        this.sequence = sequence;
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
        sequence.add(
                tallest * unit,
                Turn.ITEM,
                top -> {
                    double x = PageFormat.SIDE;
                    for (Drawing drawing : drawings) {
                        figure(drawing, x, unit);
                        x += drawing.width() * unit + COLUMN_GAP;
                    }
                });
        sequence.space(PagedDocument.GAP);
    }

    /** A smaller unit where the drawing would be taller than a page. */
    private double fitting(double height) {
        return Math.min(
                PagedDocument.UNIT, MOST_BESIDE * format.textHeight() / Math.max(1, height));
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
        sequence.add(
                height.getAsDouble(),
                Turn.ITEM,
                top -> {
                    figure(drawing, PageFormat.SIDE, fitting(drawing.height()));
                    list(drawing).write(entries, PageFormat.SIDE + right(drawing));
                });
        sequence.space(PagedDocument.GAP);
        return true;
    }

    /**
     * Height of a drawing with figures to its right, points; empty where they have no room there.
     */
    private OptionalDouble heightBeside(Drawing drawing, List<NamedFigure> entries) {
        if (width - right(drawing) < SideList.NARROWEST) {
            return OptionalDouble.empty();
        }
        double height = Math.max(height(drawing), list(drawing).height(entries));
        return height > MOST_BESIDE * format.textHeight()
                ? OptionalDouble.empty()
                : OptionalDouble.of(height);
    }

    /** How much taller the figures to the right of a drawing are than it, points. */
    double excess(Drawing drawing, List<NamedFigure> entries) {
        return list(drawing).height(entries) - height(drawing);
    }

    /** Height that a drawing by itself takes, points. */
    private double height(Drawing drawing) {
        return drawing.height() * fitting(drawing.height());
    }

    private SideList list(Drawing drawing) {
        return new SideList(flow, structure, typeface, width - right(drawing));
    }

    /** Where what stands to the right of a drawing begins, from the left margin. */
    private double right(Drawing drawing) {
        return drawing.width() * fitting(drawing.height()) + COLUMN_GAP;
    }

    /** A sign of a key: from the left margin, in which line. */
    private record KeyPlace(Drawing sign, String words, double x, int line) {}

    /** Signs and what they mean, in running lines. */
    void key(List<Drawing> signs) {
        List<KeyPlace> places = new ArrayList<>();
        double x = 0;
        int line = 0;
        for (Drawing sign : signs) {
            String words = VisibleText.of(sign.title());
            double all = wide(sign) + typeface.width(words) * Type.SMALL.size();
            if (x + all > width && x > 0) {
                x = 0;
                line++;
            }
            places.add(new KeyPlace(sign, words, x, line));
            x += all + 16;
        }
        sequence.add((line + 1) * Type.SMALL.leading(), Turn.NEVER, top -> paintKey(places));
        sequence.space(PagedDocument.GAP);
    }

    /** What a sign takes before its words; one that has no width takes nothing. */
    private static double wide(Drawing sign) {
        return sign.width() == 0 ? 0 : sign.width() * PagedDocument.UNIT + 4;
    }

    private void paintKey(List<KeyPlace> places) {
        double top = flow.y();
        Canvas canvas = flow.canvas();
        structure.open("L");
        structure.numbering("None");
        for (KeyPlace place : places) {
            Drawing sign = place.sign();
            double x = PageFormat.SIDE + place.x();
            double y = top + place.line() * Type.SMALL.leading();
            canvas.beginDecoration();
            double middle = y + (Type.SMALL.leading() - sign.height() * PagedDocument.UNIT) / 2;
            new DrawingPainter(canvas, typeface, x, middle, PagedDocument.UNIT).paint(sign);
            canvas.end();
            structure.open("LI");
            structure.open("LBody");
            structure.begin(canvas);
            flow.line(place.words(), Type.SMALL, x + wide(sign), y);
            canvas.end();
            structure.close();
            structure.close();
        }
        structure.close();
    }

    /**
     * A photograph with its caption at the right.
     *
     * @param name of the image in the resources
     */
    void picture(Picture picture, String name, double share, String caption) {
        Drawing over = picture.over();
        double unit = unit(over, share);
        double wide = over.width() * unit;
        double tall = over.height() * unit;
        double room = width - wide - COLUMN_GAP;
        List<String> lines =
                typeface.wrap(VisibleText.of(caption), Type.SMALL.size(), room, MOST_CAPTION_LINES);
        sequence.add(
                Math.max(tall, lines.size() * Type.SMALL.leading()),
                Turn.ITEM,
                top -> {
                    double x = PageFormat.SIDE;
                    beginFigure(over, x, unit);
                    flow.canvas().picture(name, x, flow.y(), wide, tall);
                    new DrawingPainter(flow.canvas(), typeface, x, flow.y(), unit).paint(over);
                    endFigure();
                    structure.open("P");
                    flow.lines(lines, Type.SMALL, x + wide + COLUMN_GAP, false);
                    structure.close();
                });
        sequence.space(PagedDocument.GAP);
    }

    private double unit(Drawing over, double share) {
        return Math.min(
                share * width / over.width(),
                TALLEST_PICTURE * format.textHeight() / over.height());
    }
}
