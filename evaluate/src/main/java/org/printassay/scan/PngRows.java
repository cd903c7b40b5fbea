package org.printassay.scan;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.zip.ZipException;

/** Unfiltered rows of one PNG image or interlace pass (ISO/IEC 15948 clause 9). */
final class PngRows {
    private final InputStream data;
    private final PngHeader header;
    private final int width;
    private final int pixelBytes;
    private final SampleRows samples;
    private byte[] line;
    private byte[] above;
    private final byte[] wide;

    PngRows(InputStream data, PngHeader header, int width) {
        this.data = data;
        this.header = header;
        this.width = width;
        int bitsPerPixel = header.stored() * header.depth();
        this.pixelBytes = Math.max(1, bitsPerPixel / 8);
        int lineBytes = (int) (((long) width * bitsPerPixel + 7) / 8);
        this.line = new byte[lineBytes];
        this.above = new byte[lineBytes];
        boolean packed = header.depth() < 8 || header.colourType() == 3;
        this.wide = new byte[packed ? width * header.channels() : 0];
        this.samples =
                new SampleRows(
                        width,
                        packed ? header.channels() : header.stored(),
                        header.channels(),
                        header.bits(),
                        ByteOrder.BIG_ENDIAN,
                        false,
                        false);
    }

    /** Decodes the next row into {@code out} (modified). */
    void next(char[] out, int at, int stride, int y) throws IOException {
        int filter = data.read();
        int done = 0;
        while (done < line.length) {
            int got = data.read(line, done, line.length - done);
            if (got < 0) {
                throw new EOFException("row " + y + " is not complete");
            }
            done += got;
        }
        unfilter(filter, line, above, pixelBytes);
        if (wide.length > 0) {
            widen();
            samples.unpack(wide, 0, out, at, width, stride);
        } else {
            samples.unpack(line, 0, out, at, width, stride);
        }
        byte[] swap = above;
        above = line;
        line = swap;
    }

    /**
     * Takes a row filter off.
     *
     * @param now the row (modified)
     * @param up the row above it
     * @param step bytes to the pixel on the left
     */
    static void unfilter(int filter, byte[] now, byte[] up, int step) throws IOException {
        switch (filter) {
            case 0 -> {}
            case 1 -> {
                for (int i = step; i < now.length; i++) {
                    now[i] += now[i - step];
                }
            }
            case 2 -> {
                for (int i = 0; i < now.length; i++) {
                    now[i] += up[i];
                }
            }
            case 3 -> {
                for (int i = 0; i < now.length; i++) {
                    int left = i < step ? 0 : now[i - step] & 0xff;
                    now[i] += (byte) ((left + (up[i] & 0xff)) >> 1);
                }
            }
            case 4 -> paeth(now, up, step);
            case -1 -> throw new EOFException("image data end early");
            default -> throw new ZipException("unknown row filter " + filter);
        }
    }

    private static void paeth(byte[] now, byte[] up, int step) {
        for (int i = 0; i < now.length; i++) {
            int a = i < step ? 0 : now[i - step] & 0xff;
            int b = up[i] & 0xff;
            int c = i < step ? 0 : up[i - step] & 0xff;
            int pa = Math.abs(b - c);
            int pb = Math.abs(a - c);
            int pc = Math.abs(a + b - 2 * c);
            int predicted = pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
            now[i] += (byte) predicted;
        }
    }

    /** Expands samples of less than 8 bits, and palette entries, to 8 bit samples. */
    private void widen() {
        int depth = header.depth();
        int mask = (1 << depth) - 1;
        PngHeader.Blob palette = header.palette();
        byte[] colours = palette == null ? new byte[0] : Arrays.copyOf(palette.bytes(), 768);
        for (int x = 0; x < width; x++) {
            int bit = x * depth;
            int value = ((line[bit >> 3] & 0xff) >> (8 - depth - (bit & 7))) & mask;
            if (header.colourType() == 3) {
                System.arraycopy(colours, 3 * value, wide, 3 * x, 3);
            } else {
                wide[x] = (byte) (value * 255 / mask);
            }
        }
    }
}
