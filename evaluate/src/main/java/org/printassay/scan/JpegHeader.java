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
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.printassay.problem.Problem;

/**
 * The segments before the image data of a JPEG (ISO/IEC 10918-1): size, JFIF or Exif resolution,
 * Exif orientation, and the ICC profile in its APP2 pieces (ISO 15076-1 Annex B.4).
 *
 * @param profileMarkers places in the file of the marker codes (0xE2) of the profile's pieces
 * @param coding how coarsely it is coded, where its tables are there; see {@link #codedAs}
 * @param saysTransform whether a segment says which colour transform was made
 * @param jfifMarkers places in the file of the marker codes (0xE0) of JFIF segments
 * @param namedRgb whether its components are named R, G and B
 */
record JpegHeader(
        int width,
        int height,
        int channels,
        Optional<ScanInfo.Resolution> resolution,
        Optional<byte[]> profile,
        Set<Long> profileMarkers,
        Optional<LossyCoding> coding,
        boolean mirrored,
        boolean saysTransform,
        Set<Long> jfifMarkers,
        boolean namedRgb) {
    private static final byte[] ICC = "ICC_PROFILE\0".getBytes(StandardCharsets.ISO_8859_1);

    private static final byte[] JFIF = "JFIF\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);

    static JpegHeader read(Path file, String name) throws IOException, Problem {
        try (InputStream raw = Files.newInputStream(file, StandardOpenOption.READ);
                InputStream in = new BufferedInputStream(raw, 1 << 16)) {
            return read(in, name);
        }
    }

    private static JpegHeader read(InputStream in, String name) throws IOException, Problem {
        Optional<ScanInfo.Resolution> jfif = Optional.empty();
        Exif exif = null;
        TreeMap<Integer, byte[]> profilePieces = new TreeMap<>();
        Set<Long> profileMarkers = new HashSet<>();
        Set<Long> jfifMarkers = new HashSet<>();
        JpegFrame frame = new JpegFrame(name);
        JpegSegments segments = new JpegSegments(in, name);
        segments.next();
        while (!frame.take(segments.marker(), segments.body())) {
            int marker = segments.marker();
            byte[] body = segments.body();
            if (marker == 0xe0 && startsWith(body, JFIF)) {
                jfif = jfifResolution(body);
                jfifMarkers.add(segments.markerAt());
            } else if (marker == 0xe1 && startsWith(body, EXIF)) {
                exif = Exif.parse(body);
            } else if (marker == 0xe2 && startsWith(body, ICC) && body.length > 14) {
                profileMarkers.add(segments.markerAt());
                profilePieces.put(body[12] & 0xff, Arrays.copyOfRange(body, 14, body.length));
            }
            segments.next();
        }
        check(frame, name);
        ByteArrayOutputStream profile = new ByteArrayOutputStream();
        profilePieces.values().forEach(piece -> profile.write(piece, 0, piece.length));
        return new JpegHeader(
                frame.width(),
                frame.height(),
                frame.components(),
                jfif.isPresent() || exif == null ? jfif : exif.resolution(),
                profile.size() == 0 ? Optional.empty() : Optional.of(profile.toByteArray()),
                profileMarkers,
                frame.coding(OptionalInt.empty()),
                exif != null && Orientation.mirrored(exif.orientation()),
                frame.saysTransform(),
                jfifMarkers,
                frame.isNamedRgb());
    }

    private static void check(JpegFrame frame, String name) throws Problem {
        int components = frame.components();
        ScanFiles.checkSize(name, frame.width(), frame.height());
        if (frame.bits() != 8) {
            throw Problem.input(
                    name, "a JPEG of " + frame.bits() + " bits is not read. Save as TIFF.");
        }
        if (components == 4) {
            throw Problem.input(name, "is a CMYK image. Scan or save it as RGB.");
        }
        if (components != 1 && components != 3) {
            throw Problem.input(name, "has " + components + " channels. Save it as RGB.");
        }
        frame.refuseTooLargeToHold();
    }

    /**
     * The colour transform that a decoder must be told, 1 for YCbCr and 0 for none; empty where the
     * file itself leaves no doubt. Without any marker YCbCr is meant (ISO/IEC 10918-5 for JFIF, ISO
     * 32000-1 table 13 for PDF), unless the components are named R, G and B (common practice, no
     * source).
     *
     * @param around what the file around the JPEG says, which holds unless the JPEG itself says it
     *     (ISO 32000-1, table 13)
     */
    OptionalInt unsaidTransform(OptionalInt around) {
        if (channels != 3 || saysTransform) {
            return OptionalInt.empty();
        }
        boolean jfif = !jfifMarkers.isEmpty();
        int transform = around.orElse(namedRgb && !jfif ? 0 : 1);
        return jfif && transform == 1 ? OptionalInt.empty() : OptionalInt.of(transform);
    }

    /**
     * How coarsely it is coded, its components taken for what {@link #unsaidTransform} says.
     *
     * @param around what the file around the JPEG says
     */
    Optional<LossyCoding> codedAs(OptionalInt around) {
        OptionalInt unsaid = unsaidTransform(around);
        return unsaid.isEmpty()
                ? coding
                : coding.map(known -> known.withRgb(unsaid.getAsInt() == 0));
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
