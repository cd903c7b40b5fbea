package org.printassay.scan;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;

/**
 * An image of a PDF (ISO 32000-1, 8.9.5) as its dictionary tells.
 *
 * @param width pixels across
 * @param height pixels down
 * @param bits a sample, 8 or 16; 8 for JPEG data
 * @param channels 1 or 3
 * @param profile ICC profile of its colour space
 * @param coding how the data are coded
 * @param predictor rows are differences as in PNG (10 and above) or TIFF (2); 1 for none
 * @param inverted whether 0 is white
 * @param transform colour transform of JPEG data, where the page says it: 1 YCbCr, 0 none
 */
record PdfImage(
        int width,
        int height,
        int bits,
        int channels,
        Optional<byte[]> profile,
        Coding coding,
        int predictor,
        boolean inverted,
        OptionalInt transform) {
    private static final int LARGEST_PROFILE = 16 << 20;
    private static final int PIECE = 1 << 16;
    private static final byte[] NO_PROFILE = {};

    /** Codings that are read. */
    enum Coding {
        /** Plain samples. */
        NONE,
        /** Deflate. */
        FLATE,
        /** A whole JPEG file. */
        JPEG
    }

    static PdfImage of(String name, COSStream image) throws Problem, IOException {
        int width = image.getInt(COSName.WIDTH, 0);
        int height = image.getInt(COSName.HEIGHT, 0);
        ScanFiles.checkSize(name, width, height);
        if (image.getBoolean(COSName.IMAGE_MASK, false)) {
            throw refuse(name, "is black and white only");
        }
        Coding coding = coding(name, filter(image));
        int bits = image.getInt(COSName.BITS_PER_COMPONENT, 8);
        if (bits != 8 && (bits != 16 || coding == Coding.JPEG)) {
            throw refuse(name, "has " + bits + " bits a sample");
        }
        COSBase space = image.getDictionaryObject(COSName.COLORSPACE);
        int channels = channels(name, space);
        COSDictionary parameters = parameters(image);
        int predictor = parameters.getInt(COSName.PREDICTOR, 1);
        if (predictor > 1) {
            boolean same =
                    parameters.getInt(COSName.COLUMNS, 1) == width
                            && parameters.getInt(COSName.COLORS, 1) == channels
                            && parameters.getInt(COSName.BITS_PER_COMPONENT, 8) == bits;
            if (!same || (predictor != 2 && (predictor < 10 || predictor > 15))) {
                throw Problem.input(
                        name, "its image is coded against its own size. Scan to TIFF or PNG.");
            }
        }
        return new PdfImage(
                width,
                height,
                bits,
                channels,
                profile(space),
                coding,
                predictor,
                inverted(image.getCOSArray(COSName.DECODE)),
                transform(parameters));
    }

    private static Problem refuse(String name, String what) {
        return Problem.input(
                name,
                "its image "
                        + what
                        + ", which is not read. Scan to TIFF or PNG, in colour with 16 bits.");
    }

    private static Coding coding(String name, List<String> filters) throws Problem {
        if (filters.isEmpty()) {
            return Coding.NONE;
        }
        String filter = filters.get(0);
        if (filters.size() > 1) {
            throw refuse(name, "is coded twice over");
        }
        return switch (filter) {
            case "FlateDecode", "Fl" -> Coding.FLATE;
            case "DCTDecode", "DCT" -> Coding.JPEG;
            case "CCITTFaxDecode", "CCF", "JBIG2Decode" ->
                    throw refuse(name, "is black and white only");
            case "JPXDecode" -> throw refuse(name, "is coded as JPEG 2000");
            default -> throw refuse(name, "is coded in another way than Deflate or JPEG");
        };
    }

    private static List<String> filter(COSStream stream) {
        COSBase filter = stream.getDictionaryObject(COSName.FILTER, COSName.F);
        if (filter instanceof COSName one) {
            return List.of(one.getName());
        }
        if (filter instanceof COSArray several) {
            return several.toList().stream()
                    .map(one -> one instanceof COSName cos ? cos.getName() : "?")
                    .toList();
        }
        return List.of();
    }

    private static COSDictionary parameters(COSStream image) {
        COSBase found = image.getDictionaryObject(COSName.DECODE_PARMS, COSName.DP);
        if (found instanceof COSArray several && several.size() > 0) {
            found = several.getObject(0);
        }
        return found instanceof COSDictionary parameters ? parameters : new COSDictionary();
    }

    private static OptionalInt transform(COSDictionary parameters) {
        int said = parameters.getInt(COSName.getPDFName("ColorTransform"), -1);
        return said == 0 || said == 1 ? OptionalInt.of(said) : OptionalInt.empty();
    }

    private static int channels(String name, @Nullable COSBase space) throws Problem {
        String kind = "";
        if (space instanceof COSName plain) {
            kind = plain.getName();
        } else if (space instanceof COSArray array && array.size() > 0) {
            kind = array.getObject(0) instanceof COSName first ? first.getName() : "";
        }
        return switch (kind) {
            case "DeviceGray", "CalGray", "G" -> 1;
            case "DeviceRGB", "CalRGB", "RGB" -> 3;
            case "ICCBased" -> {
                Optional<COSStream> profile = profileStream(space);
                if (profile.isEmpty()) {
                    throw Problem.input(
                            name,
                            "the profile of its image is not in the file: it is cut off or damaged."
                                    + " Copy it again, or scan to TIFF or PNG.");
                }
                int channels = profile.get().getInt(COSName.N, 0);
                if (channels != 1 && channels != 3) {
                    throw refuse(name, "has " + channels + " channels");
                }
                yield channels;
            }
            case "DeviceCMYK", "CMYK" -> throw refuse(name, "is CMYK");
            default -> throw refuse(name, "has a palette or special colour space");
        };
    }

    private static Optional<COSStream> profileStream(@Nullable COSBase space) {
        return space instanceof COSArray array
                        && array.size() > 1
                        && array.getObject(1) instanceof COSStream stream
                ? Optional.of(stream)
                : Optional.empty();
    }

    private static Optional<byte[]> profile(@Nullable COSBase space) throws IOException {
        Optional<COSStream> stream =
                space instanceof COSArray array
                                && array.size() > 1
                                && COSName.ICCBASED.equals(array.getObject(0))
                        ? profileStream(space)
                        : Optional.empty();
        return stream.isEmpty() ? Optional.empty() : decoded(stream.get(), LARGEST_PROFILE);
    }

    /** A small stream decoded; empty when it is coded otherwise than by Deflate, or too long. */
    static Optional<byte[]> decoded(COSStream stream, int largest) throws IOException {
        List<String> filters = filter(stream);
        if (filters.size() > 1) {
            return Optional.empty();
        }
        try (InputStream raw = stream.createRawInputStream()) {
            InputStream in = raw;
            if (!filters.isEmpty()) {
                if (!filters.get(0).equals("FlateDecode") && !filters.get(0).equals("Fl")) {
                    return Optional.empty();
                }
                in = new InflaterInputStream(raw);
            }
            byte[] bytes = in.readNBytes(largest + 1);
            return bytes.length > largest ? Optional.empty() : Optional.of(bytes);
        }
    }

    private static boolean inverted(@Nullable COSArray decode) {
        return decode != null
                && decode.size() >= 2
                && decode.getObject(0) instanceof COSNumber low
                && decode.getObject(1) instanceof COSNumber high
                && low.floatValue() > high.floatValue();
    }

    /** Whether this may be a further strip of an image. */
    boolean continues(PdfImage first) {
        return width == first.width
                && channels == first.channels
                && bits == first.bits
                && coding == first.coding
                && inverted == first.inverted
                && Arrays.equals(profile.orElse(NO_PROFILE), first.profile.orElse(NO_PROFILE));
    }

    /** Puts the coded data into a file that goes with the program. */
    static Path extracted(String name, COSStream image) throws IOException, Problem {
        Path file = temporary(name);
        try (InputStream raw = image.createRawInputStream();
                OutputStream out = Files.newOutputStream(file)) {
            byte[] piece = new byte[PIECE];
            for (int got = raw.read(piece); got >= 0; got = raw.read(piece)) {
                write(name, out, piece, got);
            }
        } catch (IOException | RuntimeException | Problem e) {
            Files.deleteIfExists(file);
            throw e;
        }
        return file;
    }

    /** A new file that goes with the program. */
    static Path temporary(String name) throws Problem {
        try {
            Path file = Files.createTempFile("printassay", ".image");
            file.toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw noRoom(name, e);
        }
    }

    /** Writes a piece, to see that there is room for one. */
    static void fill(String name, Path file) throws Problem {
        try (OutputStream out = Files.newOutputStream(file)) {
            write(name, out, new byte[PIECE], PIECE);
        } catch (IOException e) {
            throw noRoom(name, e);
        }
    }

    private static void write(String name, OutputStream out, byte[] piece, int length)
            throws Problem {
        try {
            out.write(piece, 0, length);
        } catch (IOException e) {
            throw noRoom(name, e);
        }
    }

    private static Problem noRoom(String name, IOException cause) {
        return Problem.input(
                name,
                "reading it takes a temporary file, which cannot be written in "
                        + System.getProperty("java.io.tmpdir")
                        + ". Make room there, allow writing, or scan to TIFF or PNG.",
                cause);
    }
}
