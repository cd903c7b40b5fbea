package org.printassay.report.draw;

import java.util.Locale;

/** Pens and fills by meaning; {@link #cssClass} names each in the style sheet. */
public enum Ink {
    /** Faint line for reading values. */
    GRID,
    /** Line of an axis. */
    AXIS,
    /** What was aimed at. */
    AIM,
    /** What was measured, line. */
    MEASURED,
    /** What was measured, filled. */
    MEASURED_FILL,
    /** Height of what was measured. */
    BAR,
    /** What was measured, outline only. */
    MEASURED_OUTLINE,
    /** Outline of something that does not count. */
    FAINT_OUTLINE,
    /** Where the truth lies, area. */
    BAND,
    /** An interval, line. */
    WHISKER,
    /** A limit, line. */
    THRESHOLD,
    /** Filled sign. */
    SIGN,
    /** Sign of which only the outline is drawn. */
    SIGN_OUTLINE,
    /** Neutral grey that colours are shown on. */
    SURROUND,
    /** Outline of a patch in a picture, dark ground of {@link #FOUND}. */
    FOUND_UNDER,
    /** Outline of a patch in a picture. */
    FOUND,
    /** Outline of a marker in a picture. */
    FOUND_MARKER,
    /** First curve of several. */
    SERIES_1,
    /** Second curve of several. */
    SERIES_2,
    /** Third curve of several. */
    SERIES_3,
    /** Fourth curve of several. */
    SERIES_4,
    /** Text. */
    TEXT,
    /** Less important text. */
    TEXT_QUIET,
    /** Text that names what matters. */
    TEXT_STRONG;

    /** Name in the style sheet. */
    public String cssClass() {
        return "ink-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
