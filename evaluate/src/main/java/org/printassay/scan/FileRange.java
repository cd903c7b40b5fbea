package org.printassay.scan;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;

/**
 * A stretch of a file as a stream. Reads in large pieces and does not touch the channel's own
 * position, so several can be open on one channel.
 */
final class FileRange extends InputStream {
    private static final int PIECE = 1 << 18;

    private final FileChannel channel;
    private final long end;
    private final byte[] buffer;
    private long next;
    private int at;
    private int filled;

    /** Bytes from {@code offset}, {@code length} of them; a shorter file ends the stream early. */
    FileRange(FileChannel channel, long offset, long length) {
        this.channel = channel;
        this.next = offset;
        this.end = offset + length;
        this.buffer = new byte[(int) Math.max(1, Math.min(PIECE, length))];
    }

    private boolean fill() throws IOException {
        int want = (int) Math.min(buffer.length, end - next);
        if (want <= 0) {
            return false;
        }
        int got = channel.read(ByteBuffer.wrap(buffer, 0, want), next);
        if (got <= 0) {
            return false;
        }
        next += got;
        at = 0;
        filled = got;
        return true;
    }

    /** Moves on without reading; less than asked for where the stretch ends. */
    @Override
    public long skip(long count) {
        long held = Math.min(Math.max(0, count), filled - at);
        at += (int) held;
        long beyond = Math.min(Math.max(0, count) - held, end - next);
        next += beyond;
        return held + beyond;
    }

    @Override
    public int read() throws IOException {
        if (at == filled && !fill()) {
            return -1;
        }
        return buffer[at++] & 0xff;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (at == filled) {
            if (length >= buffer.length) {
                int want = (int) Math.min(length, end - next);
                int got = want <= 0 ? -1 : channel.read(ByteBuffer.wrap(into, offset, want), next);
                if (got > 0) {
                    next += got;
                }
                return got <= 0 ? -1 : got;
            }
            if (!fill()) {
                return -1;
            }
        }
        int count = Math.min(length, filled - at);
        System.arraycopy(buffer, at, into, offset, count);
        at += count;
        return count;
    }
}
