package org.printassay.scan;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.InflaterInputStream;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * What stands before the image data of a PNG (ISO/IEC 15948 clause 11).
 *
 * @param depth bits a sample in the file: 1, 2, 4, 8 or 16
 * @param colourType 0 grey, 2 RGB, 3 palette, 4 grey and alpha, 6 RGB and alpha
 * @param palette RGB triples; null unless colour type 3
 * @param profile its profile; without any bytes where it is damaged
 * @param gamma exponent from codes to light, where that alone is said of the codes
 * @param dataOffset where the first IDAT chunk starts
 */
record PngHeader(
        int width,
        int height,
        int depth,
        int colourType,
        boolean interlaced,
        @Nullable Blob palette,
        Optional<ScanInfo.Resolution> resolution,
        @Nullable Blob profile,
        OptionalDouble gamma,
        long dataOffset) {
    private static final int LARGEST_CHUNK = 64 << 20;
    private static final int LARGEST_PROFILE = 64 << 20;
    private static final int MOST_CHUNKS = 10_000;

    /** What a gAMA chunk beside an sRGB chunk has to say (ISO/IEC 15948, 11.3.3.5). */
    private static final double SRGB_GAMMA = 0.45455;

    /** Writers round 1/2.2 in several ways, the coarsest to 0.45. */
    private static final double SAME_GAMMA = 0.02;

    private static final double LEAST_GAMMA = 0.2;
    private static final double MOST_GAMMA = 2;

    /** Bytes that nobody changes. */
    interface Blob {
        byte[] bytes();
    }

    /** Kept channels: 1 or 3. */
    int channels() {
        return colourType == 0 || colourType == 4 ? 1 : 3;
    }

    /** Samples a pixel in the file. */
    int stored() {
        return switch (colourType) {
            case 2 -> 3;
            case 4 -> 2;
            case 6 -> 4;
            default -> 1;
        };
    }

    /** Depth as scans go: 8 or 16. */
    int bits() {
        return depth == 16 ? 16 : 8;
    }

    static PngHeader read(FileChannel channel, String name) throws IOException, Problem {
        long at = 8;
        int[] ihdr = new int[0];
        Blob palette = null;
        Blob profile = null;
        Optional<ScanInfo.Resolution> resolution = Optional.empty();
        OptionalDouble gamma = OptionalDouble.empty();
        boolean saysMore = false;
        for (int chunks = 0; ; chunks++) {
            if (chunks > MOST_CHUNKS) {
                throw damaged(name, at);
            }
            byte[] head = new FileRange(channel, at, 8).readNBytes(8);
            if (head.length < 8) {
                throw ScanFiles.endsEarly(name, "before its image data");
            }
            ByteBuffer buffer = ByteBuffer.wrap(head);
            int length = buffer.getInt();
            String type = new String(head, 4, 4, StandardCharsets.ISO_8859_1);
            if (length < 0 || (at + 12 + length > channel.size() && !type.equals("IDAT"))) {
                throw ScanFiles.endsEarly(name, "in its chunk at byte " + at);
            }
            boolean first = ihdr.length == 0;
            if (first != type.equals("IHDR")) {
                throw damaged(name, at);
            }
            switch (type) {
                case "IHDR" -> ihdr = ihdr(chunk(channel, at, length, name), name, at);
                case "PLTE" -> {
                    byte[] bytes = chunk(channel, at, length, name);
                    palette = () -> bytes;
                }
                case "iCCP" -> {
                    byte[] bytes = inflateProfile(chunk(channel, at, length, name));
                    profile = () -> bytes;
                }
                case "gAMA" -> gamma = exponent(chunk(channel, at, length, name));
                case "sRGB", "cICP" -> saysMore = true;
                case "pHYs" -> resolution = physical(chunk(channel, at, length, name));
                case "IDAT" -> {
                    if (ihdr[3] == 3 && palette == null) {
                        throw Problem.input(name, "has no palette. Scan or save it as RGB.");
                    }
                    return new PngHeader(
                            ihdr[0],
                            ihdr[1],
                            ihdr[2],
                            ihdr[3],
                            ihdr[4] == 1,
                            palette,
                            resolution,
                            profile,
                            saysMore ? OptionalDouble.empty() : gamma,
                            at);
                }
                case "IEND" -> throw ScanFiles.endsEarly(name, "it holds no image data");
                default -> {
                    // Text, time and the like: not needed.
                }
            }
            at += 12 + (long) length;
        }
    }

    private static byte[] chunk(FileChannel channel, long at, int length, String name)
            throws IOException, Problem {
        if (length > LARGEST_CHUNK) {
            throw damaged(name, at);
        }
        return new FileRange(channel, at + 8, length).readNBytes(length);
    }

    private static int[] ihdr(byte[] bytes, String name, long at) throws Problem {
        if (bytes.length != 13) {
            throw damaged(name, at);
        }
        ByteBuffer b = ByteBuffer.wrap(bytes);
        int[] v = {b.getInt(), b.getInt(), b.get() & 0xff, b.get() & 0xff, bytes[12] & 0xff};
        ScanFiles.checkSize(name, v[0], v[1]);
        boolean known =
                switch (v[3]) {
                    case 0 -> v[2] == 1 || v[2] == 2 || v[2] == 4 || v[2] == 8 || v[2] == 16;
                    case 3 -> v[2] == 1 || v[2] == 2 || v[2] == 4 || v[2] == 8;
                    case 2, 4, 6 -> v[2] == 8 || v[2] == 16;
                    default -> false;
                };
        if (!known || bytes[10] != 0 || bytes[11] != 0 || v[4] > 1) {
            throw damaged(name, at);
        }
        return v;
    }

    private static Problem damaged(String name, long at) {
        return Problem.input(
                name + ", byte " + at, "the PNG is damaged here. Copy or scan it again.");
    }

    /** The profile of an iCCP chunk; empty when it is damaged or unreasonably large. */
    private static byte[] inflateProfile(byte[] chunk) {
        int end = 0;
        while (end < chunk.length && chunk[end] != 0) {
            end++;
        }
        if (end + 2 >= chunk.length) {
            return new byte[0];
        }
        try (InputStream in =
                new InflaterInputStream(
                        new ByteArrayInputStream(chunk, end + 2, chunk.length - end - 2))) {
            byte[] profile = in.readNBytes(LARGEST_PROFILE + 1);
            return profile.length > LARGEST_PROFILE ? new byte[0] : profile;
        } catch (IOException e) {
            return new byte[0];
        }
    }

    /**
     * Of a gAMA chunk (11.3.2.2), which holds 100 000 times the exponent from light to codes. That
     * of sRGB is told from a true power of 2.2 by nothing else, and is taken as sRGB; an impossible
     * one counts as not said.
     */
    private static OptionalDouble exponent(byte[] chunk) {
        double encoding = chunk.length == 4 ? ByteBuffer.wrap(chunk).getInt() / 100_000.0 : 0;
        boolean possible = encoding >= LEAST_GAMMA && encoding <= MOST_GAMMA;
        boolean srgb = Math.abs(encoding / SRGB_GAMMA - 1) < SAME_GAMMA;
        return possible && !srgb ? OptionalDouble.of(1 / encoding) : OptionalDouble.empty();
    }

    private static Optional<ScanInfo.Resolution> physical(byte[] chunk) {
        if (chunk.length != 9 || chunk[8] != 1) {
            return Optional.empty();
        }
        ByteBuffer b = ByteBuffer.wrap(chunk);
        double x = (b.getInt() & 0xffffffffL) * 0.0254;
        double y = (b.getInt() & 0xffffffffL) * 0.0254;
        return x > 0 && y > 0 ? Optional.of(new ScanInfo.Resolution(x, y)) : Optional.empty();
    }
}
