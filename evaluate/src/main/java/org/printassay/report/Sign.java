package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.SvgWriter;

/**
 * A sign of a plot for its key; the words beside it say what it means.
 *
 * @param drawing the sign, its title the words; without width for words alone
 */
public record Sign(Drawing drawing) implements Content {
    /** What it means. */
    public String words() {
        return drawing.title();
    }

    @Override
    public void writeTo(TemplateOutput output) {
        if (drawing.width() > 0) {
            String cssClass = drawing.width() > drawing.height() ? "long" : "sign";
            output.writeContent(SvgWriter.writeHidden(drawing, cssClass));
        }
    }
}
