package org.printassay.acceptance;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;

/** Damages files as broken writers, disks and attackers do; the same seed, the same damage. */
final class Mutations {
    private static final long[] ODD_NUMBERS = {
        0,
        1,
        -1,
        2,
        127,
        128,
        255,
        256,
        32767,
        32768,
        65535,
        65536,
        0x7fffffffL,
        0x80000000L,
        0xffffffffL,
        0x100000000L,
        Long.MAX_VALUE,
        Long.MIN_VALUE
    };
    private static final String[] ODD_TEXTS = {
        "NaN",
        "1e999",
        "-1",
        "9".repeat(400),
        "{",
        "[".repeat(3000),
        "\"",
        "\u001b[31m",
        "null",
        "0x10",
        ",,",
        "\u0000",
        "1,5",
        "\ufeff",
        "<!DOCTYPE",
        "\n\n"
    };

    private Mutations() {}

    static byte[] of(byte[] file, long seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L + 1);
        random.nextLong();
        byte[] bytes = file;
        int times = 1 + random.nextInt(4);
        for (int i = 0; i < times && bytes.length > 0; i++) {
            bytes = once(bytes, random);
        }
        return bytes;
    }

    private static byte[] once(byte[] bytes, Random random) {
        // Headers and directories are at the ends; half of all damage goes there.
        int reach = random.nextBoolean() ? bytes.length : Math.min(bytes.length, 400);
        int at = random.nextInt(reach);
        if (random.nextInt(4) == 0) {
            at = bytes.length - 1 - at;
        }
        int length = Math.min(bytes.length - at, 1 + random.nextInt(64));
        byte[] copy = bytes.clone();
        switch (random.nextInt(9)) {
            case 0 -> copy[at] ^= (byte) (1 << random.nextInt(8));
            case 1 -> copy[at] = (byte) random.nextInt(256);
            case 2, 3 -> number(copy, at, random);
            case 4 -> {
                return Arrays.copyOf(bytes, at);
            }
            case 5 -> {
                return joined(bytes, at, Arrays.copyOfRange(bytes, at, at + length), at);
            }
            case 6 -> {
                return joined(bytes, at, new byte[0], at + length);
            }
            case 7 -> {
                String text = ODD_TEXTS[random.nextInt(ODD_TEXTS.length)];
                byte[] odd = text.getBytes(StandardCharsets.UTF_8);
                return joined(bytes, at, odd, random.nextBoolean() ? at : at + length);
            }
            default -> {
                int other = random.nextInt(bytes.length - length + 1);
                System.arraycopy(bytes, other, copy, at, length);
            }
        }
        return copy;
    }

    private static void number(byte[] bytes, int at, Random random) {
        long value = ODD_NUMBERS[random.nextInt(ODD_NUMBERS.length)];
        int wide = 1 << random.nextInt(4);
        ByteBuffer field = ByteBuffer.allocate(8);
        boolean little = random.nextBoolean();
        field.order(little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN).putLong(value);
        for (int i = 0; i < wide && at + i < bytes.length; i++) {
            bytes[at + i] = field.get(little ? i : 8 - wide + i);
        }
    }

    private static byte[] joined(byte[] bytes, int until, byte[] middle, int from) {
        byte[] all = new byte[until + middle.length + bytes.length - from];
        System.arraycopy(bytes, 0, all, 0, until);
        System.arraycopy(middle, 0, all, until, middle.length);
        System.arraycopy(bytes, from, all, until + middle.length, bytes.length - from);
        return all;
    }
}
