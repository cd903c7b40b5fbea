package org.printassay.scan;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/** PackBits decoding, TIFF 6.0 section 9. */
final class PackBitsStream extends InputStream {
    private final InputStream in;
    private int literals;
    private int repeats;
    private int repeated;

    PackBitsStream(InputStream in) {
        this.in = in;
    }

    @Override
    public int read() throws IOException {
        while (literals == 0 && repeats == 0) {
            int head = in.read();
            if (head < 0) {
                return -1;
            }
            if (head < 128) {
                literals = head + 1;
            } else if (head > 128) {
                repeats = 257 - head;
                repeated = demand();
            }
        }
        if (literals > 0) {
            literals--;
            return demand();
        }
        repeats--;
        return repeated;
    }

    private int demand() throws IOException {
        int value = in.read();
        if (value < 0) {
            throw new EOFException("PackBits data end early");
        }
        return value;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        int done = 0;
        while (done < length) {
            int value = read();
            if (value < 0) {
                break;
            }
            into[offset + done++] = (byte) value;
        }
        return done == 0 && length > 0 ? -1 : done;
    }
}
