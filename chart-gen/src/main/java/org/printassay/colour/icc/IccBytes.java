package org.printassay.colour.icc;

import java.nio.charset.StandardCharsets;

/** Big-endian numbers out of a stretch of a profile; every access is checked against its end. */
final class IccBytes {
    private final byte[] bytes;
    private final int start;
    private final int size;

    /** What the stretch is, for messages; empty for the profile itself. */
    private final String what;

    private IccBytes(byte[] bytes, int start, int size, String what) {
        this.bytes = bytes;
        this.start = start;
        this.size = size;
        this.what = what;
    }

    static IccBytes of(byte[] bytes) {
        return new IccBytes(bytes, 0, bytes.length, "");
    }

    /** The same, called a tag in messages. */
    IccBytes tag(String name) {
        String plain = name.replaceAll("[^\\x20-\\x7e]", "?");
        return new IccBytes(bytes, start, size, "tag '" + plain + "': ");
    }

    /** A part; positions in it count from its own start. */
    IccBytes part(long from, long length) throws IccException {
        check(from, length);
        return new IccBytes(bytes, start + (int) from, (int) length, what);
    }

    /** All from a position to the end. */
    IccBytes from(long from) throws IccException {
        return part(from, Math.max(0, size - from));
    }

    int size() {
        return size;
    }

    int u8(long at) throws IccException {
        check(at, 1);
        return bytes[start + (int) at] & 0xFF;
    }

    int u16(long at) throws IccException {
        return u8(at) << 8 | u8(at + 1);
    }

    long u32(long at) throws IccException {
        return (long) u16(at) << 16 | u16(at + 2);
    }

    /** An s15Fixed16 number. */
    double fixed(long at) throws IccException {
        return (int) u32(at) / 65536.0;
    }

    String ascii(long at, long length) throws IccException {
        check(at, length);
        return new String(bytes, start + (int) at, (int) length, StandardCharsets.ISO_8859_1);
    }

    String utf16(long at, long length) throws IccException {
        check(at, length);
        return new String(bytes, start + (int) at, (int) length, StandardCharsets.UTF_16BE);
    }

    IccException fault(long at, String reason) {
        return new IccException(start + at, what + reason);
    }

    private void check(long at, long length) throws IccException {
        if (at < 0 || length < 0 || at > size || length > size - at) {
            throw fault(
                    Math.max(0, Math.min(at, size)),
                    "data end here, "
                            + Math.max(1, at + length - size)
                            + " bytes too early: damaged or cut off");
        }
    }
}
