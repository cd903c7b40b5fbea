package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
        all.putIfAbsent(
                tiled ? TiffDirectory.TILE_BYTE_COUNTS : TiffDirectory.STRIP_BYTE_COUNTS, lengths);
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

    /**
     * TIFF 6.0 section 18: the colours of "associated" alpha are multiplied by it. The last one
     * cannot have been, and stays.
     */
    @Test
    void greyThatAlphaWasMultipliedIntoIsDividedByIt() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {2});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8});
        fields.put(TiffDirectory.EXTRA_SAMPLES, new long[] {1});
        byte[] pixels = {10, -1, 10, 51, 0, 0, 60, 51};
        char[] expected = {10 * 257, 50 * 257, 0, 60 * 257};
        assertArrayEquals(expected, ScanFixture.read(write(fields, false, pixels), 1));
        fields.put(TiffDirectory.EXTRA_SAMPLES, new long[] {2});
        assertArrayEquals(
                new char[] {2570, 2570, 0, 60 * 257},
                ScanFixture.read(write(fields, false, pixels), 1));
        fields.put(TiffDirectory.EXTRA_SAMPLES, new long[] {1});
        // The same in planes of their own, and with another plane between them.
        fields.put(TiffDirectory.PLANAR_CONFIGURATION, new long[] {2});
        byte[] grey = {10, 10, 0, 60};
        byte[] alpha = {-1, 51, 0, 51};
        assertArrayEquals(expected, ScanFixture.read(write(fields, false, grey, alpha), 1));
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {3});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8, 8});
        fields.put(TiffDirectory.EXTRA_SAMPLES, new long[] {0, 1});
        byte[] any = {1, 2, 3, 4};
        assertArrayEquals(expected, ScanFixture.read(write(fields, false, grey, any, alpha), 1));
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {0});
        String why = refusal(write(fields, false, grey, any, alpha));
        assertTrue(why.contains("multiplied by an alpha"), why);
    }

    /** Strips and tiles of one picture, colours multiplied by alpha, with and without planes. */
    @Test
    void colourThatAlphaWasMultipliedIntoIsTheSameInPlanesAndTiles() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {4});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8, 8, 8});
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {2});
        fields.put(TiffDirectory.EXTRA_SAMPLES, new long[] {1});
        byte[] opaque = {-1, 77, 51, 90};
        byte[][] colours = {{10, 20, 30, 40}, {5, 6, 7, 8}, {50, 60, 51, 80}};
        byte[] together = new byte[16];
        byte[][] tiles = new byte[4][16 * 16];
        for (int x = 0; x < 4; x++) {
            for (int c = 0; c < 4; c++) {
                byte value = c < 3 ? colours[c][x] : opaque[x];
                together[4 * x + c] = value;
                tiles[c][x] = value;
            }
        }
        char[] expected = ScanFixture.read(write(fields, false, together), 3);
        assertEquals(Math.round(20 * 255 / 77.0) * 257, expected[3]);
        fields.put(TiffDirectory.PLANAR_CONFIGURATION, new long[] {2});
        assertArrayEquals(
                expected,
                ScanFixture.read(
                        write(fields, false, colours[0], colours[1], colours[2], opaque), 3));
        fields.put(TiffDirectory.TILE_WIDTH, new long[] {16});
        fields.put(TiffDirectory.TILE_LENGTH, new long[] {16});
        assertArrayEquals(expected, ScanFixture.read(write(fields, true, tiles), 3));
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

    /**
     * Tile and band together must fit into the memory that the program is started with, as its
     * start script says; each of these alone would.
     */
    @Test
    void tilesThatTakeMoreThanTheProgramIsGivenAreRefused() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.IMAGE_WIDTH, new long[] {6688});
        fields.put(TiffDirectory.IMAGE_LENGTH, new long[] {6688});
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {3});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {16, 16, 16});
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {2});
        fields.put(TiffDirectory.TILE_WIDTH, new long[] {6688});
        fields.put(TiffDirectory.TILE_LENGTH, new long[] {6688});
        fields.put(TiffDirectory.COMPRESSION, new long[] {8});
        String why = refusal(write(fields, true, deflated(new byte[16])));
        assertTrue(why.contains("tiles are too large") && why.contains("in strips"), why);
    }

    /** Fields of an RGB picture that is one strip of JPEG, coded as colour differences or not. */
    private static Map<Integer, long[]> jpegFields(int side, int photometric) {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.IMAGE_WIDTH, new long[] {side});
        fields.put(TiffDirectory.IMAGE_LENGTH, new long[] {side});
        fields.put(TiffDirectory.ROWS_PER_STRIP, new long[] {side});
        fields.put(TiffDirectory.SAMPLES_PER_PIXEL, new long[] {3});
        fields.put(TiffDirectory.BITS_PER_SAMPLE, new long[] {8, 8, 8});
        fields.put(TiffDirectory.COMPRESSION, new long[] {7});
        fields.put(TiffDirectory.PHOTOMETRIC, new long[] {photometric});
        return fields;
    }

    @Test
    void progressivePieceThatTakesGigabytesIsRefused() throws Exception {
        byte[] large = MadeJpeg.sized(MadeJpeg.of(true), 12_000, 12_000);
        String why = refusal(write(jpegFields(12_000, 6), false, large));
        assertTrue(why.contains("progressive"), why);
        assertTrue(why.contains("baseline"), why);
    }

    /** The tables that the JDK scales by quality are those of ISO/IEC 10918-1, Annex K. */
    @Test
    void jpegInATiffTellsItsQuality() throws Exception {
        for (int quality : new int[] {40, 75, 92}) {
            byte[] piece = MadeJpeg.of(false, quality / 100F);
            Path file = write(jpegFields(MadeJpeg.SIDE, 6), false, piece);
            LossyCoding coding = ScanFiles.open(file).info().coding().orElseThrow();
            assertEquals(quality, coding.quality(), 2);
            assertFalse(coding.ofRgb());
            Path rgb = write(jpegFields(MadeJpeg.SIDE, 2), false, piece);
            assertTrue(ScanFiles.open(rgb).info().coding().orElseThrow().ofRgb());
        }
    }

    /** As most writers have it: tables once, in a field of their own. */
    @Test
    void qualityIsReadFromSharedTables() throws Exception {
        byte[] whole = MadeJpeg.of(false, 0.6F);
        int from = MadeJpeg.segment(whole, 0xdb);
        int to = MadeJpeg.segment(whole, 0xc0, 0xc1);
        assertEquals(2, from, "tables come first");
        ByteBuffer tables = ByteBuffer.allocate(8 * (to + 2)).order(ByteOrder.LITTLE_ENDIAN);
        tables.put(whole, 0, to).put((byte) 0xff).put((byte) 0xd9);
        long[] asValues = new long[to + 2];
        for (int i = 0; i < asValues.length; i++) {
            asValues[i] = tables.getLong(8 * i);
        }
        Map<Integer, long[]> fields = jpegFields(MadeJpeg.SIDE, 6);
        fields.put(TiffDirectory.JPEG_TABLES, asValues);
        byte[] piece = new byte[whole.length - to + 2];
        piece[0] = (byte) 0xff;
        piece[1] = (byte) 0xd8;
        System.arraycopy(whole, to, piece, 2, whole.length - to);
        Path file = write(fields, false, piece);
        assertEquals(60, ScanFiles.open(file).info().coding().orElseThrow().quality(), 2);
        char[] samples = ScanFixture.read(file, 3);
        assertEquals(MadeJpeg.RGB[0], samples[0] / 257.0, 6);
    }

    @Test
    void damagedJpegPieceSaysWhatToDo() throws Exception {
        byte[] piece = MadeJpeg.of(false);
        piece[MadeJpeg.segment(piece, 0xdb) + 4] = 15;
        String why = refusal(write(jpegFields(MadeJpeg.SIDE, 6), false, piece));
        assertTrue(why.contains("damaged. Copy the file again"), why);
    }

    @Test
    void damagedLzwSaysWhatToDo() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.COMPRESSION, new long[] {5});
        String why = refusal(write(fields, false, new byte[] {-1, -1, -1, -1}));
        assertTrue(why.contains("damaged. Copy the file again"), why);
    }

    /** The length of the one strip is left open; the picture's size tells it. */
    @Test
    void stripOfUnknownLengthIsRead() throws Exception {
        Map<Integer, long[]> fields = fields();
        fields.put(TiffDirectory.STRIP_BYTE_COUNTS, new long[] {0});
        char[] expected = {2570, 5140, 7710, 10280};
        Path file = write(fields, false, new byte[] {10, 20, 30, 40});
        assertArrayEquals(expected, ScanFixture.read(file, 1));
    }
}
