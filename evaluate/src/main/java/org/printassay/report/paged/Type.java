package org.printassay.report.paged;

/** Kinds of text: size and line distance in points, and shade. */
public enum Type {
    /** Name of the document, once. */
    TITLE(21, 25, Shade.INK),
    /** Heading of a part. */
    HEADING(13.5, 17, Shade.INK),
    /** Heading within a part. */
    SUBHEADING(10.5, 14, Shade.INK),
    /** A sentence that matters. */
    FINDING(10.8, 14.2, Shade.INK),
    /** Usual text. */
    BODY(9.2, 12.4, Shade.INK),
    /** Usual text of less weight. */
    QUIET(9.2, 12.4, Shade.QUIET),
    /** A figure that is looked up. */
    VALUE(9.2, 12.4, Shade.INK),
    /** What goes with a figure. */
    SMALL(8, 10.6, Shade.QUIET),
    /** Cells of long tables. */
    CELL(7.8, 10.4, Shade.INK),
    /** What the program calls itself, and notices. */
    ACCENT(8.6, 11.5, Shade.ACCENT);

    private final double size;
    private final double leading;
    private final Shade shade;

    Type(double size, double leading, Shade shade) {
        this.size = size;
        this.leading = leading;
        this.shade = shade;
    }

    double size() {
        return size;
    }

    double leading() {
        return leading;
    }

    Shade shade() {
        return shade;
    }
}
