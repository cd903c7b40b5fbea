package org.printassay.cli;

import java.nio.file.Path;
import java.util.List;

/** Text from outside made fit for a terminal. */
final class PlainText {
    private PlainText() {}

    /** Longer words than this, from a file gone wrong, are cut: they say nothing more. */
    private static final int LONGEST_WORD = 120;

    /** One line: control, escape and direction characters become question marks. */
    static String line(String text) {
        return harmless(text).replaceAll("(\\S{" + LONGEST_WORD + "})\\S+", "$1...");
    }

    /** Lines of our own layout, each as {@link #line}. */
    static List<String> lines(String text) {
        return text.lines().map(PlainText::line).toList();
    }

    /** A path in full, however long, on one line. */
    static String path(Path path) {
        return harmless(path.toString());
    }

    private static String harmless(String text) {
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
