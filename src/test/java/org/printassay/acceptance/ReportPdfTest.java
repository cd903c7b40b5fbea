package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** The report to hand on, judged by veraPDF (ISO 14289-1, PDF/UA-1) and poppler. */
class ReportPdfTest {
    @TempDir static Path dir;

    @BeforeAll
    static void start() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    @ParameterizedTest
    @ValueSource(strings = {"plain", "hostile"})
    void isAccessible(String kind) throws Exception {
        assertAccessible(results(kind).resolve("report.pdf"));
    }

    @Test
    void isAccessibleOnLetterPagesAndTheSameTwice() throws Exception {
        Path scan = EvaluatedSheet.plain().resolveSibling("scan.png");
        for (String out : List.of("one", "two")) {
            CommandLineRun run =
                    CommandLineRun.of(
                            "evaluate", scan, "--report-page", "letter", "--out", dir.resolve(out));
            assertEquals(0, run.exitCode(), run.err());
        }
        Path pdf = dir.resolve("one/report.pdf");
        assertAccessible(pdf);
        assertArrayEquals(
                Files.readAllBytes(pdf), Files.readAllBytes(dir.resolve("two/report.pdf")));
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertEquals(612, document.getPage(0).getMediaBox().getWidth(), 0.01);
            assertEquals(792, document.getPage(0).getMediaBox().getHeight(), 0.01);
        }
    }

    @Test
    void aCheckIsAccessibleToo() throws Exception {
        Path before = MeasuredPrint.evaluation(dir.resolve("before"), "<script>\u7d19", 1, 0);
        Path after = MeasuredPrint.evaluation(dir.resolve("after"), "<script>\u7d19", 2, 5);
        Path out = dir.resolve("check");
        CommandLineRun run = CommandLineRun.of("check", after, "--baseline", before, "--out", out);
        assertEquals(1, run.exitCode(), run.err());
        assertAccessible(out.resolve("check.pdf"));
        String structure = Tool.run("pdfinfo", "-struct-text", out.resolve("check.pdf"));
        for (String element : List.of("H1", "H2", "Figure", "Table", "TH", "LBody")) {
            assertTrue(structure.contains(element), element);
        }
        assertTrue(Tool.run("pdftotext", out.resolve("check.pdf"), "-").contains("<script>"));
    }

    @Test
    void anotherPageIsRefused() {
        Path scan = EvaluatedSheet.plain().resolveSibling("scan.png");
        CommandLineRun run = CommandLineRun.of("evaluate", scan, "--report-page", "A7");
        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("--report-page must be A4 or Letter"), run.err());
    }

    @Test
    void saysWhatThePageSaysAndHasBookmarks() throws Exception {
        Path results = EvaluatedSheet.plain();
        try (PDDocument document = Loader.loadPDF(results.resolve("report.pdf").toFile())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            for (String said :
                    List.of("Paper Q (simulated)", "Findings", "In figures", "page 1 of ")) {
                assertTrue(text.contains(said), said);
            }
            String page = EvaluatedSheet.text(results, "report.html");
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                assertTrue(page.contains(">" + item.getTitle() + "</h2>"), item.getTitle());
            }
            assertEquals("en-GB", document.getDocumentCatalog().getLanguage());
        }
    }

    /** A checker that lets everything pass would prove nothing. */
    @Test
    void aDamagedOneIsNotTakenForAccessible() throws Exception {
        Path damaged = dir.resolve("damaged.pdf");
        Path pdf = EvaluatedSheet.plain().resolve("report.pdf");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            document.getDocumentCatalog().setLanguage(null);
            document.save(damaged.toFile());
        }
        assertFalse(validated(damaged).isCompliant());
    }

    /** Poppler: every font embedded, structure readable, hostile names whole. */
    @Test
    void popplerReadsIt() throws Exception {
        Path pdf = EvaluatedSheet.hostile().resolve("report.pdf");
        for (String line : Tool.run("pdffonts", pdf).lines().skip(2).toList()) {
            assertTrue(line.matches(".* yes yes yes +\\d+ +0 *"), line);
        }
        String structure = Tool.run("pdfinfo", "-struct-text", pdf);
        for (String element : List.of("H1", "H2", "Figure", "Table", "TH", "LBody")) {
            assertTrue(structure.contains(element), element);
        }
        String text = Tool.run("pdftotext", pdf, "-");
        assertTrue(text.contains("\u7d19"), "a character the typeface lacks");
        assertTrue(text.contains("<script>"), "markup is text");
        assertFalse(text.contains("\u202e"), "a change of direction");
    }

    private static Path results(String kind) {
        return kind.equals("plain") ? EvaluatedSheet.plain() : EvaluatedSheet.hostile();
    }

    private static void assertAccessible(Path pdf) throws Exception {
        TreeSet<String> failed = new TreeSet<>();
        ValidationResult result = validated(pdf);
        for (TestAssertion one : result.getTestAssertions()) {
            if (one.getStatus() == TestAssertion.Status.FAILED) {
                failed.add(one.getRuleId().getClause() + ": " + one.getMessage());
            }
        }
        assertEquals(new TreeSet<>(), failed);
        assertTrue(result.isCompliant());
        assertTrue(result.getTotalAssertions() > 1000, "nothing was looked at");
    }

    private static ValidationResult validated(Path pdf) throws Exception {
        PDFAFlavour flavour = PDFAFlavour.PDFUA_1;
        try (InputStream in = Files.newInputStream(pdf);
                PDFAParser parser = Foundries.defaultInstance().createParser(in, flavour);
                PDFAValidator validator =
                        Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }
}
