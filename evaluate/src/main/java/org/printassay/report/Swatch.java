package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import org.printassay.colour.Lab;
import org.printassay.report.draw.ScreenColour;

/**
 * A measured colour, shown on neutral grey.
 *
 * @param colour {@code #rrggbb}
 */
public record Swatch(String colour) implements Content {
    static Swatch of(Lab lab) {
        return new Swatch(ScreenColour.of(lab));
    }

    @Override
    public void writeTo(TemplateOutput output) {
        output.writeContent(
                "<svg class=\"swatch\" viewBox=\"0 0 40 28\" aria-hidden=\"true\">"
                        + "<rect class=\"ink-surround\" width=\"40\" height=\"28\"/>"
                        + "<rect x=\"7\" y=\"6\" width=\"26\" height=\"16\" fill=\""
                        + colour
                        + "\"/></svg>");
    }
}
