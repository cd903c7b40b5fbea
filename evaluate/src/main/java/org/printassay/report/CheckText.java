package org.printassay.report;

import java.util.List;

/** Headings and sentences that every check has, on screen and on paper. */
public final class CheckText {
    public static final String KIND = "check against a baseline";
    public static final String CHANGED = "What changed";
    public static final String BEFORE = "Before you rely on it";
    public static final String AGAINST = "Changes against what is allowed";
    public static final String AGAINST_LEAD =
            "Print less baseline. Every tolerance is drawn equally wide; strokes are intervals of"
                    + " \u00b1\u00a0U.";
    public static final String NUMBERS = "In numbers";
    public static final String CURVES = "Before and now";
    public static final String LINES = "Lines and bands";
    public static final String PATCHES = "Patches furthest apart";
    public static final String RULE = "How it was decided";
    public static final String END =
            "Made by printassay. Changes are print minus baseline; colours are CIELAB under D50,"
                    + " 2\u00b0 observer; swatches are shown in sRGB and clipped to it. The same"
                    + " figures for scripts:";

    private CheckText() {}

    /** Names of the columns of the table of changes. */
    public static List<String> changeHeads() {
        return List.of(
                "Quantity", "Baseline", "Print", "Change", "\u00b1\u00a0U", "Allowed", "Outcome");
    }

    /** What the lines of the curves mean. */
    static String curvesLead(boolean several) {
        return "Solid lines and discs: the baseline"
                + (several ? ", its newest print" : "")
                + ". Broken lines and rings: the print.";
    }
}
