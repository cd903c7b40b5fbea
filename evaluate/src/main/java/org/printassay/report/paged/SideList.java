package org.printassay.report.paged;

import java.util.List;

/** Figures with their names below each other in a narrow column. */
final class SideList {
    /** A column narrower than this holds no figure. */
    static final double NARROWEST = 110;

    private static final double AIR = 3.2;
    private static final double SAMPLE_WIDTH = 22;
    private static final double SAMPLE_HEIGHT = 12;
    private static final int MOST_LINES = 8;

    private final Flow flow;
    private final Structure structure;
    private final Typeface typeface;
    private final double width;

    SideList(Flow flow, Structure structure, Typeface typeface, double width) {
        this.flow = flow;
        this.structure = structure;
        this.typeface = typeface;
        this.width = width;
    }

    double height(List<NamedFigure> entries) {
        double height = 0;
        for (NamedFigure entry : entries) {
            height += Type.SMALL.leading() + 2 * AIR;
            height += lines(entry.value(), Type.VALUE) * Type.VALUE.leading();
            height += lines(entry.detail(), Type.SMALL) * Type.SMALL.leading();
        }
        return height;
    }

    private int lines(String text, Type type) {
        String clean = VisibleText.of(text);
        return clean.isEmpty() ? 0 : typeface.wrap(clean, type.size(), width, MOST_LINES).size();
    }

    /** Writes them from the flow's place down; all must fit on the page. */
    void write(List<NamedFigure> entries, double x) {
        structure.open("L");
        structure.numbering("None");
        for (NamedFigure entry : entries) {
            Canvas canvas = flow.canvas();
            canvas.beginDecoration();
            canvas.rule(x, flow.y(), width, Shade.FAINT.colour());
            String colour = entry.colour();
            if (colour != null) {
                double left = x + width - SAMPLE_WIDTH;
                double top = flow.y() + AIR;
                canvas.box(left, top, SAMPLE_WIDTH, SAMPLE_HEIGHT, Shade.SURROUND.colour());
                canvas.box(left + 3, top + 2.5, SAMPLE_WIDTH - 6, SAMPLE_HEIGHT - 5, colour);
            }
            canvas.end();
            flow.advance(AIR);
            structure.open("LI");
            structure.open("Lbl");
            flow.text(entry.label(), Type.SMALL, x, width, 1);
            structure.close();
            structure.open("LBody");
            said(entry.value(), Type.VALUE, x);
            said(entry.detail(), Type.SMALL, x);
            structure.close();
            structure.close();
            flow.advance(AIR);
        }
        structure.close();
    }

    private void said(String text, Type type, double x) {
        if (!text.isEmpty()) {
            structure.open("P");
            flow.text(text, type, x, width, MOST_LINES);
            structure.close();
        }
    }
}
