package org.printassay.layout;

import java.util.List;

/**
 * Words printed beside the parts of a sheet: what to look for by eye, and under which light.
 * Illuminances by ISO 3664: viewing condition P1, 2000 lux, to judge closely; P2, 500 lux, as
 * pictures are seen (values from memory).
 *
 * @param viewing under which light to look, lines in the header; empty where the version had none
 * @param shadows above the shadow wedge, and {@code highlights} above the other
 * @param hues above the hue ramps
 * @param black above the black field
 * @param edges above the slanted edges
 * @param vignette above the vignette over all levels
 */
record Captions(
        List<String> viewing,
        String shadows,
        String highlights,
        String hues,
        String black,
        String edges,
        String vignette) {
    /** Width of a character of a caption, dots, about. */
    private static final double CHARACTER = 12.1;

    private static final Captions FIRST =
            new Captions(
                    List.of(),
                    "Shadows. From which number on do you see a step against black?",
                    "Highlights. From which number on do you see a tint against the paper?",
                    "Colours: paper, full, black",
                    "Black, and greys on black",
                    "Sharpness",
                    "Smooth from black to paper?");

    private static final Captions SECOND =
            new Captions(
                    List.of(
                            "By eye: daylight or a lamp like D50, no",
                            "shine on the sheet. 2000 lux to judge",
                            "closely, 500 as pictures hang (ISO 3664)."),
                    "Shadows. From which number on do you see a step against black? In 2000 lux, then in"
                            + " 500: fewer show.",
                    "Highlights. From which number on do you see a tint against the paper? In 2000 lux,"
                            + " even light.",
                    "Colours. Does each step differ?",
                    "Black. Deep, even, the paper still flat?",
                    "Sharpness. Crisp edges without halos?",
                    "Smooth from black to paper?");

    /** The words of a layout version of the full paper sheet. */
    static Captions ofPaper(int layoutVersion) {
        return layoutVersion == 1 ? FIRST : SECOND;
    }

    /** The words in force. */
    static Captions latest() {
        return SECOND;
    }

    /** Whether a caption stays within a width in dots. */
    static boolean fits(String caption, int width) {
        return caption.length() * CHARACTER <= width;
    }
}
