package org.printassay.colour.icc;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/** Small made-up profiles (simulated, no device) for kinds that no free profile at hand has. */
final class TestProfile {
    private TestProfile() {}

    /** A profile of a class, device space and connection space with the given tags. */
    static byte[] of(int version, String classSpacePcs, Map<String, byte[]> tags) {
        Map<String, byte[]> all = new LinkedHashMap<>(tags);
        all.putIfAbsent(
                "wtpt", element("XYZ ", 12, b -> b.putInt(53800).putInt(56000).putInt(44000)));
        int offset = 132 + 12 * all.size();
        int size = offset;
        for (byte[] tag : all.values()) {
            size += (tag.length + 3) / 4 * 4;
        }
        byte[] bytes = new byte[size];
        ByteBuffer out = ByteBuffer.wrap(bytes);
        out.putInt(size).putInt(0).putInt(version << 24).put(ascii(classSpacePcs));
        out.position(36).put(ascii("acsp"));
        out.position(68).putInt(0xF6D6).putInt(0x10000).putInt(0xD32D);
        out.position(128).putInt(all.size());
        for (Map.Entry<String, byte[]> tag : all.entrySet()) {
            out.put(ascii(tag.getKey())).putInt(offset).putInt(tag.getValue().length);
            System.arraycopy(tag.getValue(), 0, bytes, offset, tag.getValue().length);
            offset += (tag.getValue().length + 3) / 4 * 4;
        }
        return bytes;
    }

    static byte[] element(String type, int bodySize, Consumer<ByteBuffer> fill) {
        byte[] bytes = new byte[8 + bodySize];
        fill.accept(ByteBuffer.wrap(bytes).put(ascii(type)).putInt(0));
        return bytes;
    }

    static byte[] para(int kind, double... numbers) {
        return element(
                "para",
                4 + 4 * numbers.length,
                b -> {
                    b.putShort((short) kind).putShort((short) 0);
                    for (double number : numbers) {
                        b.putInt((int) Math.round(number * 65536));
                    }
                });
    }

    static byte[] xyz(double x, double y, double z) {
        return element(
                "XYZ ",
                12,
                b -> {
                    for (double value : new double[] {x, y, z}) {
                        b.putInt((int) Math.round(value * 65536));
                    }
                });
    }

    static byte[] table(int... points) {
        return element(
                "curv",
                4 + 2 * points.length,
                b -> {
                    b.putInt(points.length);
                    for (int point : points) {
                        b.putShort((short) point);
                    }
                });
    }

    static byte[] gamma(double exponent) {
        return element("curv", 6, b -> b.putInt(1).putShort((short) Math.round(exponent * 256)));
    }

    /** A lut8 (width 1) or lut16 (width 2) of a smooth scanner-like table to CIELAB. */
    static byte[] lut(int inputs, int width, int grid) {
        return lut(inputs, 3, width, grid);
    }

    /** The same with any number of outputs, for the way from CIELAB to a device. */
    static byte[] lut(int inputs, int outputs, int width, int grid) {
        int entries = 256;
        int table = outputs * (int) Math.pow(grid, inputs);
        int head = width == 1 ? 40 : 44;
        int body = head + width * (entries * (inputs + outputs) + table);
        return element(
                width == 1 ? "mft1" : "mft2",
                body,
                b -> {
                    b.put((byte) inputs).put((byte) outputs);
                    b.put((byte) grid).put((byte) 0);
                    for (int i = 0; i < 9; i++) {
                        b.putInt(i % 4 == 0 ? 65536 : 0);
                    }
                    if (width == 2) {
                        b.putShort((short) entries).putShort((short) entries);
                    }
                    for (int i = 0; i < inputs * entries; i++) {
                        put(b, width, Math.pow(i % entries / 255.0, 0.8));
                    }
                    clut(b, inputs, outputs, width, grid);
                    for (int i = 0; i < outputs * entries; i++) {
                        put(b, width, i % entries / 255.0);
                    }
                });
    }

