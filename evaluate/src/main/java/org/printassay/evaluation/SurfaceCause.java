package org.printassay.evaluation;

import java.util.Locale;

/** Whose a line or band is. */
public enum SurfaceCause {
    /**
     * The print's: it turns with the sheet, bare paper or another tint lacks it, or it runs as no
     * scanner's can.
     */
    PRINT,
    /**
     * The scanner's: bare paper shows it, it keeps to a column of the scan on a sheet that lies a
     * little turned, or a scan of the turned sheet lacks it.
     */
    SCANNER,
    /** It may be either; a scan of the sheet turned by half or a quarter tells. */
    UNDECIDED;

    /** Name in files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
