package org.printassay.recipe;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import javax.imageio.ImageIO;

/** Pictures of one colour with an embedded profile, put together by hand. */
final class WidePicture {
    private static final int SIDE = 24;

    private WidePicture() {}

    static byte[] of(String format, int r, int g, int b, byte[] profile) throws IOException {
        if (format.equals("tiff")) {
            return tiff(r, g, b, profile);
        }
        BufferedImage picture = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < SIDE * SIDE; i++) {
            picture.setRGB(i % SIDE, i / SIDE, r << 16 | g << 8 | b);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(picture, format, out);
        byte[] plain = out.toByteArray();
        return format.equals("png") ? png(plain, profile) : jpeg(plain, profile);
    }

    /** Signature and header take 33 bytes; the iCCP chunk follows (ISO/IEC 15948, 11.3.3.3). */
    private static byte[] png(byte[] plain, byte[] profile) {
        Deflater deflater = new Deflater();
        deflater.setInput(profile);
        deflater.finish();
        byte[] packed = new byte[profile.length + 100];
        int length = deflater.deflate(packed);
        byte[] name = "wide\0\0".getBytes(StandardCharsets.ISO_8859_1);
        ByteBuffer chunk = ByteBuffer.allocate(12 + name.length + length);
        chunk.putInt(name.length + length).put("iCCP".getBytes(StandardCharsets.US_ASCII));
        chunk.put(name).put(packed, 0, length);
        CRC32 crc = new CRC32();
        crc.update(chunk.array(), 4, 4 + name.length + length);
        chunk.putInt((int) crc.getValue());
        return inserted(plain, 33, chunk.array());
    }

    /** An APP2 segment behind the start and the JFIF segment (ISO 15076-1, B.4). */
    private static byte[] jpeg(byte[] plain, byte[] profile) {
        ByteBuffer segment = ByteBuffer.allocate(18 + profile.length);
        segment.putShort((short) 0xffe2).putShort((short) (16 + profile.length));
        segment.put("ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII));
        segment.put((byte) 1).put((byte) 1).put(profile);
        int jfif = 4 + 256 * (plain[4] & 0xff) + (plain[5] & 0xff);
        return inserted(plain, jfif, segment.array());
    }

    private static byte[] inserted(byte[] plain, int at, byte[] more) {
        ByteBuffer all = ByteBuffer.allocate(plain.length + more.length);
        all.put(plain, 0, at).put(more).put(plain, at, plain.length - at);
        return all.array();
    }

    /** TIFF 6.0, one strip; tag 34675 holds the profile. */
    private static byte[] tiff(int r, int g, int b, byte[] profile) {
        int[][] tags = {
            {256, 4, 1, SIDE},
            {257, 4, 1, SIDE},
            {258, 3, 3, 200},
            {259, 3, 1, 1},
            {262, 3, 1, 2},
            {273, 4, 1, 300 + profile.length},
            {277, 3, 1, 3},
            {278, 4, 1, SIDE},
            {279, 4, 1, 3 * SIDE * SIDE},
            {34675, 7, profile.length, 300}
        };
        ByteBuffer file =
                ByteBuffer.allocate(300 + profile.length + 3 * SIDE * SIDE)
                        .order(ByteOrder.LITTLE_ENDIAN);
        file.putShort((short) 0x4949).putShort((short) 42).putInt(8);
        file.putShort((short) tags.length);
        for (int[] tag : tags) {
            file.putShort((short) tag[0]).putShort((short) tag[1]).putInt(tag[2]).putInt(tag[3]);
        }
        file.putInt(0);
        file.position(200);
        file.putShort((short) 8).putShort((short) 8).putShort((short) 8);
        file.position(300);
        file.put(profile);
        byte[] pixel = {(byte) r, (byte) g, (byte) b};
        for (int i = 0; i < SIDE * SIDE; i++) {
            file.put(pixel);
        }
        return Arrays.copyOf(file.array(), file.position());
    }
}
