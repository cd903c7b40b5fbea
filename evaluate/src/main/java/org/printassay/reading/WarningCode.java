package org.printassay.reading;

import java.util.Locale;

/** The closed list of warning codes; {@link #key} is what scripts see. */
public enum WarningCode {
    /** The print could not be compared with the printer's profile. */
    AIM_NOT_JUDGED,
    /** No profile: relative results only. */
    PLAIN_SCAN,
    /** A calibration is used with another paper, printer or scanner, or none is named. */
    CALIBRATION_PAPER,
    /** A calibration is used with other settings of the scanner. */
    CALIBRATION_SETTINGS,
    /** Colours lie outside those that the calibration was made from. */
    CALIBRATION_RANGE,
    /** A measurement may be of another print than the scan. */
    MEASUREMENT_DOUBTFUL,
    /** Levels come from a scan without profile and hold roughly. */
    THRESHOLD_APPROXIMATE,
    /** Absolute lightness holds only if automatic corrections were off. */
    EXPOSURE_UNKNOWN,
    /** The embedded profile cannot be used; read as a plain scan. */
    PROFILE_UNUSABLE,
    /** Grey scan: colour is not judged. */
    GREY_SCAN,
    /** Each RGB was measured once; no repeatability. */
    NO_REPEATS,
    /** Sheet printed at another size. */
    PRINTED_SCALE,
    /** Declared resolution missing. */
    RESOLUTION_MISSING,
    /** Declared resolution wrong. */
    RESOLUTION_WRONG,
    /** Sampling is coarse. */
    RESOLUTION_LOW,
    /** Eight bits: shadows are coarse. */
    EIGHT_BIT,
    /** Compressed with loss. */
    LOSSY,
    /** Paper or black was put at the end of the range. */
    AUTOMATIC_EXPOSURE,
    /** Paper was made neutral. */
    AUTOMATIC_COLOUR,
    /** Edges are wider than the sampling. */
    BLURRED,
    /** Pixels were computed between fewer real ones. */
    UPSAMPLED,
    /** The profile makes colours that no print has. */
    PROFILE_DOUBTFUL,
    /** Many codes at the ends of the range. */
    CLIPPED,
    /** Gaps in the histogram: tones were edited. */
    HISTOGRAM_GAPS,
    /** Sharpening halos along patch edges. */
    SHARPENED,
    /** A camera's picture: light is not controlled. */
    PHOTOGRAPH,
    /** The sheet code was not read; the chart is what the user named. */
    SHEET_CODE_UNREAD,
    /** Some markers were not found. */
    MARKERS_MISSING,
    /** Part of the sheet is missing or covered; some patches were not read. */
    PATCHES_MISSING,
    /** Many patches were dusty or uneven. */
    DUSTY,
    /** A step or streak runs over print and bare paper alike. */
    SCANNER_STREAK,
    /** Some patches differ from others of the same code. */
    UNLIKE_TWINS,
    /** Patches of one code lie far apart over the whole sheet; scanner or print. */
    SCATTERED,
    /** They do, and bare paper too. */
    SCANNER_UNEVEN,
    /** Scans of what may be one print disagree. */
    REPEATS_DIFFER,
    /** Some parts of the sheet depart from their twins elsewhere. */
    DISTURBED,
    /** Light from outside came in at an edge, or the print has less ink there. */
    LEAKED_LIGHT,
    /** Some patches without twins are far from what the codes around them lead one to expect. */
    OUT_OF_LINE,
    /** Light was uneven and was evened out. */
    UNEVEN_LIGHT,
    /** Stray light was found and removed. */
    STRAY_LIGHT,
    /** Stray light could not be estimated: Dmax is scanner-limited. */
    SCANNER_LIMITED,
    /** Windows inside the picture differ from the bare margin. */
    WINDOWS_INKED,
    /** Dried for less than an hour. */
    DRYING,
    /** Tone needs neutrals that were not there. */
    TONE_NOT_JUDGED,
    /** Shadow levels were not there. */
    SHADOWS_NOT_JUDGED,
    /** Highlight levels were not there. */
    HIGHLIGHTS_NOT_JUDGED,
    /** Neutrality needs colour. */
    NEUTRALITY_NOT_JUDGED,
    /** Paper white was not there. */
    WHITE_NOT_JUDGED,
    /** Black was not there. */
    BLACK_NOT_JUDGED,
    /** Colours cannot be judged. */
    COLOURS_NOT_JUDGED,
    /** Evenness cannot be judged. */
    EVENNESS_NOT_JUDGED,
    /** Lines and bands are not judged. */
    LINES_NOT_JUDGED,
    /** Some of grain, mottle, sharpness and vignettes are not judged. */
    TEXTURE_NOT_JUDGED;

    /** Name in files: lower case with hyphens. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
