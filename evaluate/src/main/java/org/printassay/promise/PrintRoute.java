package org.printassay.promise;

import org.printassay.colour.icc.Intent;

/**
 * How a file's colours are meant to reach the printer.
 *
 * @param intent rendering intent of the conversion to the printer's profile
 * @param blackPointCompensation whether it was on; the absolute intent ignores it
 */
public record PrintRoute(Intent intent, boolean blackPointCompensation) {
    /** The usual lab route (common practice, no source). */
    public static final PrintRoute USUAL = new PrintRoute(Intent.RELATIVE, true);

    /** In running text: {@code relative colorimetric with black point compensation}. */
    public String words() {
        if (intent == Intent.ABSOLUTE) {
            return intent.words();
        }
        return intent.words()
                + (blackPointCompensation ? " with" : " without")
                + " black point compensation";
    }
}
