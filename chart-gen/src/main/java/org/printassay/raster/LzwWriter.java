package org.printassay.raster;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;

/** LZW encoding, TIFF 6.0 section 13. */
final class LzwWriter {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int FIRST = 258;
    private static final int LAST = 4094;

    /** Places of the table of strings: a power of two, twice as many as there are strings. */
    private static final int PLACES = 8192;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private int bits;
    private int bitCount;
    private int width = 9;
    private final int[] keys = new int[PLACES];
    private final int[] codes = new int[PLACES];

    private LzwWriter() {}

    /** One strip, encoded. */
    static byte[] encode(byte[] data, int from, int length) {
        LzwWriter writer = new LzwWriter();
        writer.run(data, from, length);
        return writer.out.toByteArray();
    }

    private void run(byte[] data, int from, int length) {
        Arrays.fill(keys, -1);
        int next = FIRST;
        put(CLEAR);
        int prefix = data[from] & 0xff;
        for (int i = from + 1; i < from + length; i++) {
            int value = data[i] & 0xff;
            int key = (prefix << 8) | value;
            int place = (key * 0x9E3779B1) >>> 19;
            while (keys[place] >= 0 && keys[place] != key) {
                place = (place + 1) & (PLACES - 1);
            }
            if (keys[place] == key) {
                prefix = codes[place];
                continue;
            }
            put(prefix);
            keys[place] = key;
            codes[place] = next++;
            if (next == 512 || next == 1024 || next == 2048) {
                width++;
            }
            if (next > LAST) {
                put(CLEAR);
                Arrays.fill(keys, -1);
                next = FIRST;
                width = 9;
            }
            prefix = value;
        }
        put(prefix);
        if (next + 1 == 512 || next + 1 == 1024 || next + 1 == 2048) {
            width++;
        }
        put(END);
        if (bitCount > 0) {
            out.write(bits << (8 - bitCount));
        }
    }

    private void put(int code) {
        bits = (bits << width) | code;
        bitCount += width;
        while (bitCount >= 8) {
            out.write(bits >>> (bitCount - 8));
            bitCount -= 8;
        }
        bits &= (1 << bitCount) - 1;
    }
}
