package org.printassay.metric;

import org.printassay.colour.Lab;

/** How strongly a paper is tinted: no more than the uncertainty of its colour allows. */
enum PaperTint {
    /** A tint that may be none, or none that may be a clear one. */
    NOT_TOLD(""),
    NEUTRAL(""),
    /** Surely tinted; how strongly is not sure. */
    TINTED(""),
    SLIGHT("slightly "),
    CLEAR("clearly "),
    STRONG("strongly ");

    /** From these chromas on a tint is slight, clear, strong (common practice, no source). */
    private static final double FROM_SLIGHT = 1;

    private static final double FROM_CLEAR = 2.5;
    private static final double FROM_STRONG = 6;

    private final String strength;

    PaperTint(String strength) {
        this.strength = strength;
    }

    /**
     * Of a paper.
     *
     * @param uncertainty 95 % half-widths
     */
    static PaperTint of(Lab paper, Lab uncertainty) {
        double chroma = paper.chroma();
        double unsure = Math.max(uncertainty.a(), uncertainty.b());
        if (chroma < FROM_SLIGHT) {
            return unsure > FROM_CLEAR ? NOT_TOLD : NEUTRAL;
        }
        // Neutral must lie outside the ellipse of the uncertainty.
        boolean sure = Math.hypot(paper.a() / uncertainty.a(), paper.b() / uncertainty.b()) > 1;
        if (unsure > 0 && !sure) {
            return NOT_TOLD;
        }
        return unsure > FROM_CLEAR
                ? TINTED
                : chroma < FROM_CLEAR ? SLIGHT : chroma < FROM_STRONG ? CLEAR : STRONG;
    }

    /** Before the name of a tint; empty where there is nothing to say. */
    String strength() {
        return strength;
    }
}
