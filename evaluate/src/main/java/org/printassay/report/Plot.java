package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import java.util.function.DoubleFunction;
import org.printassay.report.draw.Drawing;

/**
 * A plot that can be drawn at any width.
 *
 * @param id unique in the page
 * @param at draws it so many units wide
 * @param wide units on a wide screen
 */
public record Plot(String id, DoubleFunction<Drawing> at, double wide) implements Content {
    /** Width of the text column on a wide screen, in pixels. */
    static final double WIDE = 1040;

    /** Where figures stand beside it. */
    static final double TWO_THIRDS = 640;

    /** Where two stand side by side. */
    static final double HALF = 500;

    /** What a phone of 390 pixels leaves between its margins. */
    static final double NARROW = 350;

    /** Writes it twice, for wide screens and for narrow ones; the style sheet shows one. */
    @Override
    public void writeTo(TemplateOutput output) {
        Html.of(at.apply(wide), at.apply(NARROW), id).writeTo(output);
    }
}
