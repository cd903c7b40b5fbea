package org.printassay.scan;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Turns rows of packed 8 or 16 bit samples into 16 bit codes: undoes horizontal differencing (TIFF
 * 6.0 section 14), inverts white-is-zero grey, drops extra samples such as alpha. Colours that
 * alpha is multiplied into ("associated", TIFF 6.0 section 18) are divided by it again.
 */
final class SampleRows {
    /** Alpha is not multiplied into the colours. */
    static final int NO_ALPHA = -1;

    private final int width;
    private final int stored;
    private final int kept;
    private final int bits;
    private final ByteOrder order;
    private final boolean differenced;
    private final boolean inverted;
    private final int alpha;
    private final char[] unpacked;

    /**
     * Rows of one stream.
     *
     * @param width pixels a row
     * @param stored samples a pixel in the stream
     * @param kept how many of them are wanted, the first ones
     * @param bits 8 or 16
     * @param differenced whether samples are differences to their left neighbour
     * @param inverted whether 0 is white
     */
    SampleRows(
            int width,
            int stored,
            int kept,
            int bits,
            ByteOrder order,
            boolean differenced,
            boolean inverted) {
        this(width, stored, kept, bits, order, differenced, inverted, NO_ALPHA);
    }

    /**
     * Rows of one stream whose colours alpha may be multiplied into.
     *
     * @param alpha which of the stored samples that is, from 0; {@link #NO_ALPHA} without
     */
    SampleRows(
            int width,
            int stored,
            int kept,
            int bits,
            ByteOrder order,
            boolean differenced,
            boolean inverted,
            int alpha) {
        this.width = width;
        this.stored = stored;
        this.kept = kept;
        this.bits = bits;
        this.order = order;
        this.differenced = differenced;
        this.inverted = inverted;
        this.alpha = alpha;
        this.unpacked = new char[width * stored];
    }

    /** Bytes of one packed row. */
    int rowBytes() {
        return width * stored * bits / 8;
    }

    /**
     * Unpacks a row.
     *
     * @param packed holds the row from {@code from}; not modified
     * @param out receives the codes (modified), the first pixel at {@code at}
     * @param pixels how many pixels are wanted
     * @param stride distance of neighbouring pixels in {@code out}
     */
    void unpack(byte[] packed, int from, char[] out, int at, int pixels, int stride) {
        char[] row = unpacked;
        int count = width * stored;
        if (bits == 16) {
            ByteBuffer.wrap(packed, from, 2 * count).order(order).asCharBuffer().get(row);
        } else {
            for (int i = 0; i < count; i++) {
                row[i] = (char) (packed[from + i] & 0xff);
            }
        }
        if (differenced) {
            int mask = bits == 16 ? 0xffff : 0xff;
            for (int i = stored; i < count; i++) {
                row[i] = (char) ((row[i] + row[i - stored]) & mask);
            }
        }
        if (alpha != NO_ALPHA) {
            divide(row, pixels);
        }
        int scale = bits == 16 ? 1 : 257;
        if (scale == 1 && !inverted && kept == stored && stride == kept) {
            System.arraycopy(row, 0, out, at, pixels * kept);
            return;
        }
        int flip = inverted ? 0xffff : 0;
        for (int x = 0, source = 0, target = at; x < pixels; x++, source += stored) {
            for (int c = 0; c < kept; c++) {
                out[target + c] = (char) ((row[source + c] * scale) ^ flip);
            }
            target += stride;
        }
    }

    private void divide(char[] row, int pixels) {
        int full = bits == 16 ? 0xffff : 0xff;
        for (int at = 0; at < pixels * stored; at += stored) {
            divide(row, at, kept, row[at + alpha], full, 1);
        }
    }

    /**
     * Divides colours by an alpha that stands in a plane of its own.
     *
     * @param row 16 bit codes (modified)
     * @param opaque alpha of each pixel, 16 bit codes; not modified
     * @param bits of the file, 8 or 16, in whose codes the result is
     */
    static void divide(char[] row, char[] opaque, int channels, int bits) {
        int scale = bits == 16 ? 1 : 257;
        for (int x = 0; x < opaque.length; x++) {
            divide(row, x * channels, channels, opaque[x], 0xffff, scale);
        }
    }

    /**
     * Divides the colours of one pixel by its alpha. Where it is wholly transparent they are not
     * known, and stay as they are. So do colours that alpha cannot have been multiplied into, for
     * they are larger.
     *
     * @param row the pixel's colours from {@code at} (modified)
     * @param full what stands for wholly opaque
     * @param scale from one code of the file to the next; results are codes of the file
     */
    private static void divide(char[] row, int at, int colours, int opaque, int full, int scale) {
        int most = 0;
        for (int c = at; c < at + colours; c++) {
            most = Math.max(most, row[c]);
        }
        if (opaque == full || opaque < most || opaque == 0) {
            return;
        }
        for (int c = at; c < at + colours; c++) {
            double colour = (double) row[c] * full / opaque;
            row[c] = (char) (scale * Math.round(colour / scale));
        }
    }

    /** Mirrors a row left to right, in place. */
    static void mirror(char[] row, int width, int channels) {
        for (int left = 0, right = width - 1; left < right; left++, right--) {
            for (int c = 0; c < channels; c++) {
                char swap = row[left * channels + c];
                row[left * channels + c] = row[right * channels + c];
                row[right * channels + c] = swap;
            }
        }
    }
}
