package org.printassay.report;

import java.util.List;
import org.printassay.reading.Trust;

/** Headings and sentences that every evaluation's report has, on screen and on paper. */
public final class PageText {
    /** Above everything, where nothing is real. */
    public static final String SIMULATED = "Simulated: no real printer, paper or scanner";

    /** What the document is. */
    public static final String KIND = "print evaluation";

    public static final String FINDINGS = "Findings";
    public static final String NOTHING = "Nothing could be judged. The notes below say why.";
    public static final String FIGURES = "In figures";
    public static final String HALF_WIDTHS =
            "Figures after \u00b1 are half-widths of 95\u00a0% intervals.";
    public static final String NOTES = "Please note";
    public static final String SCANS = "What was read";
    public static final String SCANS_LEAD =
            "Thin outlines show where patches were read, heavy ones the markers; a cross marks what"
                    + " is doubtful. If outlines lie beside the patches, do not trust this report.";

    /** On paper those pictures stand last. */
    public static final String SCANS_LAST =
            "The last part, \u201c"
                    + SCANS
                    + "\u201d, shows whether patches were read where they lie.";

    public static final String PROMISE = "Against the printer\u2019s profile";
    public static final String FURTHER = "Further results";
    public static final String CONDITIONS = "Conditions";
    public static final String BUDGETS = "Where the uncertainties come from";
    public static final String BUDGETS_LEAD =
            "Half-widths of 95\u00a0% intervals. The parts of a line are independent: their squares"
                    + " add up (ISO/IEC Guide 98-3).";
    public static final String SURE = "How sure, and what to keep in mind";
    public static final String READINGS = "Readings";
    public static final String END =
            "Made by printassay. Differences are measured minus aim; colours are CIELAB under D50,"
                    + " 2\u00b0 observer; swatches are shown in sRGB and clipped to it. The same"
                    + " figures for scripts:";

    private PageText() {}

    /** Names of the columns of the table of uncertainties. */
    public static List<String> budgetHeads() {
        return List.of(
                "Figure",
                "Value",
                "Repeats",
                "Scanner\u2019s light",
                "Calibration, profile",
                "Stated",
                "All");
    }

    /** Names of the columns of the table of sections. */
    public static List<String> sectionHeads() {
        return List.of("Section", "Patches", "L*", "Standard error of L*, median", "Flags");
    }

    /** Whether a column of the table of sections holds figures. */
    public static boolean isFigure(String sectionHead) {
        return sectionHeads().subList(1, 4).contains(sectionHead);
    }

    /** What the table of readings holds. */
    static String readingsHold(boolean absolute) {
        return absolute ? "absolute CIELAB (D50)" : "CIELAB relative to the paper";
    }

    /** Cautions in words. */
    static List<String> cautions(Trust trust) {
        return List.of(
                "Intervals hold in 95 of 100 cases. They come from the spread between equal patches"
                        + " on this sheet and, for absolute lightness, a stated share for the way"
                        + " colour was obtained ("
                        + Words.trust(trust)
                        + ").",
                "A scan is not an instrument. Metallic, pearl and textured papers reflect"
                        + " differently in a scanner than under a lamp.",
                "Let prints dry: 24 hours are recommended, and the same time for all that are"
                        + " compared.",
                "Scan with a warm scanner, automatic corrections off, 16 bit, at least 300 samples"
                        + " per inch.",
                "Compare papers only with one instrument, one mode and one backing.",
                "Viewing light decides how shadows look (ISO 3664).");
    }
}
