package org.printassay.recipe;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.zip.InflaterInputStream;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.IccException;
import org.printassay.colour.icc.IccProfile;
import org.printassay.colour.icc.IccTransform;
import org.printassay.colour.icc.Intent;
import org.printassay.problem.Problem;

/**
 * Some thousand pixels of a picture as colours: by its embedded RGB profile (relative colorimetric)
 * where it has one that can be used, else as sRGB.
 *
 * @param colours every so many pixels, none that is mostly transparent
 * @param encoding what they were taken as
 * @param profile name of the embedded profile, empty without one
 */
record PicturePixels(List<Lab> colours, Encoding encoding, String profile) {
    /** Pixels looked at along the longer side: enough for colours of any area that is seen. */
    private static final int LONGEST_SIDE = 240;

    private static final long MOST_PIXELS = 400_000_000L;

    /** Pieces of a TIFF are decoded whole. */
    private static final long MOST_PIXELS_OF_A_PIECE = 50_000_000L;

    private static final int MOST_PROFILE_BYTES = 4 << 20;

    /** Largest difference, L*a*b*, up to which a profile is that of sRGB. */
    private static final double SAME_SPACE = 1;

    PicturePixels {
        colours = List.copyOf(colours);
    }

    /** What codes of a picture were taken as. */
    enum Encoding {
        SRGB,
        /** Its own, by its profile. */
        EMBEDDED,
        /** sRGB, because there is no profile. */
        NOT_SAID,
        /** sRGB, because its profile cannot be used. */
        UNUSABLE
    }

    /** What the user of a chart should know of it; empty when nothing. */
    String note(RgbSpace space) {
        return switch (encoding) {
            case SRGB -> "";
            case EMBEDDED -> "the picture is in " + profile + "; its colours were converted.";
            case NOT_SAID ->
                    space == RgbSpace.SRGB
                            ? ""
                            : "the picture carries no profile; its colours were taken as sRGB.";
            case UNUSABLE ->
                    "the picture's profile"
                            + profile
                            + " cannot be used; its colours were taken as sRGB.";
        };
    }

