package org.printassay.colour.icc;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.printassay.colour.RgbSpace;

/**
 * Display profiles of our RGB encodings, made from the published numbers; the same bytes every
 * time.
 *
 * <p>Version 2.4 (ICC.1:2001, matrix and curves), because these profiles travel inside PDF and TIFF
 * to print servers of any age: PDF/X-1a and PDF/X-3 of 2003 allow nothing newer, old raster
 * processors reject version 4, and a matrix profile gains nothing from it: its perceptual intent
 * would only make version 4 systems treat black differently. The media white is D50 with the
 * adaptation in {@code chad}, as version 4 has it, so that no system tints the page in absolute
 * colorimetric.
 *
 * <p>Curves are tables of 1021 = 4 x 255 + 1 points, so that every 8-bit code falls on a point, or
 * a single exponent where that is exact (563/256 is an u8Fixed8 number). Colorants are rounded so
 * that they add up to white to the last bit: neutrals stay neutral.
 */
public final class RgbProfiles {
    private static final int CURVE_POINTS = 4 * 255 + 1;

    private static final int HEADER_SIZE = 128;

    /** PCS white as s15Fixed16 numbers: 0.9642 1.0 0.8249 (ISO 15076-1, 7.2.16). */
    private static final int[] WHITE = {0xF6D6, 0x10000, 0xD32D};

    private RgbProfiles() {}

    /** The profile of an encoding, a fresh array of 2 to 3 KB. */
    public static byte[] of(RgbSpace space) {
        Map<String, byte[]> tags = new LinkedHashMap<>();
        tags.put("desc", description(space.title()));
        tags.put("cprt", text("Made from published numbers. Free to use."));
        tags.put("wtpt", xyz(WHITE[0], WHITE[1], WHITE[2]));
        int[] colorants = colorants(space.matrix());
        tags.put("rXYZ", xyz(colorants[0], colorants[3], colorants[6]));
        tags.put("gXYZ", xyz(colorants[1], colorants[4], colorants[7]));
        tags.put("bXYZ", xyz(colorants[2], colorants[5], colorants[8]));
        byte[] curve = curve(space);
        tags.put("rTRC", curve);
        tags.put("gTRC", curve);
        tags.put("bTRC", curve);
        tags.put("chad", matrix(space.adaptation()));
        return assemble(space, tags);
    }

    private static byte[] assemble(RgbSpace space, Map<String, byte[]> tags) {
        int start = HEADER_SIZE + 4 + 12 * tags.size();
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        ByteBuffer table = ByteBuffer.allocate(start - HEADER_SIZE);
        IdentityHashMap<byte[], Integer> written = new IdentityHashMap<>();
        table.putInt(tags.size());
        tags.forEach(
                (name, bytes) -> {
                    // Equal channels share one curve, as the standard allows.
                    int offset =
                            written.computeIfAbsent(
                                    bytes,
                                    b -> {
                                        int at = start + data.size();
                                        data.writeBytes(b);
                                        data.writeBytes(new byte[(4 - b.length % 4) % 4]);
                                        return at;
                                    });
                    table.put(ascii(name)).putInt(offset).putInt(bytes.length);
                });
        int size = start + data.size();
        return ByteBuffer.allocate(size)
                .put(header(size, space))
                .put(table.array())
                .put(data.toByteArray())
                .array();
    }

    private static byte[] header(int size, RgbSpace space) {
        ByteBuffer header = ByteBuffer.allocate(HEADER_SIZE);
        header.putInt(size).putInt(0).putInt(0x02400000);
        header.put(ascii("mntrRGB XYZ "));
        for (int part : new int[] {2026, 1, 1, 0, 0, 0}) {
            header.putShort((short) part); // a fixed date: same bytes every time
        }
        header.put(ascii("acsp"));
        if (space == RgbSpace.SRGB) {
            // Device model: by this signature renderers know sRGB and leave its codes untouched.
            header.position(52);
            header.put(ascii("sRGB"));
        }
        header.position(64);
        header.putInt(1); // media-relative colorimetric: all that a matrix profile holds
        header.putInt(WHITE[0]).putInt(WHITE[1]).putInt(WHITE[2]);
        return header.array();
    }

    /** Matrix as s15Fixed16 numbers whose rows add up to the white exactly. */
    private static int[] colorants(double[] matrix) {
        int[] rounded = new int[9];
        for (int row = 0; row < 3; row++) {
            int rest = WHITE[row];
            for (int i = 3 * row; i < 3 * row + 3; i++) {
                rounded[i] = fixed(matrix[i]);
                rest -= rounded[i];
            }
            int largest = 3 * row;
            for (int i = 3 * row; i < 3 * row + 3; i++) {
                largest = rounded[i] > rounded[largest] ? i : largest;
            }
            rounded[largest] += rest;
        }
        return rounded;
    }

    private static byte[] curve(RgbSpace space) {
        if (space == RgbSpace.ADOBE_RGB) {
            return element("curv", 6, body -> body.putInt(1).putShort((short) 563));
        }
        return element(
                "curv",
                4 + 2 * CURVE_POINTS,
                body -> {
                    body.putInt(CURVE_POINTS);
                    for (int i = 0; i < CURVE_POINTS; i++) {
                        double light = space.decode(i / (CURVE_POINTS - 1.0));
                        body.putShort((short) Math.round(light * 65535));
                    }
                });
    }

    private static byte[] description(String title) {
        byte[] name = ascii(title);
        // After the ASCII part: empty Unicode and Macintosh parts, 4 + 4 and 2 + 1 + 67 bytes.
        return element(
                "desc", 4 + name.length + 1 + 78, body -> body.putInt(name.length + 1).put(name));
    }

    private static byte[] text(String text) {
        return element("text", text.length() + 1, body -> body.put(ascii(text)));
    }

    private static byte[] xyz(int x, int y, int z) {
        return element("XYZ ", 12, body -> body.putInt(x).putInt(y).putInt(z));
    }

    private static byte[] matrix(double[] matrix) {
        return element(
                "sf32",
                4 * matrix.length,
                body -> {
                    for (double value : matrix) {
                        body.putInt(fixed(value));
                    }
                });
    }

    /** A tag element: type, four reserved bytes, then a body of a known size. */
    private static byte[] element(String type, int bodySize, Consumer<ByteBuffer> fill) {
        byte[] bytes = new byte[8 + bodySize];
        ByteBuffer buffer = ByteBuffer.wrap(bytes).put(ascii(type)).putInt(0);
        fill.accept(buffer);
        return bytes;
    }

    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
