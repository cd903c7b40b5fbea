package org.printassay.report.paged;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Pages filled from top to bottom: where the next thing is painted, and on which page. */
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

    /** Paints pages, the first one on the page that there is. */
    void paint(List<List<PageBreaks.Placed>> all) {
        for (int i = 0; i < all.size(); i++) {
            if (i > 0) {
                canvas = added();
            }
            for (PageBreaks.Placed placed : all.get(i)) {
                y = PageFormat.TOP + placed.y();
                placed.piece().painter().paint(placed.top());
            }
        }
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

    /** Lines of the innermost element; a space follows the last one where text goes on. */
    void lines(List<String> lines, Type type, double x, boolean goesOn) {
        structure.begin(canvas);
        for (int i = 0; i < lines.size(); i++) {
            // The space keeps the words of two lines apart for those who have it read to them.
            String line = lines.get(i) + (goesOn || i + 1 < lines.size() ? " " : "");
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
