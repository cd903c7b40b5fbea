package org.printassay.scan;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import org.printassay.problem.Problem;

/**
 * What decides how a JPEG is decoded, gathered from its segments: frame, quantisation tables, first
 * scan and colour transform (ISO/IEC 10918-1, Annex B).
 */
final class JpegFrame {
    /**
     * Most memory for coefficients, bytes. A JPEG whose components or coefficients come in several
     * scans is held as a whole, outside the heap; an A4 page at 600 samples an inch takes 209
     * million.
     */
    static final long LARGEST_HELD = 256L << 20;

    /** Frames are read that are baseline, extended or progressive, with Huffman codes. */
    private static final int LAST_READ_FRAME = 0xc2;

    private static final int PROGRESSIVE = 0xc2;
    private static final int TABLES = 0xdb;
    private static final int SCAN = 0xda;
    private static final int APP14 = 0xee;
    private static final int COEFFICIENT_BYTES = 2;
    private static final byte[] TRANSFORM_NAME = "Adobe".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] RGB = {'R', 'G', 'B'};

    private final String name;
    private final int[][] tables = new int[4][];
    private byte[] frame = new byte[0];
    private boolean progressive;
    private boolean saysTransform;
    private boolean saysRgb;
    private int inFirstScan;

    JpegFrame(String name) {
        this.name = name;
    }

    /** Of a JPEG in memory, up to its image data. */
    static JpegFrame of(String name, byte[] jpeg) throws IOException, Problem {
        JpegFrame frame = new JpegFrame(name);
        JpegSegments segments = new JpegSegments(new ByteArrayInputStream(jpeg), name);
        do {
            segments.next();
        } while (!frame.take(segments.marker(), segments.body()));
        return frame;
    }

    /** Takes a segment into account; true when image data follow it. */
    boolean take(int marker, byte[] body) throws Problem {
        boolean starts =
                marker >= 0xc0
                        && marker <= 0xcf
                        && marker != 0xc4
                        && marker != 0xc8
                        && marker != 0xcc;
        if (starts && marker > LAST_READ_FRAME) {
            throw Problem.input(
                    name, "is a lossless, layered or arithmetic JPEG. Save the scan as TIFF.");
        }
        if (starts && frame.length == 0) {
            if (body.length < 6) {
                throw ScanFiles.endsEarly(name, "in its frame header");
            }
            frame = body;
            progressive = marker == PROGRESSIVE;
        } else if (marker == TABLES) {
            quantisation(body);
        } else if (marker == APP14) {
            boolean says =
                    body.length >= 12
                            && Arrays.equals(body, 0, TRANSFORM_NAME.length, TRANSFORM_NAME, 0, 5);
            saysTransform |= says;
            saysRgb = says ? body[11] == 0 : saysRgb;
        } else if (marker == SCAN || marker == 0xd9) {
            if (marker != SCAN || frame.length == 0) {
                throw Problem.input(name, "the JPEG has no size. Save the scan anew.");
            }
            inFirstScan = body.length == 0 ? 0 : body[0] & 0xff;
            return true;
        }
        return false;
    }

    /** Tables of a DQT segment (B.2.4.1) by number; a cut one is left away. */
    private void quantisation(byte[] body) {
        int at = 0;
        while (at < body.length) {
            int wide = (body[at] & 0xf0) == 0 ? 1 : 2;
            int number = body[at] & 3;
            at++;
            if (at + 64 * wide > body.length) {
                return;
            }
            int[] table = new int[64];
            for (int i = 0; i < table.length; i++) {
                table[i] = body[at++] & 0xff;
                if (wide == 2) {
                    table[i] = table[i] << 8 | (body[at++] & 0xff);
                }
            }
            tables[number] = table;
        }
    }

    int bits() {
        return frame[0];
    }

    int height() {
        return (frame[1] & 0xff) << 8 | (frame[2] & 0xff);
    }

    int width() {
        return (frame[3] & 0xff) << 8 | (frame[4] & 0xff);
    }

    int components() {
        return frame[5] & 0xff;
    }

    /** Whether a segment (APP14) says which colour transform was made. */
    boolean saysTransform() {
        return saysTransform;
    }

    /** Whether the components are named R, G and B. */
    boolean isNamedRgb() {
        return frame.length >= 15
                && frame[6] == RGB[0]
                && frame[9] == RGB[1]
                && frame[12] == RGB[2];
    }

    /**
     * How coarsely it is coded, where its tables are there.
     *
     * @param unsaid the colour transform where no segment says one: 0 none
     */
    Optional<LossyCoding> coding(OptionalInt unsaid) {
        if (frame.length < 9) {
            return Optional.empty();
        }
        int[] luma = tables[frame[8] & 3];
        int[] chroma = frame.length >= 12 ? tables[frame[11] & 3] : luma;
        return luma == null || chroma == null
                ? Optional.empty()
                : Optional.of(
                        LossyCoding.of(
                                luma,
                                chroma,
                                components() == 3
                                        && (saysTransform ? saysRgb : unsaid.orElse(1) == 0)));
    }

    /** Refuses what the decoder would hold as a whole and that is too large for that. */
    void refuseTooLargeToHold() throws Problem {
        boolean held = progressive || inFirstScan < components();
        long bytes = (long) width() * height() * components() * COEFFICIENT_BYTES;
        if (held && bytes > LARGEST_HELD) {
            throw Problem.input(
                    name,
                    (progressive ? "is a progressive JPEG of " : "is a JPEG in several passes of ")
                            + width()
                            + " x "
                            + height()
                            + " pixels, which takes more memory than there may be. Save it as"
                            + " TIFF, PNG or as a plain (baseline) JPEG.");
        }
    }
}
