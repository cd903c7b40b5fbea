package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Data that the formats' own documents work through (TIFF 6.0, ISO/IEC 15948), or that its rules
 * give by hand, byte for byte and from memory.
 */
class SpecifiedExamplesTest {
    private static final int LZW = 5;
    private static final int PACK_BITS = 32773;

    @TempDir Path dir;

    /** One grey row of 8 bits, laid out as section 2 says: header, data, directory of 12 bytes. */
    private Path row(int width, int compression, ByteOrder order, byte[] data) throws IOException {
        ByteBuffer out = ByteBuffer.allocate(1024).order(order);
        out.put((byte) (order == ByteOrder.BIG_ENDIAN ? 'M' : 'I'));
        out.put(out.get(0)).putShort((short) 42);
        int directory = (8 + data.length + 1) / 2 * 2;
        out.putInt(directory).put(data).position(directory);
        int[][] fields = {
            {256, width},
            {257, 1},
            {258, 8},
            {259, compression},
            {262, 1},
            {273, 8},
            {277, 1},
            {278, 1},
            {279, data.length}
        };
        out.putShort((short) fields.length);
        for (int[] field : fields) {
            out.putShort((short) field[0]).putShort((short) 4).putInt(1).putInt(field[1]);
        }
        out.putInt(0);
        byte[] bytes = new byte[out.position()];
        out.get(0, bytes);
        return Files.write(dir.resolve("row.tif"), bytes);
    }

    private static char[] sixteenBits(int... codes) {
        char[] samples = new char[codes.length];
        for (int i = 0; i < codes.length; i++) {
            samples[i] = (char) (257 * codes[i]);
        }
        return samples;
    }

    /** TIFF 6.0, section 13: 7 7 7 8 8 7 7 6 6 gives 256 7 258 8 8 258 6 6 257. */
    @Test
    void lzwAsWorkedThroughInSection13() throws Exception {
        int[] codes = {256, 7, 258, 8, 8, 258, 6, 6, 257};
        // Codes of nine bits, their highest bit first.
        StringBuilder bits = new StringBuilder();
        for (int code : codes) {
            bits.append(Integer.toBinaryString(512 + code).substring(1));
        }
        byte[] data = new byte[(bits.length() + 7) / 8];
        for (int i = 0; i < bits.length(); i++) {
            data[i / 8] |= (byte) ((bits.charAt(i) - '0') << (7 - i % 8));
        }
        for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
            assertArrayEquals(
                    sixteenBits(7, 7, 7, 8, 8, 7, 7, 6, 6),
                    ScanFixture.read(row(9, LZW, order, data), 1));
        }
    }

    /** The usual example of the scheme of section 9; -128 says nothing, as the section has it. */
    @Test
    void packBitsAsInSection9() throws Exception {
        int[] packed = {
            0xFE, 0xAA, 0x02, 0x80, 0x00, 0x2A, 0xFD, 0xAA, 0x80, 0x03, 0x80, 0x00, 0x2A, 0x22,
            0xF7, 0xAA
        };
        byte[] data = new byte[packed.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) packed[i];
        }
        int a = 0xAA;
        assertArrayEquals(
                sixteenBits(
                        a, a, a, 0x80, 0, 0x2A, a, a, a, a, 0x80, 0, 0x2A, 0x22, a, a, a, a, a, a,
                        a, a, a, a),
                ScanFixture.read(row(24, PACK_BITS, ByteOrder.BIG_ENDIAN, data), 1));
    }

    /**
     * ISO/IEC 15948, clause 9.2: each of the five filters, undone by hand. Two rows of three grey
     * samples; the second is filtered, the first is 10 20 30.
     */
    @Test
    void pngFiltersAsInClause9() throws Exception {
        int[] wanted = {11, 25, 24};
        int[][] filtered = {
            wanted,
            // Sub: less the sample to the left.
            {11, 14, -1},
            // Up: less the sample above.
            {1, 5, -6},
            // Average: less the floor of the mean of left and above.
            {11 - 5, 25 - 15, 24 - 27},
            // Paeth: less whichever of left, above, upper left is nearest to left + above - upper
            // left: 10 (10); 21, so 20; 35, so 30.
            {11 - 10, 25 - 20, 24 - 30}
        };
        for (int filter = 0; filter < filtered.length; filter++) {
            byte[] raw = new byte[8];
            System.arraycopy(new byte[] {0, 10, 20, 30, (byte) filter}, 0, raw, 0, 5);
            for (int i = 0; i < 3; i++) {
                raw[5 + i] = (byte) filtered[filter][i];
            }
            assertArrayEquals(
                    sixteenBits(10, 20, 30, 11, 25, 24),
                    ScanFixture.read(png(3, 2, raw), 1),
                    "filter " + filter);
        }
    }

    /** Signature and chunks as in clauses 5.2 and 5.3; data stored, not compressed (RFC 1951). */
    private Path png(int width, int height, byte[] raw) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(new byte[] {(byte) 137, 80, 78, 71, 13, 10, 26, 10});
        ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height);
        header.put((byte) 8).put((byte) 0).put((byte) 0).put((byte) 0).put((byte) 0);
        chunk(out, "IHDR", header.array());
        ByteBuffer stored = ByteBuffer.allocate(raw.length + 11);
        stored.put((byte) 0x78).put((byte) 0x01).put((byte) 1);
        stored.put((byte) raw.length).put((byte) 0).put((byte) ~raw.length).put((byte) 255);
        stored.put(raw);
        int a = 1;
        int b = 0;
        for (byte sample : raw) {
            a = (a + (sample & 0xff)) % 65521;
            b = (b + a) % 65521;
        }
        stored.putInt((b << 16) | a);
        chunk(out, "IDAT", stored.array());
        chunk(out, "IEND", new byte[0]);
        return Files.write(dir.resolve("rows.png"), out.toByteArray());
    }

    private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
        ByteBuffer whole = ByteBuffer.allocate(data.length + 12).putInt(data.length);
        whole.put(type.getBytes(StandardCharsets.US_ASCII)).put(data);
        CRC32 sum = new CRC32();
        sum.update(whole.array(), 4, data.length + 4);
        out.writeBytes(whole.putInt((int) sum.getValue()).array());
    }
}
