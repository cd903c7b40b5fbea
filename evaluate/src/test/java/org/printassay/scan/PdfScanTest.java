package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.RgbSpace;
import org.printassay.colour.icc.RgbProfiles;
import org.printassay.problem.Problem;

/**
 * PDFs with one scanned page, by libtiff's writer and by hand; poppler takes JPEG data out again.
 */
class PdfScanTest extends ScanFixture {
    private static final String PAGE = "/MediaBox [0 0 72 144]";

    @ParameterizedTest
    @ValueSource(strings = {"-z", "-n"})
    void readsPlainAndDeflated(String compression) throws Exception {
        char[] samples = image(3, 8);
        String from = pixmap(samples, 3, 8).getFileName().toString();
        tool("convert", from, "-density", "300", "-units", "PixelsPerInch", "plain.tif");
        tool("tiff2pdf", compression, "-o", "out.pdf", "plain.tif");
        Path pdf = dir.resolve("out.pdf");
        assertSame(samples, read(pdf));
        ScanInfo.Resolution resolution = ScanFiles.open(pdf).info().samplesPerInch().orElseThrow();
        assertEquals(300, resolution.x(), 3);
        assertEquals(300, resolution.y(), 3);
    }

    @Test
    void readsJpegInside() throws Exception {
        String from = pixmap(image(3, 8), 3, 8).getFileName().toString();
        tool("convert", from, "plain.tif");
        tool("tiff2pdf", "-j", "-q", "92", "-o", "out.pdf", "plain.tif");
        tool("pdfimages", "-j", "out.pdf", "back");
        tool("convert", "back-000.jpg", "-depth", "8", "back.ppm");
        assertClose(dir.resolve("back.ppm"), read(dir.resolve("out.pdf")), 2);
        ScanInfo info = ScanFiles.open(dir.resolve("out.pdf")).info();
        assertTrue(info.lossy());
        assertEquals(92, info.coding().orElseThrow().quality(), 2);
    }

