package org.printassay.report.paged;

/** Colours of text and lines on white, in sRGB; each text reaches a contrast of 7 to 1. */
enum Shade {
    INK("#1c1c1c"),
    QUIET("#4d4d4d"),
    ACCENT("#1f5365"),
    RULE("#c9c9c9"),
    FAINT("#e2e2e2"),
    BAR("#84adba"),
    SURROUND("#8a8a8a"),
    PAPER("#ffffff");

    private final String colour;

    Shade(String colour) {
        this.colour = colour;
    }

    /** {@code #rrggbb}. */
    String colour() {
        return colour;
    }
}
