package org.printassay.report.paged;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Bidi;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;

/**
 * The one typeface of a document, embedded. What it has no glyph for is shown as a square and keeps
 * its characters for readers and searches; text from right to left is laid out as it is read.
 */
final class Typeface {
    private static final String FILE =
            "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** A white square, which the typeface has. */
    private static final int SUBSTITUTE = 0x25A1;

    private static final int NARROW_SPACE = 0x202F;
    private static final int FIXED_SPACE = 0xA0;
    private static final String CUT = "\u2026";

    private final PDType0Font font;
    private final Map<Integer, Glyph> glyphs = new HashMap<>();

    /** One glyph: its code, its advance for one point of size, whether it is the wanted one. */
    private record Glyph(String code, double width, boolean own) {}

    /**
     * A line ready to show.
     *
     * @param codes hexadecimal
     * @param width for one point of size
     * @param actual the text where the glyphs alone do not tell it, else null
     */
    record Shown(String codes, double width, @Nullable String actual) {}

    Typeface(PDDocument document) throws IOException {
        try (InputStream file =
                Objects.requireNonNull(PDDocument.class.getResourceAsStream(FILE))) {
            font = PDType0Font.load(document, file, true);
        }
    }

    PDType0Font font() {
        return font;
    }

    /** Advance of plain text for one point of size. */
    double width(String text) {
        double width = 0;
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            width += glyph(c).width();
        }
        return width;
    }

    /** Plain text as glyphs. */
    Shown show(String text) {
        String seen = inOrder(text);
        boolean told = seen.equals(text);
        StringBuilder codes = new StringBuilder(4 * seen.length());
        double width = 0;
        for (int i = 0; i < seen.length(); ) {
            int c = seen.codePointAt(i);
            i += Character.charCount(c);
            Glyph glyph = glyph(c);
            codes.append(glyph.code());
            width += glyph.width();
            told &= glyph.own();
        }
        return new Shown(codes.toString(), width, told ? null : text);
    }

    /** From left to right as it is seen. */
    private static String inOrder(String text) {
        char[] characters = text.toCharArray();
        if (!Bidi.requiresBidi(characters, 0, characters.length)) {
            return text;
        }
        Bidi bidi = new Bidi(text, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
        int runs = bidi.getRunCount();
        byte[] levels = new byte[runs];
        Object[] parts = new Object[runs];
        for (int i = 0; i < runs; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            String part = text.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
            boolean backwards = (levels[i] & 1) == 1;
            parts[i] = backwards ? new StringBuilder(part).reverse().toString() : part;
        }
        Bidi.reorderVisually(levels, 0, parts, 0, runs);
        StringBuilder out = new StringBuilder(text.length());
        for (Object part : parts) {
            out.append(part);
        }
        return out.toString();
    }

    /**
     * Plain text in lines; words longer than a line are broken.
     *
     * @param most lines at most; what is left is cut, and a sign says so
     */
    List<String> wrap(String text, double size, double width, int most) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        double used = 0;
        for (String word : words(text)) {
            double wide = width(word) * size;
            if (used + wide - trailing(word) * size > width && used > 0) {
                lines.add(line.toString().stripTrailing());
                line.setLength(0);
                used = 0;
                if (lines.size() > most) {
                    break;
                }
            }
            if (wide - trailing(word) * size <= width) {
                line.append(word);
                used += wide;
            } else {
                used = broken(word, size, width, most, lines, line);
            }
        }
        if (line.length() > 0 || lines.isEmpty()) {
            lines.add(line.toString().stripTrailing());
        }
        if (lines.size() > most) {
            String last = lines.get(most - 1);
            int end =
                    last.length() < 2 ? last.length() : last.offsetByCodePoints(last.length(), -2);
            lines = new ArrayList<>(lines.subList(0, most));
            lines.set(most - 1, last.substring(0, end) + CUT);
        }
        return lines;
    }

    /** Puts a word that is longer than a line onto several; what the last one uses. */
    private double broken(
            String word,
            double size,
            double width,
            int most,
            List<String> lines,
            StringBuilder line) {
        double used = 0;
        for (int i = 0; i < word.length() && lines.size() <= most; ) {
            int c = word.codePointAt(i);
            i += Character.charCount(c);
            double wide = glyph(c).width() * size;
            if (used + wide > width && used > 0) {
                lines.add(line.toString());
                line.setLength(0);
                used = 0;
            }
            line.appendCodePoint(c);
            used += wide;
        }
        return used;
    }

    private double trailing(String word) {
        return word.endsWith(" ") ? glyph(' ').width() : 0;
    }

    /** Parts that stay on one line, each with the space after it. */
    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        int start = 0;
        for (int i = 0; i < text.length(); i++) {
            boolean last = i + 1 == text.length();
            if (last || (text.charAt(i) == ' ' && text.charAt(i + 1) != ' ')) {
                words.add(text.substring(start, i + 1));
                start = i + 1;
            }
        }
        return words;
    }

    private Glyph glyph(int c) {
        return glyphs.computeIfAbsent(c, this::find);
    }

    private Glyph find(int c) {
        try {
            return made(c == NARROW_SPACE ? FIXED_SPACE : c, true);
        } catch (IllegalArgumentException none) {
            return made(SUBSTITUTE, false);
        }
    }

    private Glyph made(int c, boolean own) {
        try {
            String text = Character.toString(c);
            String code = HexFormat.of().formatHex(font.encode(text));
            double width = font.getStringWidth(text) / 1000;
            font.addToSubset(c);
            return new Glyph(code, width, own);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
