package org.printassay.demo.print;

import java.util.Arrays;
import org.printassay.colour.Rgb8;

/** The different codes of a raster. An open-addressing hash table of packed codes. */
final class Palette {
    private static final int EMPTY = -1;

    private int[] keys = new int[1 << 12];
    private int[] numbers = new int[1 << 12];
    private int[] codes = new int[1 << 10];
    private long[] counts = new long[1 << 10];
    private int size;

    private Palette() {
        Arrays.fill(keys, EMPTY);
    }

    /**
     * Numbers the codes of a raster.
     *
     * @param dots packed 0xRRGGBB in, code numbers out
     */
    static Palette indexInPlace(int[] dots) {
        Palette palette = new Palette();
        int lastCode = EMPTY;
        int number = 0;
        long run = 0;
        for (int i = 0; i < dots.length; i++) {
            int code = dots[i] & 0xFFFFFF;
            if (code != lastCode) {
                if (run > 0) {
                    palette.counts[number] += run;
                }
                run = 0;
                number = palette.numberOf(code);
                lastCode = code;
            }
            run++;
            dots[i] = number;
        }
        if (run > 0) {
            palette.counts[number] += run;
        }
        return palette;
    }

    int size() {
        return size;
    }

    Rgb8 code(int number) {
        int code = codes[number];
        return new Rgb8(code >> 16, (code >> 8) & 255, code & 255);
    }

    long count(int number) {
        return counts[number];
    }

    private int numberOf(int code) {
        int slot = slot(keys, code);
        if (keys[slot] == code) {
            return numbers[slot];
        }
        if (2 * (size + 1) > keys.length) {
            grow();
            slot = slot(keys, code);
        }
        if (size == codes.length) {
            codes = Arrays.copyOf(codes, 2 * size);
            counts = Arrays.copyOf(counts, 2 * size);
        }
        keys[slot] = code;
        numbers[slot] = size;
        codes[size] = code;
        return size++;
    }

    private static int slot(int[] keys, int code) {
        int mask = keys.length - 1;
        int slot = ((code * 0x9E3779B1) >>> 8) & mask;
        while (keys[slot] != EMPTY && keys[slot] != code) {
            slot = (slot + 1) & mask;
        }
        return slot;
    }

    private void grow() {
        int[] larger = new int[2 * keys.length];
        int[] moved = new int[larger.length];
        Arrays.fill(larger, EMPTY);
        for (int i = 0; i < keys.length; i++) {
            if (keys[i] != EMPTY) {
                int slot = slot(larger, keys[i]);
                larger[slot] = keys[i];
                moved[slot] = numbers[i];
            }
        }
        keys = larger;
        numbers = moved;
    }
}
