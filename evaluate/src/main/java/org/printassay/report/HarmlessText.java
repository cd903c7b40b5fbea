package org.printassay.report;

/** Text from outside as it may stand in a page. */
final class HarmlessText {
    private HarmlessText() {}

    /**
     * A finished page without characters that turn the direction of what follows, and without
     * controls that HTML does not allow; a lone half of a character becomes U+FFFD. None of them is
     * the page's own.
     */
    static String inPage(String page) {
        StringBuilder out = null;
        for (int i = 0; i < page.length(); i++) {
            char c = page.charAt(i);
            char good = harmless(page, i, c);
            if (good != c && out == null) {
                out = new StringBuilder(page.length()).append(page, 0, i);
            }
            if (out != null && good != 0) {
                out.append(good);
            }
        }
        return out == null ? page : out.toString();
    }

    /** The character, another in its place, or 0 for none. */
    private static char harmless(String page, int at, char c) {
        if (c >= ' ' && c < 0x7f) {
            return c;
        }
        if (c < ' ') {
            return c == '\n' || c == '\t' || c == '\r' ? c : ' ';
        }
        if (c <= 0x9f) {
            return ' ';
        }
        boolean turns = (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
        if (turns) {
            return 0;
        }
        if (Character.isHighSurrogate(c)) {
            boolean whole = at + 1 < page.length() && Character.isLowSurrogate(page.charAt(at + 1));
            return whole ? c : '\ufffd';
        }
        if (Character.isLowSurrogate(c)) {
            boolean whole = at > 0 && Character.isHighSurrogate(page.charAt(at - 1));
            return whole ? c : '\ufffd';
        }
        return c == '\ufffe' || c == '\uffff' ? '\ufffd' : c;
    }
}