    /** Deflate with and without a predictor, colour and grey, with a profile. */
    @ParameterizedTest
    @CsvSource({"3, 8, 1", "3, 8, 2", "1, 8, 2"})
    void readsWhatLibtiffWrites(int channels, int bits, int predictor) throws Exception {
        char[] samples = image(channels, bits);
        String from = pixmap(samples, channels, bits).getFileName().toString();
        tool("convert", from, "-compress", "None", "plain.tif");
        tool("tiff2pdf", "-z", "-o", "out.pdf", "plain.tif");
        assertSame(samples, read(dir.resolve("out.pdf")));
        Path made = written(channels, bits, predictor, samples, "72 0 0 144 0 0 cm");
        assertSame(samples, read(made));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 15})
    void readsSixteenBitsAndThePredictors(int predictor) throws Exception {
        char[] samples = image(3, 16);
        Path made = written(3, 16, predictor, samples, "72 0 0 144 0 0 cm");
        assertSame(samples, read(made));
        ScanInfo info = ScanFiles.open(made).info();
        assertEquals(16, info.bits());
        assertArrayEquals(RgbProfiles.of(RgbSpace.ROMM), info.iccProfile().orElseThrow());
        ScanInfo.Resolution resolution = info.samplesPerInch().orElseThrow();
        assertEquals(WIDTH, resolution.x(), 1e-3);
        assertEquals(HEIGHT / 2.0, resolution.y(), 1e-3);
    }

    @Test
    void followsMirroringAndTurns() throws Exception {
        char[] samples = image(3, 8);
        char[] mirrored = samples.clone();
        for (int y = 0; y < HEIGHT; y++) {
            char[] row = new char[WIDTH * 3];
            System.arraycopy(samples, y * row.length, row, 0, row.length);
            SampleRows.mirror(row, WIDTH, 3);
            System.arraycopy(row, 0, mirrored, y * row.length, row.length);
        }
        assertSame(mirrored, read(written(3, 8, 1, samples, "-72 0 0 144 72 0 cm")));
        Path turned = written(3, 8, 1, samples, "q 1 0 0 1 5 5 cm Q 0 72 -144 0 144 0 cm");
        assertSame(samples, read(turned));
        ScanInfo.Resolution resolution =
                ScanFiles.open(turned).info().samplesPerInch().orElseThrow();
        assertEquals(WIDTH, resolution.x(), 1e-3);
    }

    @Test
    void refusesWhatIsNoScanInOneLineEach() throws Exception {
        char[] samples = image(3, 8);
        Path good = written(3, 8, 1, samples, "72 0 0 144 0 0 cm");
        byte[] bytes = Files.readAllBytes(good);
        assertRefused(bytes, "/FlateDecode /Width", "/JPXDecode   /Width", "JPEG 2000");
        assertRefused(bytes, "/FlateDecode /Width", "/JBIG2Decode /Width", "black and white");
        assertRefused(bytes, "/FlateDecode /Width", "/LZWDecode   /Width", "another way");
        assertRefused(bytes, "/BitsPerComponent 8", "/BitsPerComponent 1", "1 bits a sample");
        assertRefused(bytes, "/ICCBased", "/Indexed ", "palette");
        assertRefused(bytes, "/Width " + WIDTH, "/Width 9" + WIDTH, "end");
        assertRefused(bytes, "/Im0 Do", "/Im1 Do", "drawn page");
        assertRefused(bytes, "/Im0 Do", "BI /W 1", "inside the page text");

        try (PDDocument document = Loader.loadPDF(good.toFile())) {
            StandardProtectionPolicy policy =
                    new StandardProtectionPolicy("owner", "", new AccessPermission());
            policy.setEncryptionKeyLength(128);
            document.protect(policy);
            document.save(dir.resolve("locked.pdf").toFile());
        }
        String locked = refusal(dir.resolve("locked.pdf"));
        assertTrue(locked.contains("encrypted"), locked);

        try (PDDocument document = Loader.loadPDF(good.toFile())) {
            document.importPage(document.getPage(0));
            document.save(dir.resolve("two.pdf").toFile());
        }
        String two = refusal(dir.resolve("two.pdf"));
        assertTrue(two.contains("2 pages"), two);
    }

    /** A page text that unpacks to far more than it is. */
    @Test
    void refusesAContentBomb() throws Exception {
        ByteArrayOutputStream bomb = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(bomb)) {
            byte[] spaces = new byte[1 << 20];
            Arrays.fill(spaces, (byte) ' ');
            for (int i = 0; i < 300; i++) {
                out.write(spaces);
            }
        }
        Path pdf = dir.resolve("bomb.pdf");
        try (OutputStream out = Files.newOutputStream(pdf)) {
            Objects objects = new Objects();
            objects.add("<</Type /Catalog /Pages 2 0 R>>");
            objects.add("<</Type /Pages /Kids [3 0 R] /Count 1>>");
            objects.add("<</Type /Page /Parent 2 0 R " + PAGE + " /Contents 4 0 R>>");
            objects.add("<</Filter /FlateDecode", bomb.toByteArray());
            objects.write(out);
        }
        assertTrue(refusal(pdf).contains("longer"));
    }

    private void assertRefused(byte[] good, String what, String by, String words)
            throws IOException {
        String text = new String(good, StandardCharsets.ISO_8859_1);
        assertTrue(text.contains(what), what);
        Path odd = dir.resolve("odd.pdf");
        Files.write(odd, text.replace(what, by).getBytes(StandardCharsets.ISO_8859_1));
        String refusal = refusal(odd);
        assertTrue(refusal.contains(words), refusal);
    }

    private static String refusal(Path pdf) {
        Problem problem = assertThrows(Problem.class, () -> read(pdf));
        assertFalse(problem.getMessage().contains("\n"));
        return problem.getMessage();
    }

    /** A PDF written by hand, its image coded by Deflate with a predictor. */
    private Path written(int channels, int bits, int predictor, char[] samples, String matrix)
            throws IOException {
        int bytes = bits / 8;
        int line = WIDTH * channels * bytes;
        ByteArrayOutputStream raw = new ByteArrayOutputStream();
        byte[] above = new byte[line];
        for (int y = 0; y < HEIGHT; y++) {
            byte[] row = new byte[line];
            for (int i = 0; i < WIDTH * channels; i++) {
                char code = samples[y * WIDTH * channels + i];
                row[i * bytes] = (byte) (code >> 8);
                if (bytes == 2) {
                    row[2 * i + 1] = (byte) code;
                }
            }
            byte[] coded = row.clone();
            if (predictor == 2) {
                for (int i = WIDTH * channels - 1; i >= channels; i--) {
                    int at = y * WIDTH * channels + i;
                    int shift = bits == 16 ? 0 : 8;
                    int rest = (samples[at] >> shift) - (samples[at - channels] >> shift);
                    coded[i * bytes] = (byte) (rest >> (bits - 8));
                    if (bytes == 2) {
                        coded[2 * i + 1] = (byte) rest;
                    }
                }
            } else if (predictor >= 10) {
                raw.write(2);
                for (int i = 0; i < line; i++) {
                    coded[i] = (byte) (row[i] - above[i]);
                }
            }
            above = row;
            raw.writeBytes(coded);
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
            raw.writeTo(out);
        }
        Objects objects = new Objects();
        objects.add("<</Type /Catalog /Pages 2 0 R>>");
        objects.add("<</Type /Pages /Kids [3 0 R] /Count 1>>");
        objects.add(
                "<</Type /Page /Parent 2 0 R "
                        + PAGE
                        + " /Contents 4 0 R /Resources <</XObject <</Im0 5 0 R>>>>>>");
        objects.add("<<", ("q " + matrix + " /Im0 Do Q").getBytes(StandardCharsets.US_ASCII));
        objects.add(
                "<</Type /XObject /Subtype /Image /Filter /FlateDecode /Width "
                        + WIDTH
                        + " /Height "
                        + HEIGHT
                        + " /BitsPerComponent "
                        + bits
                        + " /ColorSpace "
                        + (channels == 3 ? "[/ICCBased 6 0 R]" : "/DeviceGray")
                        + " /DecodeParms <</Predictor "
                        + predictor
                        + " /Columns "
                        + WIDTH
                        + " /Colors "
                        + channels
                        + " /BitsPerComponent "
                        + bits
                        + ">>",
                packed.toByteArray());
        objects.add("<</N 3", RgbProfiles.of(RgbSpace.ROMM));
        Path pdf = dir.resolve("made.pdf");
        try (OutputStream out = Files.newOutputStream(pdf)) {
            objects.write(out);
        }
        return pdf;
    }

    /** Numbered objects of a PDF. */
    private static final class Objects {
        private final ByteArrayOutputStream out = new ByteArrayOutputStream();
        private final StringBuilder table = new StringBuilder("0000000000 65535 f \n");
        private int count = 1;

        Objects() {
            text("%PDF-1.7\n");
        }

        private void text(String text) {
            out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
        }

        void add(String dictionary) {
            begin();
            text(dictionary + "\nendobj\n");
        }

        void add(String dictionary, byte[] stream) {
            begin();
            text(dictionary + " /Length " + stream.length + ">>\nstream\n");
            out.writeBytes(stream);
            text("\nendstream\nendobj\n");
        }

        private void begin() {
            table.append(String.format(Locale.ROOT, "%010d 00000 n \n", out.size()));
            text(count++ + " 0 obj\n");
        }

        void write(OutputStream to) throws IOException {
            int start = out.size();
            text("xref\n0 " + count + "\n" + table);
            text("trailer\n<</Size " + count + " /Root 1 0 R>>\nstartxref\n" + start + "\n%%EOF\n");
            out.writeTo(to);
        }
    }
}
