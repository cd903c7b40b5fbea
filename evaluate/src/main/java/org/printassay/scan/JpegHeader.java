package org.printassay.scan;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * The segments before the image data of a JPEG (ISO/IEC 10918-1): size, JFIF or Exif resolution,
 * Exif orientation, and the ICC profile in its APP2 pieces (ISO 15076-1 Annex B.4).
 *
 * @param profileMarkers places in the file of the marker codes (0xE2) of the profile's pieces
 */
record JpegHeader(
        int width,
        int height,
        int channels,
        Optional<ScanInfo.Resolution> resolution,
        Optional<byte[]> profile,
        Set<Long> profileMarkers,
        Optional<LossyCoding> coding,
        boolean mirrored) {
    private static final byte[] ICC = "ICC_PROFILE\0".getBytes(StandardCharsets.ISO_8859_1);

    /** Frames are read that are baseline, extended or progressive, with Huffman codes. */
    private static final int LAST_READ_FRAME = 0xc2;

    private static final byte[] JFIF = "JFIF\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);

    static JpegHeader read(Path file, String name) throws IOException, Problem {
        try (InputStream raw = Files.newInputStream(file, StandardOpenOption.READ);
                InputStream in = new BufferedInputStream(raw, 1 << 16)) {
            return read(in, name);
        }
    }

    private static JpegHeader read(InputStream in, String name) throws IOException, Problem {
        in.skipNBytes(2);
        Optional<ScanInfo.Resolution> jfif = Optional.empty();
        Exif exif = null;
        TreeMap<Integer, byte[]> profilePieces = new TreeMap<>();
        Set<Long> profileMarkers = new HashSet<>();
        byte[] frame = null;
        int[][] tables = new int[4][];
        long at = 2;
        while (true) {
            int marker = in.read();
            at++;
            while (marker == 0xff) {
                marker = in.read();
                at++;
            }
            if (marker < 0) {
                throw ScanFiles.endsEarly(name, "before its image data");
            }
            if (marker == 0 || (marker >= 0xd0 && marker <= 0xd7) || marker == 1) {
                continue;
            }
            int length = (in.read() << 8) | in.read();
            byte[] body = length < 2 ? new byte[0] : in.readNBytes(length - 2);
            if (length < 2 || body.length < length - 2) {
                throw ScanFiles.endsEarly(name, "before its image data");
            }
            long markerAt = at - 1;
            at += length;
            boolean starts =
                    marker >= 0xc0
                            && marker <= 0xcf
                            && marker != 0xc4
                            && marker != 0xc8
                            && marker != 0xcc;
            if (starts && marker > LAST_READ_FRAME) {
                throw Problem.input(
                        name, "is a lossless, layered or arithmetic JPEG. Save the scan as TIFF.");
            }
            if (starts && frame == null) {
                frame = body;
            } else if (marker == 0xda && frame != null) {
                return frame(
                        frame,
                        name,
                        jfif,
                        exif,
                        profilePieces,
                        profileMarkers,
                        coding(frame, tables));
            } else if (marker == 0xda || marker == 0xd9) {
                throw Problem.input(name, "the JPEG has no size. Save the scan anew.");
            } else if (marker == 0xdb) {
                quantisation(body, tables);
            } else if (marker == 0xe0 && startsWith(body, JFIF)) {
                jfif = jfifResolution(body);
            } else if (marker == 0xe1 && startsWith(body, EXIF)) {
                exif = Exif.parse(body);
            } else if (marker == 0xe2 && startsWith(body, ICC) && body.length > 14) {
                profileMarkers.add(markerAt);
                profilePieces.put(body[12] & 0xff, Arrays.copyOfRange(body, 14, body.length));
            }
        }
    }

    private static JpegHeader frame(
            byte[] body,
            String name,
            Optional<ScanInfo.Resolution> jfif,
            @Nullable Exif exif,
            TreeMap<Integer, byte[]> profilePieces,
            Set<Long> profileMarkers,
            Optional<LossyCoding> coding)
            throws Problem {
        if (body.length < 6) {
            throw ScanFiles.endsEarly(name, "in its frame header");
        }
        ByteBuffer b = ByteBuffer.wrap(body);
        int bits = b.get();
        int height = b.getShort() & 0xffff;
        int width = b.getShort() & 0xffff;
        int components = b.get() & 0xff;
        ScanFiles.checkSize(name, width, height);
        if (bits != 8) {
            throw Problem.input(name, "a JPEG of " + bits + " bits is not read. Save as TIFF.");
        }
        if (components == 4) {
            throw Problem.input(name, "is a CMYK image. Scan or save it as RGB.");
        }
        if (components != 1 && components != 3) {
            throw Problem.input(name, "has " + components + " channels. Save it as RGB.");
        }
        ByteArrayOutputStream profile = new ByteArrayOutputStream();
        profilePieces.values().forEach(piece -> profile.write(piece, 0, piece.length));
        Optional<ScanInfo.Resolution> resolution =
                jfif.isPresent() || exif == null ? jfif : exif.resolution();
        return new JpegHeader(
                width,
                height,
                components,
                resolution,
                profile.size() == 0 ? Optional.empty() : Optional.of(profile.toByteArray()),
                profileMarkers,
                coding,
                exif != null && Orientation.mirrored(exif.orientation()));
    }

    /** Tables of a DQT segment (ISO/IEC 10918-1, B.2.4.1) by number; a cut one is left away. */
    private static void quantisation(byte[] body, int[][] tables) {
        int at = 0;
        while (at < body.length) {
            int wide = (body[at] & 0xf0) == 0 ? 1 : 2;
            int number = body[at] & 3;
            at++;
            if (at + 64 * wide > body.length) {
                return;
            }
            int[] table = new int[64];
            for (int i = 0; i < table.length; i++) {
                table[i] = body[at++] & 0xff;
                if (wide == 2) {
                    table[i] = table[i] << 8 | (body[at++] & 0xff);
                }
            }
            tables[number] = table;
        }
    }

    private static Optional<LossyCoding> coding(byte[] frame, int[][] tables) {
        if (frame.length < 9) {
            return Optional.empty();
        }
        int[] luma = tables[frame[8] & 3];
        int[] chroma = frame.length >= 12 ? tables[frame[11] & 3] : luma;
        return luma == null || chroma == null
                ? Optional.empty()
                : Optional.of(LossyCoding.of(luma, chroma));
    }

    private static boolean startsWith(byte[] body, byte[] start) {
        return body.length >= start.length
                && Arrays.equals(body, 0, start.length, start, 0, start.length);
    }

    private static Optional<ScanInfo.Resolution> jfifResolution(byte[] body) {
        if (body.length < 12 || (body[7] != 1 && body[7] != 2)) {
            return Optional.empty();
        }
        ByteBuffer b = ByteBuffer.wrap(body);
        double toInch = body[7] == 2 ? 2.54 : 1;
        double x = (b.getShort(8) & 0xffff) * toInch;
        double y = (b.getShort(10) & 0xffff) * toInch;
        return x > 1 && y > 1 ? Optional.of(new ScanInfo.Resolution(x, y)) : Optional.empty();
    }

    /** The two facts of an Exif block that matter for a scan. */
    private record Exif(int orientation, Optional<ScanInfo.Resolution> resolution) {
        /** Reads the first directory; anything odd counts as not said. */
        static Exif parse(byte[] body) {
            ByteBuffer b = ByteBuffer.wrap(body, 6, body.length - 6).slice();
            int orientation = 1;
            double x = 0;
            double y = 0;
            double toInch = 1;
            try {
                b.order(b.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
                int at = b.getInt(4);
                int entries = b.getShort(at) & 0xffff;
                for (int i = 0; i < entries; i++) {
                    int entry = at + 2 + 12 * i;
                    switch (b.getShort(entry) & 0xffff) {
                        case TiffDirectory.ORIENTATION -> orientation = b.getShort(entry + 8);
                        case TiffDirectory.X_RESOLUTION -> x = rational(b, b.getInt(entry + 8));
                        case TiffDirectory.Y_RESOLUTION -> y = rational(b, b.getInt(entry + 8));
                        case TiffDirectory.RESOLUTION_UNIT ->
                                toInch = b.getShort(entry + 8) == 3 ? 2.54 : 1;
                        default -> {
                            // Camera data and the like: not needed.
                        }
                    }
                }
            } catch (IndexOutOfBoundsException e) {
                return new Exif(1, Optional.empty());
            }
            boolean said = x > 1 && y > 1 && Double.isFinite(x) && Double.isFinite(y);
            return new Exif(
                    orientation,
                    said
                            ? Optional.of(new ScanInfo.Resolution(x * toInch, y * toInch))
                            : Optional.empty());
        }

        private static double rational(ByteBuffer b, int at) {
            return (double) (b.getInt(at) & 0xffffffffL) / (b.getInt(at + 4) & 0xffffffffL);
        }
    }
}
