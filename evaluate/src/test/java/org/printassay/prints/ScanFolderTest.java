package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.problem.Problem;

class ScanFolderTest {
    private static final byte[] TIFF = {'I', 'I', 42, 0, 8, 0, 0, 0, 0, 0};

    @TempDir Path dir;

    private Path file(String name, byte[] bytes) throws IOException {
        Path file = dir.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.write(file, bytes);
    }

    private Path text(String name, String text) throws IOException {
        return file(name, text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }

    private ScanFolder read() throws Problem {
        return ScanFolder.of(dir, dir.resolve("results"));
    }

    private static List<String> labels(ScanFolder folder) {
        return folder.scans().stream().map(NamedFile::label).toList();
    }

    private static List<String> skipped(ScanFolder folder) {
        return folder.skipped().stream().map(Skipped::name).toList();
    }

    @Test
    void scansAreFoundByContentInAllFolders() throws Exception {
        file("b.tif", TIFF);
        file("deep/er/a.scan", TIFF);
        text("notes.txt", "dear diary");
        ScanFolder folder = read();
        assertEquals(List.of("b.tif", "deep/er/a.scan"), labels(folder));
        assertEquals(List.of("notes.txt"), skipped(folder));
    }

    /** What should be a scan by its name is told as broken, not passed over. */
    @Test
    void aBrokenScanIsNotPassedOver() throws Exception {
        file("empty.tif", new byte[0]);
        text("text.JPG", "no picture");
        assertEquals(List.of("empty.tif", "text.JPG"), labels(read()));
    }

    @Test
    void hiddenFilesAndFoldersAreNotLookedAt() throws Exception {
        file(".hidden.tif", TIFF);
        file(".cache/a.tif", TIFF);
        ScanFolder folder = read();
        assertEquals(List.of(), labels(folder));
        assertEquals(List.of(), skipped(folder));
    }

    @Test
    void linksAreFollowedToScansAndNotIntoFolders() throws Exception {
        Path scan = file("a.tif", TIFF);
        Files.createSymbolicLink(dir.resolve("again.tif"), scan);
        Files.createSymbolicLink(dir.resolve("loop"), dir);
        Files.createSymbolicLink(dir.resolve("nowhere.tif"), dir.resolve("gone.tif"));
        Path outside = Files.createTempFile("outside", ".tif");
        try {
            Files.write(outside, TIFF);
            Files.createSymbolicLink(dir.resolve("out.tif"), outside);
            ScanFolder folder = read();
            assertEquals(2, folder.scans().size());
            assertTrue(labels(folder).contains("out.tif"));
            assertEquals(3, folder.skipped().size(), folder.skipped().toString());
            assertTrue(skipped(folder).containsAll(List.of("loop", "nowhere.tif")));
        } finally {
            Files.delete(outside);
        }
    }

    /** Neither the pages and pictures of an earlier run, nor the chart's own files. */
    @Test
    void whatTheProgramWroteIsNotRead() throws Exception {
        file("a.tif", TIFF);
        text("a.tif-evaluation/evaluation.json", "{\n  \"schema\": \"printassay/evaluation/1\"}");
        text("a.tif-evaluation/report.pdf", "%PDF-1.7");
        text("earlier/summary.json", "{\"schema\": \"printassay/summary/1\"}");
        file("earlier/b.tif", TIFF);
        file("results/c.tif", TIFF);
        text("chart/chart.json", "{\"schema\": \"printassay/chart/1\"}");
        file("chart/chart-1.tif", TIFF);
        ScanFolder folder = read();
        assertEquals(List.of("a.tif"), labels(folder));
        assertTrue(
                skipped(folder).containsAll(List.of("earlier", "results")),
                skipped(folder)::toString);
    }

    @Test
    void aDocumentIsNoScan() throws Exception {
        text("invoice.pdf", "%PDF-1.4\nnothing");
        ScanFolder folder = read();
        assertEquals(List.of(), labels(folder));
        assertEquals(List.of("invoice.pdf"), skipped(folder));
    }

    @Test
    void aNameWithAColonIsWhole() throws Exception {
        text("box 1: left.pdf", "%PDF-1.4\nnothing");
        text("plain.pdf", "%PDF-1.4\nnothing");
        List<Skipped> skipped = read().skipped();
        assertEquals("box 1: left.pdf", skipped.get(0).name());
        assertEquals(skipped.get(1).why(), skipped.get(0).why());
    }

    @Test
    void aFolderThatIsGoneIsOneLine() {
        Problem problem =
                assertThrows(
                        Problem.class,
                        () -> ScanFolder.of(dir.resolve("gone"), dir.resolve("results")));
        assertEquals(Problem.Kind.INPUT, problem.kind());
    }
}
