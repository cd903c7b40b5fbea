package org.printassay.report.paged;

import java.text.Normalizer;

/** Text from anywhere made fit for a page: no controls, no directions, no halves of characters. */
final class VisibleText {
    private static final int FIRST_COMBINING = 0x300;
    private static final int REPLACEMENT = 0xFFFD;

    private VisibleText() {}

    /** One run of visible characters; line ends and tabs become spaces. */
    static String of(String text) {
        StringBuilder out = new StringBuilder(text.length());
        boolean composed = true;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            composed &= c < FIRST_COMBINING;
            if (c < 0x7f && c >= ' ') {
                out.append((char) c);
            } else {
                other(out, c);
            }
        }
        return composed ? out.toString() : Normalizer.normalize(out, Normalizer.Form.NFC);
    }

    private static void other(StringBuilder out, int c) {
        switch (Character.getType(c)) {
            case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR ->
                    out.append(' ');
            case Character.SURROGATE -> out.appendCodePoint(REPLACEMENT);
            case Character.FORMAT -> {
                // Directions, joiners and soft hyphens: nothing to be seen.
            }
            default -> {
                if (!selectsVariation(c)) {
                    out.appendCodePoint(c);
                }
            }
        }
    }

    private static boolean selectsVariation(int c) {
        return (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xE0100 && c <= 0xE01EF);
    }
}
