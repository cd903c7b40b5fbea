package org.printassay.report;

/** Headings and sentences that every comparison has, on screen and on paper. */
public final class ComparisonText {
    public static final String BEFORE = "Before you compare";
    public static final String SIDES = "What is compared";
    public static final String SHORT = "In short";
    public static final String QUESTIONS = "Which for what";
    public static final String QUESTIONS_LEAD =
            "Places follow from the figures beside the names, asked one after the other. A"
                    + " difference counts when it holds and is at least as large as the one in"
                    + " brackets. Places are apart where all of one stand before all of the other; the"
                    + " rest share a place.";
    public static final String STRIPS = "Levels that hold apart";
    public static final String STRIPS_LEAD =
            "Every level from black to paper as it came out. The bar spans what can be told from"
                    + " both ends; its whiskers are 95\u00a0% intervals. Of several prints the first is"
                    + " shown.";
    public static final String TONE = "Tone";
    public static final String TONE_LEAD =
            "How much lighter or darker than its own aim each prints, over the lightness of the"
                    + " file. On the zero line the print matches the file, as far as its paper and"
                    + " black allow.";
    public static final String TONE_APART =
            "Strong line: the one named above it; thin lines: all the others.";
    public static final String GAMUT = "Colours within reach";
    public static final String GAMUT_LEAD =
            "Cuts through what each can print, at a dark, a middle and a light colour. The further"
                    + " out a line, the more saturated the colours; ticks are 20 apart in a* and b*.";
    public static final String GAMUT_APART =
            "Filled: the one of the number above; broken line: the one that the others are shown"
                    + " against. Red is to the right, yellow up, green to the left, blue down.";
    public static final String ALL = "All figures";
    public static final String END =
            "Made by printassay. Colours are CIELAB under D50, 2\u00b0 observer; swatches are shown"
                    + " in sRGB and clipped to it. The same figures for scripts:";

    private ComparisonText() {}

    /** What stands above the table of figures. */
    static String allLead(boolean two, String against) {
        return two
                ? "With each figure, how far it is from "
                        + against
                        + ". The bar (on screen) shows it in units of what is just visible side by"
                        + " side, which the grey band spans; an arrow means more than five."
                : "With each figure, how far it is from " + against + ".";
    }
}
