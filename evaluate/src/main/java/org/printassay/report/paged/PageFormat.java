package org.printassay.report.paged;

import java.util.Locale;
import java.util.Optional;

/** Pages that documents are laid out for; sides are points. */
public enum PageFormat {
    /** 210 x 297 mm (ISO 216). */
    A4("A4", 210 / 25.4 * 72, 297 / 25.4 * 72),
    /** 8.5 x 11 inches (ANSI/ASME Y14.1). */
    LETTER("Letter", 8.5 * 72, 11 * 72);

    /** Left and right of the text. */
    static final double SIDE = 45;

    /** Above the text. */
    static final double TOP = 45;

    /** Below the text; the page number stands in it. */
    static final double BOTTOM = 54;

    private final String title;
    private final double width;
    private final double height;

    PageFormat(String title, double width, double height) {
        this.title = title;
        this.width = width;
        this.height = height;
    }

    /** Name for people and options. */
    public String title() {
        return title;
    }

    /** Width of the page. */
    public double width() {
        return width;
    }

    /** Height of the page. */
    public double height() {
        return height;
    }

    /** What is left for text between the margins. */
    public double textWidth() {
        return width - 2 * SIDE;
    }

    double textHeight() {
        return height - TOP - BOTTOM;
    }

    /** The format of a name, in any case. */
    public static Optional<PageFormat> named(String name) {
        for (PageFormat format : values()) {
            if (format.title.toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT))) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }
}
