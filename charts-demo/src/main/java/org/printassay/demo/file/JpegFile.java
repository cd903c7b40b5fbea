package org.printassay.demo.file;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.printassay.demo.flatbed.Exposure;

/**
 * JPEG by the JDK's writer, with the JFIF density set and the profile put in APP2 segments (ISO
 * 15076-1 Annex B.4).
 */
final class JpegFile {
    /** Most profile bytes one segment holds. */
    private static final int SEGMENT = 65519;

    private JpegFile() {}

    static void write(ScanHeader header, Exposure exposure, double quality, OutputStream to)
            throws IOException {
        if (header.pixelBytes() > 600_000_000L) {
            throw new IOException("a scan this large is not made as JPEG");
        }
        BufferedImage image =
                new BufferedImage(header.width(), header.height(), BufferedImage.TYPE_INT_RGB);
        int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        int[] next = {0};
        exposure.run(
                (samples, length) -> {
                    for (int i = 0; i < length; i += 3) {
                        pixels[next[0]++] =
                                ((samples[i] & 255) << 16)
                                        | ((samples[i + 1] & 255) << 8)
                                        | (samples[i + 2] & 255);
                    }
                });
        byte[] jpeg = compressed(image, quality);
        // The JDK's writer starts with SOI and a JFIF segment of 18 bytes.
        if ((jpeg[2] & 255) != 0xFF || (jpeg[3] & 255) != 0xE0) {
            throw new IOException("the JPEG writer gave no JFIF header");
        }
        int end = 4 + (((jpeg[4] & 255) << 8) | (jpeg[5] & 255));
        int density =
                header.samplesPerInch() == null ? 1 : (int) Math.round(header.samplesPerInch());
        jpeg[13] = (byte) (header.samplesPerInch() == null ? 0 : 1);
        jpeg[14] = (byte) (density >> 8);
        jpeg[15] = (byte) density;
        jpeg[16] = jpeg[14];
        jpeg[17] = jpeg[15];
        to.write(jpeg, 0, end);
        byte[] profile = header.profile();
        if (profile != null) {
            profileSegments(profile, to);
        }
        to.write(jpeg, end, jpeg.length - end);
    }

    private static byte[] compressed(BufferedImage image, double quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality((float) quality);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static void profileSegments(byte[] profile, OutputStream to) throws IOException {
        DataOutputStream out = new DataOutputStream(to);
        int parts = (profile.length + SEGMENT - 1) / SEGMENT;
        for (int part = 0; part < parts; part++) {
            int from = part * SEGMENT;
            byte[] data =
                    Arrays.copyOfRange(profile, from, Math.min(profile.length, from + SEGMENT));
            out.writeShort(0xFFE2);
            out.writeShort(2 + 14 + data.length);
            out.write("ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII));
            out.write(part + 1);
            out.write(parts);
            out.write(data);
        }
    }
}
