package org.printassay.scan;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalInt;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.printassay.problem.Problem;

/** JPEG data inside a TIFF, decoded by the JDK. */
final class JpegPieces {
    static final int SOI_BYTES = 2;

    private JpegPieces() {}

    /**
     * A complete JPEG stream from shared tables and one piece, with a marker (APP14) that states
     * the colour transform, which a decoder would otherwise guess.
     */
    static byte[] withTables(Optional<TiffFormat.Blob> tables, byte[] piece, int transform) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(piece.length + 1024);
        out.writeBytes(start(OptionalInt.of(transform)));
        tables.ifPresent(
                blob -> {
                    byte[] bytes = blob.bytes();
                    int end = bytes.length;
                    if (end >= 4 && (bytes[end - 1] & 0xff) == 0xd9) {
                        end -= 2;
                    }
                    out.write(bytes, SOI_BYTES, Math.max(0, end - SOI_BYTES));
                });
        out.write(piece, Math.min(SOI_BYTES, piece.length), Math.max(0, piece.length - SOI_BYTES));
        return out.toByteArray();
    }

    /** The first bytes of a JPEG, with a segment (APP14) that says a colour transform. */
    static byte[] start(OptionalInt transform) {
        if (transform.isEmpty()) {
            return new byte[] {(byte) 0xff, (byte) 0xd8};
        }
        byte[] start = {
            (byte) 0xff,
            (byte) 0xd8,
            (byte) 0xff,
            (byte) 0xee,
            0,
            14,
            'A',
            'd',
            'o',
            'b',
            'e',
            0,
            100,
            0,
            0,
            0,
            0,
            (byte) transform.getAsInt()
        };
        return start;
    }

    /** Interleaved 8 bit samples of a part of a JPEG stream, which must hold all of it. */
    static byte[] decode(String name, byte[] jpeg, Rectangle part, int samples)
            throws IOException, Problem {
        JpegFrame.of(name, jpeg).refuseTooLargeToHold();
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        try (ImageInputStream in =
                new MemoryCacheImageInputStream(new ByteArrayInputStream(jpeg))) {
            reader.setInput(in, true, true);
            if (reader.getWidth(0) < part.x + part.width
                    || reader.getHeight(0) < part.y + part.height) {
                throw Problem.input(
                        name, "a JPEG piece is smaller than it should be. Save the scan anew.");
            }
            if ((long) reader.getWidth(0) * reader.getHeight(0) > (256L << 20)) {
                throw Problem.input(
                        name, "a JPEG piece is far larger than it should be. Save it anew.");
            }
            boolean[] early = new boolean[1];
            reader.addIIOReadWarningListener((source, warning) -> early[0] = true);
            ImageReadParam region = reader.getDefaultReadParam();
            region.setSourceRegion(part);
            Raster raster = reader.read(0, region).getRaster();
            if (early[0] || raster.getNumBands() != samples) {
                throw Problem.input(
                        name,
                        "its JPEG data are damaged or end early. Copy the file again, or scan again.");
            }
            byte[] out = new byte[part.width * part.height * samples];
            int[] row = new int[part.width * samples];
            for (int y = 0; y < part.height; y++) {
                raster.getPixels(0, y, part.width, 1, row);
                for (int i = 0; i < row.length; i++) {
                    out[y * row.length + i] = (byte) row[i];
                }
            }
            return out;
        } catch (IIOException | RuntimeException e) {
            throw Problem.input(
                    name, "its JPEG data are damaged. Copy the file again, or scan again.", e);
        } finally {
            reader.dispose();
        }
    }
}