    static PicturePixels read(Path file) throws Problem {
        String name = String.valueOf(file.getFileName()).replaceAll("\\p{C}", "?");
        if (!Files.isRegularFile(file)) {
            throw Problem.input(name, "there is no such picture.");
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw Problem.input(
                        name, "is not a picture that can be read. Use JPEG, PNG or TIFF.");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, false);
                return read(name, reader);
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            // Decoders of the library throw whatever a damaged file leads them to.
            throw Problem.input(name, "the picture is damaged or of a kind that is not read.", e);
        }
    }

    private static PicturePixels read(String name, ImageReader reader) throws IOException, Problem {
        long width = reader.getWidth(0);
        long height = reader.getHeight(0);
        if (width * height > MOST_PIXELS) {
            throw Problem.input(name, "is too large. Give a copy of at most 20000 x 20000 pixels.");
        }
        boolean inPieces = "tif".equalsIgnoreCase(reader.getFormatName());
        long piece = (long) reader.getTileWidth(0) * reader.getTileHeight(0);
        if (inPieces && piece > MOST_PIXELS_OF_A_PIECE) {
            throw Problem.input(name, "is one giant piece. Give a copy saved as PNG or JPEG.");
        }
        int step = (int) Math.max(1, (Math.max(width, height) + LONGEST_SIDE - 1) / LONGEST_SIDE);
        ImageReadParam every = reader.getDefaultReadParam();
        every.setSourceSubsampling(step, step, 0, 0);
        ImageTypeSpecifier own = ownType(reader);
        if (own != null) {
            every.setDestinationType(own);
        }
        BufferedImage small = reader.read(0, every);
        byte[] embedded = profile(reader, small.getColorModel());
        Conversion conversion = Conversion.of(embedded);
        List<Lab> colours = new ArrayList<>();
        for (int y = 0; y < small.getHeight(); y++) {
            for (int x = 0; x < small.getWidth(); x++) {
                double[] rgb = rgb(small, x, y);
                if (rgb != null) {
                    colours.add(conversion.lab(rgb));
                }
            }
        }
        if (colours.isEmpty()) {
            throw Problem.input(name, "has no pixels that are not transparent.");
        }
        return new PicturePixels(colours, conversion.encoding, conversion.name);
    }

    /** The type that keeps codes of an embedded RGB profile as they are; null without one. */
    private static @Nullable ImageTypeSpecifier ownType(ImageReader reader) throws IOException {
        Iterator<ImageTypeSpecifier> types = reader.getImageTypes(0);
        while (types.hasNext()) {
            ImageTypeSpecifier type = types.next();
            ColorSpace space = type.getColorModel().getColorSpace();
            if (space instanceof ICC_ColorSpace
                    && space.getType() == ColorSpace.TYPE_RGB
                    && !space.isCS_sRGB()) {
                return type;
            }
        }
        return null;
    }

    private static byte[] profile(ImageReader reader, ColorModel model) throws IOException {
        if (model.getColorSpace() instanceof ICC_ColorSpace space
                && space.getType() == ColorSpace.TYPE_RGB
                && !space.isCS_sRGB()) {
            return space.getProfile().getData();
        }
        IIOMetadata metadata =
                "png".equalsIgnoreCase(reader.getFormatName()) ? reader.getImageMetadata(0) : null;
        if (metadata == null) {
            return new byte[0];
        }
        IIOMetadataNode root =
                (IIOMetadataNode) metadata.getAsTree(metadata.getNativeMetadataFormatName());
        for (int i = 0; i < root.getLength(); i++) {
            if (root.item(i) instanceof IIOMetadataNode node
                    && node.getNodeName().equals("iCCP")
                    && node.getUserObject() instanceof byte[] packed) {
                return unpacked(packed);
            }
        }
        return new byte[0];
    }

    private static byte[] unpacked(byte[] packed) throws IOException {
        try (InflaterInputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
            byte[] bytes = in.readNBytes(MOST_PROFILE_BYTES + 1);
            if (bytes.length > MOST_PROFILE_BYTES) {
                throw new IIOException("profile too large");
            }
            return bytes;
        }
    }

    /** Codes of a pixel, 0 to 1; null where it is mostly transparent. */
    private static double @Nullable [] rgb(BufferedImage image, int x, int y) {
        ColorModel model = image.getColorModel();
        Object pixel = image.getRaster().getDataElements(x, y, null);
        float[] parts = model.getNormalizedComponents(pixel, null, 0);
        int colours = model.getNumColorComponents();
        if (model.hasAlpha() && parts[colours] < 0.5) {
            return null;
        }
        return colours < 3
                ? new double[] {parts[0], parts[0], parts[0]}
                : new double[] {parts[0], parts[1], parts[2]};
    }

    /** From codes to colour. */
    private static final class Conversion {
        private final Encoding encoding;
        private final String name;
        private final @Nullable IccTransform transform;

        private Conversion(Encoding encoding, String name, @Nullable IccTransform transform) {
            this.encoding = encoding;
            this.name = name;
            this.transform = transform;
        }

        static Conversion of(byte[] embedded) {
            if (embedded.length == 0) {
                return new Conversion(Encoding.NOT_SAID, "", null);
            }
            String name = "";
            try {
                IccProfile profile = IccProfile.parse(embedded);
                name = profile.description();
                if (profile.space() == IccProfile.Space.RGB) {
                    IccTransform own = IccTransform.toColour(profile, Intent.RELATIVE);
                    return isSrgb(own)
                            ? new Conversion(Encoding.SRGB, name, null)
                            : new Conversion(
                                    Encoding.EMBEDDED,
                                    name.isEmpty() ? "an encoding of its own" : name,
                                    own);
                }
            } catch (IccException e) {
                // Told in the note.
            }
            return new Conversion(Encoding.UNUSABLE, name.isEmpty() ? "" : " (" + name + ")", null);
        }

        private static boolean isSrgb(IccTransform own) {
            int[][] looked = {{255, 0, 0}, {0, 255, 0}, {0, 0, 255}, {128, 128, 128}, {40, 90, 60}};
            for (int[] c : looked) {
                Lab here = own.lab(c[0] / 255.0, c[1] / 255.0, c[2] / 255.0);
                Lab there = RgbSpace.SRGB.toLab(new Rgb8(c[0], c[1], c[2]));
                double apart =
                        Math.hypot(
                                here.l() - there.l(),
                                Math.hypot(here.a() - there.a(), here.b() - there.b()));
                if (apart > SAME_SPACE) {
                    return false;
                }
            }
            return true;
        }

        Lab lab(double[] rgb) {
            if (transform != null) {
                return transform.lab(rgb);
            }
            return RgbSpace.SRGB.toLab(new Rgb8(code(rgb[0]), code(rgb[1]), code(rgb[2])));
        }

        private static int code(double part) {
            return (int) Math.round(255 * Math.max(0, Math.min(1, part)));
        }
    }
}
