package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.SvgWriter;

/**
 * Finished markup of our own; every text in it was escaped when it was made.
 *
 * @param markup an element
 */
public record Html(String markup) implements Content {
    @Override
    public void writeTo(TemplateOutput output) {
        output.writeContent(markup);
    }

    /** One drawing for every width. */
    static Html of(Drawing drawing, String id) {
        return new Html(SvgWriter.write(drawing, id, "plot"));
    }

    /** A drawing for wide screens and paper, and one for narrow screens. */
    static Html of(Drawing wide, Drawing narrow, String id) {
        return new Html(
                SvgWriter.write(wide, id, "plot wide")
                        + "\n"
                        + SvgWriter.write(narrow, id + "-n", "plot narrow"));
    }
}
