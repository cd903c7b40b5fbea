package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.problem.Problem;

/** BigTIFF layouts that no tool at hand writes, made byte by byte (TIFF 6.0). */
class OddTiffTest {
    @TempDir Path dir;

    /** One grey row of four pixels, 8 bits, uncompressed, in strips; every field a LONG8. */
    private static Map<Integer, long[]> fields() {
        Map<Integer, long[]> fields = new TreeMap<>();
        fields.put(TiffDirectory.IMAGE_WIDTH, new long[] {4});
        fields.put(TiffDirectory.IMAGE_LENGTH, new long[] {1});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8});
        fields.put(TiffDirectory.COMPRESSION, new long[] {1});
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {1});
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {1});
        fields.put(TiffDirectory.ROWS_PER_STRIP, new long[] {1});
        return fields;
    }

    /** Writes the data of pieces one after the other, then the directory. */
    private Path write(Map<Integer, long[]> fields, boolean tiled, byte[]... pieces)
            throws IOException {
        ByteBuffer out = ByteBuffer.allocate(1 << 16).order(ByteOrder.LITTLE_ENDIAN);
        out.put(new byte[] {'I', 'I', 43, 0, 8, 0, 0, 0}).putLong(0);
        long[] offsets = new long[pieces.length];
        long[] lengths = new long[pieces.length];
        for (int i = 0; i < pieces.length; i++) {
            offsets[i] = out.position();
            lengths[i] = pieces[i].length;
            out.put(pieces[i]);
        }
        Map<Integer, long[]> all = new TreeMap<>(fields);
        all.put(tiled ? TiffDirectory.TILE_OFFSETS : TiffDirectory.STRIP_OFFSETS, offsets);
        all.put(tiled ? TiffDirectory.TILE_BYTE_COUNTS : TiffDirectory.STRIP_BYTE_COUNTS, lengths);
        out.putLong(8, out.position()).putLong(all.size());
        int values = out.position() + 20 * all.size() + 8;
        for (Map.Entry<Integer, long[]> field : all.entrySet()) {
            long[] of = field.getValue();
            out.putShort(field.getKey().shortValue()).putShort((short) 16).putLong(of.length);
            out.putLong(of.length == 1 ? of[0] : values);
            for (int i = 0; i < of.length && of.length > 1; i++) {
                out.putLong(values, of[i]);
                values += 8;
            }
        }
        out.putLong(0);
        byte[] bytes = new byte[values];
        out.get(0, bytes);
        return Files.write(dir.resolve("odd.tif"), bytes);
    }

    private static String refusal(Path file) {
        Problem problem =
                assertThrows(Problem.class, () -> ScanFiles.open(file).stream((y, row) -> {}));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        return problem.getMessage();
    }

    private static byte[] deflated(byte[] plain) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(out)) {
            deflater.write(plain);
        }
        return out.toByteArray();
    }

    @Test
    void greyBesideAlphaInPlanesIsReadFromItsOwnPlane() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {2});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8});
        fields.put(TiffDirectory.PLANAR_CONFIGURATION, new long[] {2});
        byte[] grey = {10, 20, 30, 40};
        byte[] alpha = {-1, -1, -1, -1};
        char[] expected = {2570, 5140, 7710, 10280};
        assertArrayEquals(expected, ScanFixture.read(write(fields, false, grey, alpha), 1));
        fields.put(TiffDirectory.COMPRESSION, new long[] {8});
        assertArrayEquals(
                expected,
                ScanFixture.read(write(fields, false, deflated(grey), deflated(alpha)), 1));
    }

    @Test
    void lightnessAndColourInPlanesAreRefused() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {6});
        fields.put(TiffDirectory.COMPRESSION, new long[] {7});
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {3});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8, 8});
        fields.put(TiffDirectory.PLANAR_CONFIGURATION, new long[] {2});
        byte[] any = {0, 0, 0, 0};
        String why = refusal(write(fields, false, any, any, any));
        assertTrue(why.contains("planes of their own"), why);
    }

    /** Two thousand strips at one place: 20 kB that would be read as many times. */
    @Test
    void stripsThatShareTheirBytesAreRefused() throws Exception {
        int strips = 2000;
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.IMAGE_LENGTH, new long[] {strips});
        byte[][] pieces = new byte[strips][0];
        pieces[strips - 1] = new byte[] {10, 20, 30, 40};
        Path file = write(fields, false, pieces);
        byte[] bytes = Files.readAllBytes(file);
        ByteBuffer tiff = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        // The lengths stand behind the offsets at the end: as if all strips were whole, and more.
        for (int i = 0; i < strips; i++) {
            tiff.putLong(bytes.length - 8 * strips + 8 * i, 32);
        }
        String why = refusal(Files.write(file, bytes));
        assertTrue(why.contains("share the same bytes"), why);
    }

    /** 2^32 + 1 rows a tile would be cut to 1 if it were taken as a 32 bit number. */
    @Test
    void tilesOfImpossibleHeightAreRefused() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.IMAGE_LENGTH, new long[] {3});
        fields.put(TiffDirectory.TILE_WIDTH, new long[] {16});
        fields.put(TiffDirectory.TILE_LENGTH, new long[] {(1L << 32) + 1});
        String why = refusal(write(fields, true, new byte[16]));
        assertTrue(why.contains("4294967297"), why);
    }
}