    /** A lutAToB with all five steps. */
    static byte[] lutAToB(int inputs, int width, int grid) {
        byte[] aCurve = para(0, 0.9);
        byte[] mCurve = para(3, 1.2, 0.95, 0.05, 0.9, 0.04);
        byte[] bCurve = gamma(1.0);
        int table = 3 * (int) Math.pow(grid, inputs) * width;
        int aSize = inputs * aCurve.length;
        int mSize = 3 * mCurve.length;
        int bSize = 3 * 16;
        int aAt = 32;
        int clutAt = aAt + aSize;
        int mAt = clutAt + (20 + table + 3) / 4 * 4;
        int matrixAt = mAt + mSize;
        int bAt = matrixAt + 48;
        return element(
                "mAB ",
                bAt + bSize - 8,
                b -> {
                    b.put((byte) inputs).put((byte) 3).putShort((short) 0);
                    b.putInt(bAt).putInt(matrixAt).putInt(mAt).putInt(clutAt).putInt(aAt);
                    for (int i = 0; i < inputs; i++) {
                        b.put(aCurve);
                    }
                    for (int i = 0; i < 16; i++) {
                        b.put((byte) (i < inputs ? grid : 0));
                    }
                    b.put((byte) width).put(new byte[3]);
                    clut(b, inputs, 3, width, grid);
                    b.position(mAt);
                    b.put(mCurve).put(mCurve).put(mCurve);
                    double[] matrix = {.95, .02, .01, 0, .9, .05, .01, 0, .92, .005, .01, .012};
                    for (double value : matrix) {
                        b.putInt((int) Math.round(value * 65536));
                    }
                    for (int i = 0; i < 3; i++) {
                        b.position(bAt + 16 * i).put(bCurve);
                    }
                });
    }

    /** A lutBToA with all five steps. */
    static byte[] lutBToA(int outputs, int width, int grid) {
        byte[] aCurve = para(0, 0.9);
        byte[] mCurve = para(3, 1.2, 0.95, 0.05, 0.9, 0.04);
        int table = outputs * (int) Math.pow(grid, 3) * width;
        int matrixAt = 32 + 3 * 16;
        int mAt = matrixAt + 48;
        int clutAt = mAt + 3 * mCurve.length;
        int aAt = clutAt + (20 + table + 3) / 4 * 4;
        return element(
                "mBA ",
                aAt + outputs * aCurve.length - 8,
                b -> {
                    b.put((byte) 3).put((byte) outputs).putShort((short) 0);
                    b.putInt(32).putInt(matrixAt).putInt(mAt).putInt(clutAt).putInt(aAt);
                    for (int i = 0; i < 3; i++) {
                        b.position(32 + 16 * i).put(gamma(1.2));
                    }
                    b.position(matrixAt);
                    double[] matrix = {.95, .02, .01, 0, .9, .05, .01, 0, .92, .005, .01, .012};
                    for (double value : matrix) {
                        b.putInt((int) Math.round(value * 65536));
                    }
                    b.put(mCurve).put(mCurve).put(mCurve);
                    for (int i = 0; i < 16; i++) {
                        b.put((byte) (i < 3 ? grid : 0));
                    }
                    b.put((byte) width).put(new byte[3]);
                    clut(b, 3, outputs, width, grid);
                    b.position(aAt);
                    for (int i = 0; i < outputs; i++) {
                        b.put(aCurve);
                    }
                });
    }

    private static void clut(ByteBuffer b, int inputs, int outputs, int width, int grid) {
        int points = (int) Math.pow(grid, inputs);
        for (int i = 0; i < points; i++) {
            double[] v = new double[4];
            int rest = i;
            for (int k = inputs - 1; k >= 0; k--) {
                v[k] = rest % grid / (grid - 1.0);
                rest /= grid;
            }
            double red = v[0];
            double green = inputs > 1 ? v[1] : red;
            double blue = inputs > 2 ? v[2] : red;
            double dark = 1 - 0.5 * v[3];
            double[] out = {
                (0.3 * red + 0.55 * green + 0.1 * blue) * dark + 0.02 * red * blue,
                0.5 + 0.3 * (red - green) * dark,
                0.5 + 0.25 * (green * red - blue),
                0.9 - 0.8 * red * green
            };
            for (int k = 0; k < outputs; k++) {
                put(b, width, out[k]);
            }
        }
    }

    private static void put(ByteBuffer b, int width, double value) {
        if (width == 1) {
            b.put((byte) Math.round(value * 255));
        } else {
            b.putShort((short) Math.round(value * 65280));
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
