package org.printassay.report;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import java.util.function.DoubleFunction;
import org.printassay.report.draw.Drawing;

/**
 * A plot that can be drawn at any width.
 *
 * @param id unique in the page
 * @param shape draws it
 * @param wide units on a wide screen
 */
public record Plot(String id, Shape shape, double wide) implements Content {
    /** Draws at any width, and somewhat taller or less tall where that does no harm. */
    @FunctionalInterface
    public interface Shape {
        /**
         * Draws.
         *
         * @param width units
         * @param tall how tall, against what is usual
         */
        Drawing draw(double width, double tall);
    }

    /** A plot whose height follows from its width alone. */
    Plot(String id, DoubleFunction<Drawing> at, double wide) {
        this(id, (width, tall) -> at.apply(width), wide);
    }

    /** Drawn so many units wide, as tall as usual. */
    Drawing at(double width) {
        return shape.draw(width, 1);
    }

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
        Html.of(at(wide), at(NARROW), id).writeTo(output);
    }
}
