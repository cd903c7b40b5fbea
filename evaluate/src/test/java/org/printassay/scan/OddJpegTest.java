package org.printassay.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.problem.Problem;

/** JPEGs that say little of themselves, or claim much, made from those that the JDK writes. */
class OddJpegTest {
    @TempDir Path dir;

    private Path file(byte[] jpeg) throws Exception {
        return Files.write(dir.resolve("odd.jpg"), jpeg);
    }

    private static void assertColour(int[] expected, Path file) throws Problem {
        assertColour(expected, ScanFixture.read(file, 3));
    }

    private static void assertColour(int[] expected, char[] samples) {
        for (int i = 0; i < samples.length; i++) {
            assertEquals(expected[i % 3], samples[i] / 257.0, 2, "sample " + i);
        }
    }

    @Test
    void progressiveThatTakesGigabytesIsRefusedBeforeItIsDecoded() throws Exception {
        byte[] small = MadeJpeg.of(true);
        assertColour(MadeJpeg.RGB, file(small));
        Path large = file(MadeJpeg.sized(small, 25_000, 25_000));
        Problem problem = assertThrows(Problem.class, () -> ScanFiles.open(large));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(problem.getMessage().contains("progressive"), problem.getMessage());
        assertTrue(problem.getMessage().contains("baseline"), problem.getMessage());
        // An A4 page at 600 samples an inch may be progressive.
        assertEquals(4961, ScanFiles.open(file(MadeJpeg.sized(small, 4961, 7016))).info().width());
    }

    @Test
    void baselineIsReadInBandsWhateverItsSize() throws Exception {
        Path large = file(MadeJpeg.sized(MadeJpeg.of(false), 25_000, 25_000));
        assertEquals(25_000, ScanFiles.open(large).info().width());
    }

    /** Components in scans of their own are held as a whole too. */
    @Test
    void baselineInSeveralScansIsRefusedWhereItIsTooLarge() throws Exception {
        byte[] jpeg = MadeJpeg.sized(MadeJpeg.of(false), 25_000, 25_000);
        jpeg[MadeJpeg.segment(jpeg, 0xda) + 4] = 1;
        Path large = file(jpeg);
        Problem problem = assertThrows(Problem.class, () -> ScanFiles.open(large));
        assertTrue(problem.getMessage().contains("several passes"), problem.getMessage());
    }

    /** Lightness and colour differences are what a JPEG holds unless it says otherwise. */
    @Test
    void withoutJfifColourDifferencesAreMeant() throws Exception {
        byte[] jpeg = MadeJpeg.of(false);
        assertColour(MadeJpeg.RGB, file(MadeJpeg.named(jpeg, 0, 1, 2)));
        assertColour(MadeJpeg.RGB, file(MadeJpeg.named(jpeg, 1, 2, 3)));
        assertColour(MadeJpeg.RGB, file(MadeJpeg.named(jpeg, 7, 8, 9)));
        assertFalse(codedAsRgb("odd.jpg"));
        assertColour(MadeJpeg.STORED, file(MadeJpeg.named(jpeg, 'R', 'G', 'B')));
        assertTrue(codedAsRgb("odd.jpg"));
    }

    private boolean codedAsRgb(String name) throws Problem {
        return ScanFiles.open(dir.resolve(name)).info().coding().orElseThrow().ofRgb();
    }

    @Test
    void whatTheFileSaysOfItsColoursHolds() throws Exception {
        byte[] jpeg = MadeJpeg.named(MadeJpeg.of(false), 0, 1, 2);
        byte[] none = MadeJpeg.inserted(jpeg, transform(0));
        assertColour(MadeJpeg.STORED, file(none));
        assertTrue(codedAsRgb("odd.jpg"));
        byte[] jfif = MadeJpeg.inserted(jpeg, MadeJpeg.JFIF);
        assertColour(MadeJpeg.RGB, file(jfif));
    }

    /** ISO 32000-1, table 13: the page's word holds unless a segment (APP14) has one. */
    @Test
    void whatThePdfSaysOfTheColoursHolds() throws Exception {
        byte[] jpeg = MadeJpeg.named(MadeJpeg.of(false), 0, 1, 2);
        assertColour(MadeJpeg.RGB, inPdf(jpeg, OptionalInt.empty()));
        assertColour(MadeJpeg.RGB, inPdf(jpeg, OptionalInt.of(1)));
        assertColour(MadeJpeg.STORED, inPdf(jpeg, OptionalInt.of(0)));
        byte[] jfif = MadeJpeg.inserted(jpeg, MadeJpeg.JFIF);
        assertColour(MadeJpeg.STORED, inPdf(jfif, OptionalInt.of(0)));
        assertTrue(codedAsRgb("odd.pdf"));
        byte[] said = MadeJpeg.inserted(jpeg, transform(1));
        assertColour(MadeJpeg.RGB, inPdf(said, OptionalInt.of(0)));
        assertFalse(codedAsRgb("odd.pdf"));
    }

    private char[] inPdf(byte[] jpeg, OptionalInt transform) throws Exception {
        PdfObjects objects = new PdfObjects();
        objects.add("<</Type /Catalog /Pages 2 0 R>>");
        objects.add("<</Type /Pages /Kids [3 0 R] /Count 1>>");
        objects.add(
                "<</Type /Page /Parent 2 0 R /MediaBox [0 0 72 72] /Contents 4 0 R /Resources"
                        + " <</XObject <</Im0 5 0 R>>>>>>");
        objects.add("<<", "72 0 0 72 0 0 cm /Im0 Do".getBytes(StandardCharsets.US_ASCII));
        objects.add(
                "<</Type /XObject /Subtype /Image /Filter /DCTDecode /Width "
                        + MadeJpeg.SIDE
                        + " /Height "
                        + MadeJpeg.SIDE
                        + " /BitsPerComponent 8 /ColorSpace /DeviceRGB"
                        + (transform.isPresent()
                                ? " /DecodeParms <</ColorTransform " + transform.getAsInt() + ">>"
                                : ""),
                jpeg);
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        objects.write(pdf);
        return ScanFixture.read(Files.write(dir.resolve("odd.pdf"), pdf.toByteArray()), 3);
    }

    /** The segment as JPEG files have it, without the first marker. */
    private static byte[] transform(int transform) {
        byte[] start = JpegPieces.start(OptionalInt.of(transform));
        return Arrays.copyOfRange(start, 2, start.length);
    }
}
