package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Pages filled from top to bottom: where the next thing goes, and on which page. */
final class Flow {
    private final PDDocument document;
    private final PageFormat format;
    private final PDResources resources;
    private final Structure structure;
    private final Typeface typeface;
    private final List<Canvas> pages = new ArrayList<>();
    private Canvas canvas;
    private double y = PageFormat.TOP;

    Flow(
            PDDocument document,
            PageFormat format,
            PDResources resources,
            Structure structure,
            Typeface typeface) {
        this.document = document;
        this.format = format;
        this.resources = resources;
        this.structure = structure;
        this.typeface = typeface;
        this.canvas = added();
    }

    private Canvas added() {
        PDPage page = new PDPage(new PDRectangle((float) format.width(), (float) format.height()));
        page.setResources(resources);
        document.addPage(page);
        Canvas made = new Canvas(page, format.height(), pages.size());
        pages.add(made);
        return made;
    }

    List<Canvas> pages() {
        return pages;
    }

    Canvas canvas() {
        return canvas;
    }

    double y() {
        return y;
    }

    void advance(double height) {
        y += height;
    }

    void to(double place) {
        y = place;
    }

    boolean atTop() {
        return y == PageFormat.TOP;
    }

    double room() {
        return format.height() - PageFormat.BOTTOM - y;
    }

    boolean fits(double height) {
        return height <= room();
    }

    void nextPage() {
        canvas = added();
        y = PageFormat.TOP;
    }

    /** Turns the page unless so much is left of it, or it is still empty. */
    void need(double height) {
        if (!fits(height) && !atTop()) {
            nextPage();
        }
    }

    /** Text of the innermost element in lines, over as many pages as it takes. */
    void text(String text, Type type, double x, double width) {
        text(text, type, x, width, Integer.MAX_VALUE - 1);
    }

    /** Text of at most so many lines. */
    void text(String text, Type type, double x, double width, int most) {
        List<String> lines = typeface.wrap(VisibleText.of(text), type.size(), width, most);
        need(Math.min(lines.size(), 2) * type.leading());
        structure.begin(canvas);
        for (int i = 0; i < lines.size(); i++) {
            if (!fits(type.leading()) && !atTop()) {
                canvas.end();
                nextPage();
                structure.begin(canvas);
            }
            // The space keeps the words of two lines apart for those who have it read to them.
            String line = lines.get(i) + (i + 1 < lines.size() ? " " : "");
            line(line, type, x, y);
            y += type.leading();
        }
        canvas.end();
    }

    /** One line, its top at {@code top}. */
    void line(String line, Type type, double x, double top) {
        double baseline = top + (type.leading() + 0.7 * type.size()) / 2;
        canvas.text(x, baseline, typeface.show(line), type.size(), type.shade().colour());
    }
}
