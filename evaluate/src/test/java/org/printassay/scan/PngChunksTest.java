package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;

/** What a PNG says of its codes (ISO/IEC 15948, 11.3.3), in chunks put behind its header. */
class PngChunksTest {
    private static final int HEADER_END = 8 + 12 + 13;

    @TempDir Path dir;

    private ScanInfo with(byte[]... chunks) throws Exception {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        BufferedImage image = new BufferedImage(2, 2, BufferedImage.TYPE_3BYTE_BGR);
        assertTrue(ImageIO.write(image, "png", plain));
        byte[] bytes = plain.toByteArray();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, HEADER_END);
        for (byte[] chunk : chunks) {
            out.writeBytes(chunk);
        }
        out.write(bytes, HEADER_END, bytes.length - HEADER_END);
        return ScanFiles.open(Files.write(dir.resolve("odd.png"), out.toByteArray())).info();
    }

    private static byte[] chunk(String type, byte[] body) {
        ByteBuffer chunk = ByteBuffer.allocate(body.length + 12).putInt(body.length);
        chunk.put(type.getBytes(StandardCharsets.ISO_8859_1)).put(body);
        CRC32 sum = new CRC32();
        sum.update(chunk.array(), 4, body.length + 4);
        return chunk.putInt((int) sum.getValue()).array();
    }

    private static byte[] gamma(int value) {
        return chunk("gAMA", ByteBuffer.allocate(4).putInt(value).array());
    }

    private static byte[] profile(byte[] profile, boolean damaged) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes(new byte[] {'a', 0, 0});
        try (DeflaterOutputStream out = new DeflaterOutputStream(body)) {
            out.write(profile);
        }
        byte[] bytes = body.toByteArray();
        if (damaged) {
            bytes[3] ^= 0x55;
        }
        return chunk("iCCP", bytes);
    }

    @Test
    void gammaThatStandsAloneIsHonoured() throws Exception {
        assertEquals(OptionalDouble.empty(), with().gamma());
        assertEquals(1, with(gamma(100_000)).gamma().orElseThrow(), 1e-9);
        assertEquals(1.8, with(gamma(55_556)).gamma().orElseThrow(), 1e-4);
    }

    /** 45455 is what sRGB files have to say; it is no news. */
    @Test
    void gammaOfSrgbOrAnImpossibleOneIsNoOther() throws Exception {
        for (int value : new int[] {45_455, 45_454, 45_470, 45_000, 0, -5, 1, 2_000_000}) {
            assertEquals(OptionalDouble.empty(), with(gamma(value)).gamma(), "gamma " + value);
        }
    }

    @Test
    void gammaBesideABetterWordIsPassedOver() throws Exception {
        byte[] srgb = chunk("sRGB", new byte[1]);
        assertEquals(OptionalDouble.empty(), with(gamma(100_000), srgb).gamma());
        assertEquals(OptionalDouble.empty(), with(srgb, gamma(100_000)).gamma());
        byte[] video = chunk("cICP", new byte[] {1, 13, 0, 1});
        assertEquals(OptionalDouble.empty(), with(video, gamma(100_000)).gamma());
    }

    @Test
    void damagedProfileIsKeptAsOneWithoutBytes() throws Exception {
        byte[] profile = RgbProfiles.of(RgbSpace.ROMM);
        assertArrayEquals(profile, with(profile(profile, false)).iccProfile().orElseThrow());
        assertEquals(0, with(profile(profile, true)).iccProfile().orElseThrow().length);
    }
}
