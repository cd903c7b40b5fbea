package org.printassay.scan;

import java.awt.image.BufferedImage;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/**
 * Small even JPEGs, written by the JDK without any word on what their three components are: they
 * are lightness and colour differences (ITU-R BT.601 as ISO/IEC 10918-5 uses it).
 */
final class MadeJpeg {
    static final int SIDE = 32;

    /** Red, green and blue of the whole picture. */
    static final int[] RGB = {200, 60, 30};

    /** The same as lightness, Cb and Cr. */
    static final int[] STORED = {98, 89, 201};

    static final byte[] JFIF = {
        (byte) 0xff, (byte) 0xe0, 0, 16, 'J', 'F', 'I', 'F', 0, 1, 1, 0, 0, 1, 0, 1, 0, 0
    };

    private MadeJpeg() {}

    static byte[] of(boolean progressive) throws IOException {
        return of(progressive, 0.95F);
    }

    static byte[] of(boolean progressive, float quality) throws IOException {
        WritableRaster raster =
                new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_3BYTE_BGR).getRaster();
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                raster.setPixel(x, y, STORED);
            }
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            param.setProgressiveMode(
                    progressive ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
            writer.setOutput(out);
            // A raster is written as it is, with no marker that says what it is.
            writer.write(null, new IIOImage(raster, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** Where a segment starts. */
    static int segment(byte[] jpeg, int... markers) {
        int at = 2;
        while (true) {
            int marker = jpeg[at + 1] & 0xff;
            if (Arrays.stream(markers).anyMatch(one -> one == marker)) {
                return at;
            }
            at += 2 + ((jpeg[at + 2] & 0xff) << 8 | (jpeg[at + 3] & 0xff));
        }
    }

    /** As if it had so many pixels. */
    static byte[] sized(byte[] jpeg, int width, int height) {
        byte[] sized = jpeg.clone();
        int at = segment(sized, 0xc0, 0xc1, 0xc2) + 5;
        sized[at] = (byte) (height >> 8);
        sized[at + 1] = (byte) height;
        sized[at + 2] = (byte) (width >> 8);
        sized[at + 3] = (byte) width;
        return sized;
    }

    /** With components of these names. */
    static byte[] named(byte[] jpeg, int... names) {
        byte[] named = jpeg.clone();
        int frame = segment(named, 0xc0, 0xc1);
        int scan = segment(named, 0xda);
        for (int i = 0; i < names.length; i++) {
            named[frame + 10 + 3 * i] = (byte) names[i];
            named[scan + 5 + 2 * i] = (byte) names[i];
        }
        return named;
    }

    /** With a segment in front of all others. */
    static byte[] inserted(byte[] jpeg, byte[] segment) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.writeBytes(segment);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }
}
