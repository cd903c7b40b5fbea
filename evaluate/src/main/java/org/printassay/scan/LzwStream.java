package org.printassay.scan;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.ZipException;

/**
 * LZW decoding, TIFF 6.0 section 13: codes of 9 to 12 bits, most significant bit first, the width
 * growing one code early. Strings are kept as (prefix, last byte) and written out backwards.
 */
final class LzwStream extends InputStream {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int FIRST = 258;
    private static final int TABLE = 4096;

    private final InputStream in;
    private final short[] prefix = new short[TABLE];
    private final byte[] last = new byte[TABLE];
    private final short[] length = new short[TABLE];
    private final byte[] string = new byte[TABLE];

    private int pending;
    private int pendingAt;
    private long bits;
    private int bitCount;
    private int next = FIRST;
    private int width = 9;
    private int previous = -1;
    private boolean ended;

    LzwStream(InputStream in) {
        this.in = in;
        for (int i = 0; i < 256; i++) {
            last[i] = (byte) i;
            length[i] = 1;
        }
    }

    private int code() throws IOException {
        while (bitCount < width) {
            int b = in.read();
            if (b < 0) {
                return END;
            }
            bits = (bits << 8) | b;
            bitCount += 8;
        }
        bitCount -= width;
        return (int) (bits >>> bitCount) & ((1 << width) - 1);
    }

    /** Decodes the next string into {@link #string}; false at the end. */
    private boolean decode() throws IOException {
        int code = code();
        while (code == CLEAR) {
            next = FIRST;
            width = 9;
            previous = -1;
            code = code();
        }
        if (code == END) {
            ended = true;
            return false;
        }
        if (previous < 0) {
            if (code >= CLEAR) {
                throw new ZipException("LZW data are damaged");
            }
            string[0] = (byte) code;
            pending = 1;
        } else {
            if (code > next || code >= TABLE) {
                throw new ZipException("LZW data are damaged");
            }
            int known = code < next ? code : previous;
            int size = length[known];
            int at = size;
            for (int c = known; at > 0; c = prefix[c]) {
                string[--at] = last[c];
            }
            byte first = string[0];
            if (code == next) {
                if (size >= TABLE) {
                    throw new ZipException("LZW data are damaged");
                }
                string[size++] = first;
            }
            pending = size;
            if (next < TABLE) {
                prefix[next] = (short) previous;
                last[next] = first;
                length[next] = (short) (length[previous] + 1);
                next++;
            }
        }
        previous = code;
        pendingAt = 0;
        if (next >= (1 << width) - 1 && width < 12) {
            width++;
        }
        return true;
    }

    @Override
    public int read() throws IOException {
        if (pendingAt == pending && (ended || !decode())) {
            return -1;
        }
        return string[pendingAt++] & 0xff;
    }

    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        int done = 0;
        while (done < count) {
            if (pendingAt == pending && (ended || !decode())) {
                break;
            }
            int n = Math.min(count - done, pending - pendingAt);
            System.arraycopy(string, pendingAt, into, offset + done, n);
            pendingAt += n;
            done += n;
        }
        return done == 0 && count > 0 ? -1 : done;
    }
}
