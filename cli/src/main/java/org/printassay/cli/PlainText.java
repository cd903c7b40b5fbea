package org.printassay.cli;

/** Text from outside made fit for a terminal. */
final class PlainText {
    private PlainText() {}

    /** One line: control, escape and direction characters become question marks. */
    static String line(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints()
                .forEach(
                        c -> {
                            boolean harmful =
                                    Character.isISOControl(c)
                                            || Character.getType(c) == Character.FORMAT
                                            || Character.getType(c) == Character.LINE_SEPARATOR
                                            || Character.getType(c)
                                                    == Character.PARAGRAPH_SEPARATOR;
                            if (c == '\n' || c == '\r' || c == '\t') {
                                out.append(' ');
                            } else {
                                out.appendCodePoint(harmful ? '?' : c);
                            }
                        });
        return out.toString();
    }
}
