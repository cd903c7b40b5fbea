package org.printassay.demo.print;

import java.util.List;

/**
 * What the printing does to the page as a whole.
 *
 * @param scaleX size of the printed page against the file, across; 0.96 for "fit to page"
 * @param scaleY the same, down the page
 * @param offsetXMm misplacement on the sheet, to the right
 * @param offsetYMm misplacement on the sheet, down
 * @param lines thin lines of missing or doubled ink
 * @param bands periodic unevenness
 * @param inks what colours are made of; eyes cannot tell
 */
public record Printing(
        double scaleX,
        double scaleY,
        double offsetXMm,
        double offsetYMm,
        List<Line> lines,
        List<Band> bands,
        InkSet inks) {
    /** At 100 %, in place, even. */
    public static final Printing EXACT = new Printing(1, 1, 0, 0, List.of(), List.of());

    public Printing {
        lines = List.copyOf(lines);
        bands = List.copyOf(bands);
        if (scaleX < 0.5 || scaleX > 2 || scaleY < 0.5 || scaleY > 2) {
            throw new IllegalArgumentException("scale of a print goes from 0.5 to 2");
        }
    }

    /** Printed with the first set of inks. */
    public Printing(
            double scaleX,
            double scaleY,
            double offsetXMm,
            double offsetYMm,
            List<Line> lines,
            List<Band> bands) {
        this(scaleX, scaleY, offsetXMm, offsetYMm, lines, bands, InkSet.FIRST);
    }

    /** This printing with other inks. */
    public Printing withInks(InkSet other) {
        return new Printing(scaleX, scaleY, offsetXMm, offsetYMm, lines, bands, other);
    }

    /** Exact but for the size. */
    public static Printing scaled(double scale) {
        return new Printing(scale, scale, 0, 0, List.of(), List.of());
    }

    /** Direction in which a line or band varies. */
    public enum Across {
        /** Varies with x: a line runs down the page. */
        X,
        /** Varies with y: a line runs across the page. */
        Y
    }

    /**
     * A line where ink is missing (light) or doubled (dark). Bare paper shows nothing.
     *
     * @param across which way it varies
     * @param atMm its middle on the sheet
     * @param widthMm its width
     * @param contrast dR/R inside the line, in linear light: 0.1 is a light line
     */
    public record Line(Across across, double atMm, double widthMm, double contrast) {}

    /**
     * Banding, a sine. Bare paper shows nothing.
     *
     * @param across which way it varies
     * @param periodMm its period
     * @param amplitudeL its amplitude, L* (half the range)
     */
    public record Band(Across across, double periodMm, double amplitudeL) {}
}
