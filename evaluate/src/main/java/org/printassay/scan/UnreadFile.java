package org.printassay.scan;

import java.util.Optional;

/**
 * Words for a file that is no picture of a format that is read, from its first bytes. The
 * signatures of other formats are from memory.
 */
final class UnreadFile {
    private UnreadFile() {}

    /** What is wrong and what to do; empty for what may be text. */
    static Optional<String> why(byte[] head) {
        if (head.length == 0) {
            return Optional.of("is empty. Copy it again, or scan again.");
        }
        if (mayBeMeasurement(head) || !(isBinary(head) || isPixmap(head) || isGif(head))) {
            return Optional.empty();
        }
        String kind = kind(head);
        return Optional.of(
                kind.isEmpty()
                        ? "is neither a picture that printassay reads nor text. Save a scan as TIFF,"
                                + " PNG, JPEG or PDF, a measurement as text."
                        : "is a "
                                + kind
                                + " picture, which is not read. Save the scan as TIFF or PNG.");
    }

    /**
     * Text with a byte order mark, or in UTF-16 without one; and spreadsheets, which the reader of
     * measurements has words for.
     */
    private static boolean mayBeMeasurement(byte[] head) {
        return at(head, 0, 0xff, 0xfe)
                || at(head, 0, 0xfe, 0xff)
                || at(head, 0, 0xef, 0xbb, 0xbf)
                || at(head, 0, 'P', 'K', 3, 4)
                || at(head, 0, 0xd0, 0xcf, 0x11, 0xe0)
                || isTwoBytesALetter(head);
    }

    /** Nearly every second byte is zero, and no other. */
    private static boolean isTwoBytesALetter(byte[] head) {
        int[] zeros = new int[2];
        for (int i = 0; i < head.length; i++) {
            zeros[i % 2] += head[i] == 0 ? 1 : 0;
        }
        int letters = head.length / 2;
        return Math.min(zeros[0], zeros[1]) == 0 && Math.max(zeros[0], zeros[1]) > 0.8 * letters;
    }

    private static boolean isBinary(byte[] head) {
        for (byte b : head) {
            if (b == 0) {
                return true;
            }
        }
        return false;
    }

    /**
     * A portable pixmap may be text up to its last byte; a line of a measurement may be like it.
     */
    private static boolean isPixmap(byte[] head) {
        boolean marked =
                head.length > 2
                        && head[0] == 'P'
                        && head[1] >= '4'
                        && head[1] <= '6'
                        && Character.isWhitespace(head[2]);
        boolean binary = false;
        for (byte b : head) {
            binary |= b <= 0;
        }
        return marked && binary;
    }

    /** Cut off behind its signature, it holds no byte that text has not. */
    private static boolean isGif(byte[] head) {
        return at(head, 0, 'G', 'I', 'F', '8', '7', 'a')
                || at(head, 0, 'G', 'I', 'F', '8', '9', 'a');
    }

    private static String kind(byte[] head) {
        if (at(head, 4, 'f', 't', 'y', 'p')) {
            return at(head, 8, 'a', 'v') ? "AVIF" : "HEIC";
        }
        if (at(head, 0, 'B', 'M')) {
            return "BMP";
        }
        if (at(head, 0, 'G', 'I', 'F', '8')) {
            return "GIF";
        }
        if (at(head, 0, 'R', 'I', 'F', 'F') && at(head, 8, 'W', 'E', 'B', 'P')) {
            return "WebP";
        }
        if (at(head, 4, 'j', 'P', ' ', ' ') || at(head, 0, 0xff, 0x4f, 0xff, 0x51)) {
            return "JPEG 2000";
        }
        if (at(head, 4, 'J', 'X', 'L', ' ') || at(head, 0, 0xff, 0x0a)) {
            return "JPEG XL";
        }
        if (at(head, 0, '8', 'B', 'P', 'S')) {
            return "PSD";
        }
        return isPixmap(head) ? "PNM" : "";
    }

    /** Whether these bytes stand there. */
    static boolean at(byte[] head, int from, int... wanted) {
        if (head.length < from + wanted.length) {
            return false;
        }
        for (int i = 0; i < wanted.length; i++) {
            if (head[from + i] != (byte) wanted[i]) {
                return false;
            }
        }
        return true;
    }
}
