package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.util.Matrix;
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
        assertRefused(bytes, "/Im0 Do", "/Im1 Do", "cut off or damaged");
        assertRefused(bytes, "/Im0 5 0 R", "/Im0 9 0 R", "cut off or damaged");
        assertRefused(bytes, "/Contents 4", "/Contents 9", "cut off or damaged");
        assertRefused(bytes, "/Kids [3 0 R] /Count 1", "/Kids [] /Count 0", "the PDF is damaged");
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

    /** Programs that wrap a page put its image into a form (ISO 32000-1, 8.10). */
    @Test
    void imageInAFormIsReadWhereItIsDrawn() throws Exception {
        char[] samples = image(3, 8);
        String own = "<</Matrix [2 0 0 4 0 0] /Resources <</XObject <</In 5 0 R>>>>";
        Path pdf = written(3, 8, 1, samples, "1 0 0 1 5 5 cm /Fm0 Do", own);
        assertSame(samples, read(pdf));
        ScanInfo.Resolution resolution = ScanFiles.open(pdf).info().samplesPerInch().orElseThrow();
        assertEquals(WIDTH, resolution.x(), 1e-3);
        assertEquals(HEIGHT / 2.0, resolution.y(), 1e-3);
    }

    @Test
    void formThatDrawsItselfIsRefused() throws Exception {
        String refusal = refusal(written(3, 8, 1, image(3, 8), "/Fm0 Do", "<<"));
        assertTrue(refusal.contains("forms"), refusal);
    }

    /** As a copy that broke off; the page may be found, its image is not there. */
    @Test
    void cutFilesAreNotCalledADrawnPage() throws Exception {
        byte[] whole = Files.readAllBytes(written(3, 8, 1, image(3, 8), "72 0 0 144 0 0 cm"));
        Path cut = dir.resolve("cut.pdf");
        for (double share : new double[] {0.02, 0.03, 0.1, 0.5, 0.9}) {
            Files.write(cut, Arrays.copyOf(whole, (int) (whole.length * share)));
            Problem problem = assertThrows(Problem.class, () -> read(cut));
            assertEquals(Problem.Kind.INPUT, problem.kind(), problem.getMessage());
            assertTrue(problem.getMessage().contains("again"), problem.getMessage());
        }
    }

    @Test
    void bytesInFrontOfAPdfArePassedOver() throws Exception {
        char[] samples = image(3, 8);
        byte[] whole = Files.readAllBytes(written(3, 8, 1, samples, "72 0 0 144 0 0 cm"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("sent by post\r\n".repeat(20).getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(whole);
        assertSame(samples, read(Files.write(dir.resolve("junk.pdf"), out.toByteArray())));
    }

    /** Reads the file named and prints why it cannot be read. */
    static final class Reading {
        public static void main(String[] arguments) {
            try {
                ScanFiles.open(Path.of(arguments[0]));
            } catch (Problem e) {
                System.out.print(e.getMessage());
            }
        }
    }

    /** The folder for temporary files is fixed when a Java starts, so another is started. */
    @Test
    void withoutRoomForTemporaryFilesThatIsTold() throws Exception {
        Path pdf = written(3, 8, 1, image(3, 8), "72 0 0 144 0 0 cm");
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-Djava.io.tmpdir=" + dir.resolve("not-there"),
                                "-cp",
                                System.getProperty(
                                        "surefire.test.class.path",
                                        System.getProperty("java.class.path")),
                                Reading.class.getName(),
                                pdf.toString())
                        .redirectErrorStream(true)
                        .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        assertTrue(said.contains("temporary file"), said);
        assertTrue(said.contains("not-there"), said);
        assertFalse(said.contains("damaged"), said);
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
            PdfObjects objects = new PdfObjects();
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

    /** Office scanners write strips; the order of drawing is theirs, coordinates may be rounded. */
    @ParameterizedTest
    @CsvSource({"false, 0", "true, 0", "false, 0.4"})
    void readsStrips(boolean turned, double rounding) throws Exception {
        char[] samples = image(3, 8);
        int[] rows = {0, HEIGHT / 3, HEIGHT / 2, HEIGHT - 1, HEIGHT};
        Path pdf = strips(samples, rows, new int[] {3, 1, 2, 0}, turned, i -> rounding * (i % 2));
        assertSame(samples, read(pdf));
        ScanInfo info = ScanFiles.open(pdf).info();
        assertEquals(HEIGHT, info.height());
        ScanInfo.Resolution resolution = info.samplesPerInch().orElseThrow();
        assertEquals(WIDTH, resolution.x(), 0.01);
        assertEquals(WIDTH, resolution.y(), 0.01 + 2 * rounding);
    }

    @Test
    void stripsWithAGapOrAnOverlapAreRefused() throws Exception {
        int[] rows = {0, HEIGHT / 3, HEIGHT / 2, HEIGHT};
        for (double gap : new double[] {2, -2}) {
            Path pdf = strips(image(3, 8), rows, new int[] {0, 1, 2}, false, i -> gap * i);
            Problem problem = assertThrows(Problem.class, () -> ScanFiles.open(pdf));
            assertTrue(problem.getMessage().contains("3 images"), problem.getMessage());
            assertTrue(problem.getMessage().contains("do not make up one"), problem.getMessage());
        }
    }

    /** Each strip begins with the last row of the one above: rows would stand twice. */
    @Test
    void stripsThatRepeatRowsAreRefused() throws Exception {
        int strips = 8;
        int[] rows = new int[strips + 1];
        for (int i = 0; i <= strips; i++) {
            rows[i] = i * (HEIGHT / strips);
        }
        double row = 72.0 / WIDTH;
        int[] order = IntStream.range(0, strips).toArray();
        Path pdf = strips(image(3, 8), rows, order, false, i -> -row * i);
        assertThrows(Problem.class, () -> ScanFiles.open(pdf));
    }

    @Test
    void oneImageDrawnManyTimesIsRefused() throws Exception {
        char[] samples = image(3, 8);
        double high = 72.0 * HEIGHT / WIDTH;
        StringBuilder content = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            content.append("q 72 0 0 ").append(high).append(" 0 ").append((2 - i) * high);
            content.append(" cm /Im0 Do Q ");
        }
        Path pdf = written(3, 8, 1, samples, content.toString(), "<<");
        Problem problem = assertThrows(Problem.class, () -> ScanFiles.open(pdf));
        assertTrue(problem.getMessage().contains("do not make up one"), problem.getMessage());
    }

    private record Strip(ScanInfo info) implements ScanImage {
        static Strip of(Optional<LossyCoding> coding) {
            return new Strip(
                    new ScanInfo(
                            "s.pdf",
                            "PDF",
                            10,
                            5,
                            3,
                            8,
                            Optional.empty(),
                            Optional.empty(),
                            coding.isPresent(),
                            coding));
        }

        @Override
        public void stream(RowSink sink) {
            for (int y = 0; y < info.height(); y++) {
                sink.row(y, new char[] {(char) y});
            }
        }
    }

    @Test
    void stripsCodedInDifferentWaysAreRefused() throws Exception {
        Strip plain = Strip.of(Optional.empty());
        Strip fine = Strip.of(Optional.of(new LossyCoding(1.1, 1.2, 97, false)));
        Strip coarse = Strip.of(Optional.of(new LossyCoding(2, 3, 70, false)));
        Strip other = Strip.of(Optional.of(new LossyCoding(2, 3, 70, true)));
        assertThrows(Problem.class, () -> PdfStrips.of(List.of(plain, fine)));
        assertThrows(Problem.class, () -> PdfStrips.of(List.of(coarse, other)));
        PdfStrips whole = PdfStrips.of(List.of(fine, coarse));
        assertEquals(coarse.info().coding(), whole.info().coding());
        assertEquals(10, whole.info().height());
        List<Integer> rows = new ArrayList<>();
        whole.stream((y, row) -> rows.add(10 * y + row[0]));
        assertEquals(List.of(0, 11, 22, 33, 44, 50, 61, 72, 83, 94), rows);
    }

    /**
     * Strips of an image as wide as an inch, drawn by PDFBox.
     *
     * @param from first row of each, and the row after the last
     * @param lower by how many points each is drawn lower than it should be
     */
    private Path strips(
            char[] samples, int[] from, int[] order, boolean turned, IntToDoubleFunction lower)
            throws Exception {
        double row = 72.0 / WIDTH;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(300, 300));
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                for (int strip : order) {
                    int rows = from[strip + 1] - from[strip];
                    BufferedImage part = new BufferedImage(WIDTH, rows, BufferedImage.TYPE_INT_RGB);
                    for (int y = 0; y < rows; y++) {
                        for (int x = 0; x < WIDTH; x++) {
                            int at = ((from[strip] + y) * WIDTH + x) * 3;
                            int rgb = samples[at] >> 8 << 16 | samples[at + 1] >> 8 << 8;
                            part.setRGB(x, y, rgb | samples[at + 2] >> 8);
                        }
                    }
                    float bottom =
                            (float) (250 - row * from[strip + 1] - lower.applyAsDouble(strip));
                    float high = (float) (row * rows);
                    content.drawImage(
                            LosslessFactory.createFromImage(document, part),
                            turned
                                    ? new Matrix(0, 72, -high, 0, 300 - bottom, 20)
                                    : new Matrix(72, 0, 0, high, 20, bottom));
                }
            }
            Path pdf = dir.resolve("strips.pdf");
            document.save(pdf.toFile());
            return pdf;
        }
    }

    /** A PDF written by hand, its image coded by Deflate with a predictor. */
    private Path written(int channels, int bits, int predictor, char[] samples, String matrix)
            throws IOException {
        return written(channels, bits, predictor, samples, matrix + " /Im0 Do", "<<");
    }

    /**
     * As {@link #written(int, int, int, char[], String)}.
     *
     * @param content of the page, which may draw the image Im0 and the form Fm0
     * @param form begin of the form's dictionary; the form draws In, which is the image, and Fm0
     *     where the dictionary says so
     */
    private Path written(
            int channels, int bits, int predictor, char[] samples, String content, String form)
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
        PdfObjects objects = new PdfObjects();
        objects.add("<</Type /Catalog /Pages 2 0 R>>");
        objects.add("<</Type /Pages /Kids [3 0 R] /Count 1>>");
        objects.add(
                "<</Type /Page /Parent 2 0 R "
                        + PAGE
                        + " /Contents 4 0 R /Resources <</XObject <</Im0 5 0 R /Fm0 7 0 R>>>>>>");
        objects.add("<<", ("q " + content + " Q").getBytes(StandardCharsets.US_ASCII));
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
        objects.add(
                form + " /Type /XObject /Subtype /Form /BBox [0 0 1 1]",
                (form.contains("/In 5") ? "q 36 0 0 36 0 0 cm /In Do Q" : "/Fm0 Do")
                        .getBytes(StandardCharsets.US_ASCII));
        Path pdf = dir.resolve("made.pdf");
        try (OutputStream out = Files.newOutputStream(pdf)) {
            objects.write(out);
        }
        return pdf;
    }
}
