package org.printassay.evaluation;

import java.util.Locale;
import org.printassay.surface.FoundLine;

/**
 * How much lighter or darker than its tint a line is, in words: percent of the tint's light; L*
 * where a percentage says nothing, in tints darker than L* 8 and for lines that have more than
 * twice the light of their tint.
 */
public final class LineWords {
    private static final double PERCENT = 100;

    private LineWords() {}

    /** For example "15 %" or "31 L*"; the sign is not told. */
    public static String amount(FoundLine line) {
        double contrast = Math.abs(line.contrast());
        Double deltaL = line.deltaL();
        if (deltaL != null && (contrast > 1 || line.isInTheDark())) {
            double size = Math.abs(deltaL);
            return String.format(Locale.ROOT, size < 1 ? "%.1f L*" : "%.0f L*", size);
        }
        return contrast > 1
                ? "more than 100 %"
                : String.format(Locale.ROOT, "%.0f %%", PERCENT * contrast);
    }
}
