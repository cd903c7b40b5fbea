package org.printassay.evaluation;

import java.util.Locale;

/** Sentences with numbers in them, written alike in every country. */
final class Say {
    private Say() {}

    /** As {@link String#format}. */
    static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
