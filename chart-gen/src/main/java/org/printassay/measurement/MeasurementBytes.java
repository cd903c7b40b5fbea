package org.printassay.measurement;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.printassay.problem.Problem;

/** Bytes of a measurement file to its text; refuses pictures and other files that are no text. */
final class MeasurementBytes {
    /** How much of a file's beginning tells what it is. */
    private static final int HEAD = 4096;

    /** Text hardly ever holds zero bytes; of UTF-16 in Latin letters nearly every second is one. */
    private static final double TEXT_ZEROS = 0.01;

    private static final double UTF16_ZEROS = 0.8;

    /** First bytes, in hexadecimal, and what such a file is. */
    private enum Kind {
        TIFF("49492a00", "is a picture (TIFF)"),
        TIFF_BIG_ENDIAN("4d4d002a", "is a picture (TIFF)"),
        BIG_TIFF("49492b00", "is a picture (TIFF)"),
        BIG_TIFF_BIG_ENDIAN("4d4d002b", "is a picture (TIFF)"),
        PNG("89504e47", "is a picture (PNG)"),
        JPEG("ffd8ff", "is a picture (JPEG)"),
        GIF("47494638", "is a picture (GIF)"),
        PDF("255044462d", "is a PDF"),
        ZIP("504b0304", "is a packed file or spreadsheet"),
        SPREADSHEET("d0cf11e0", "is a spreadsheet or other office file"),
        GZIP("1f8b08", "is a packed file");

        private final String first;
        private final String words;

        Kind(String first, String words) {
            this.first = first;
            this.words = words;
        }
    }

    private MeasurementBytes() {}

    static String text(String name, byte[] bytes) throws Problem {
        byte[] head = Arrays.copyOf(bytes, Math.min(HEAD, bytes.length));
        for (Kind kind : Kind.values()) {
            if (hex(head, kind.first.length() / 2).equals(kind.first)) {
                throw noText(name, kind.words);
            }
        }
        if (hex(head, 2).equals("fffe")) {
            return text(bytes, 2, StandardCharsets.UTF_16LE);
        }
        if (hex(head, 2).equals("feff")) {
            return text(bytes, 2, StandardCharsets.UTF_16BE);
        }
        if (hex(head, 3).equals("efbbbf")) {
            return text(bytes, 3, StandardCharsets.UTF_8);
        }
        double even = zeros(head, 0);
        double odd = zeros(head, 1);
        if (odd > UTF16_ZEROS && even < TEXT_ZEROS) {
            return text(bytes, 0, StandardCharsets.UTF_16LE);
        }
        if (even > UTF16_ZEROS && odd < TEXT_ZEROS) {
            return text(bytes, 0, StandardCharsets.UTF_16BE);
        }
        if (even + odd > 2 * TEXT_ZEROS) {
            throw noText(name, "is not text");
        }
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            return text(bytes, 0, StandardCharsets.ISO_8859_1);
        }
    }

    private static Problem noText(String name, String what) {
        return Problem.input(
                name,
                what
                        + ", so it cannot be a measurement file. Export the readings as ISO 28178"
                        + " text, CSV or CxF3.");
    }

    private static String text(byte[] bytes, int start, Charset charset) {
        return new String(bytes, start, bytes.length - start, charset);
    }

    private static String hex(byte[] head, int count) {
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < Math.min(count, head.length); i++) {
            hex.append(String.format(Locale.ROOT, "%02x", head[i] & 0xFF));
        }
        return hex.toString();
    }

    /** Share of zeros among every second byte. */
    private static double zeros(byte[] head, int first) {
        int zeros = 0;
        for (int i = first; i < head.length; i += 2) {
            zeros += head[i] == 0 ? 1 : 0;
        }
        return zeros / Math.max(1.0, head.length / 2.0);
    }
}
