package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.check.Check;
import org.printassay.check.Checker;
import org.printassay.check.ToleranceFile;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.json.CheckedJson;
import org.printassay.report.paged.PageFormat;

/** The file and the page of simulated checks. */
class CheckPageTest {
    @TempDir Path folder;

    private static Check check(MadePrint after) throws Exception {
        return Checker.check(
                MadePrint.USUAL.evaluation(1), after.evaluation(2), ToleranceFile.named("fine"));
    }

    private static JsonNode json(Check check) throws Exception {
        byte[] bytes = CheckJson.write(check).getBytes(StandardCharsets.UTF_8);
        return CheckedJson.parse("check.json", bytes, "check", CheckJson.SCHEMA_VERSION);
    }

    @Test
    void theFileIsValidByItsSchemaAndHoldsTheChanges() throws Exception {
        JsonNode first = json(check(MadePrint.USUAL.withShifts(7, 0)));
        assertEquals("failed", first.path("outcome").asText());
        assertEquals("fine", first.at("/tolerances/name").asText());
        assertEquals("made-1.tif", first.at("/baseline/prints/0/files/0/name").asText());
        assertTrue(first.at("/spread/from").isNull());
        assertEquals("within", json(check(MadePrint.USUAL)).path("outcome").asText());
        double shift = 0;
        for (JsonNode change : first.path("changes")) {
            if (change.path("quantity").asText().equals("shadowShift")) {
                shift = change.path("change").asDouble();
                assertEquals(
                        change.path("halfWidth").asDouble(),
                        first.at("/decision/factor").asDouble()
                                * change.path("standardUncertainty").asDouble(),
                        1e-3);
            }
        }
        assertEquals(7, shift, 1);
        assertEquals(12, first.at("/patches/worst").size());
        assertFalse(first.at("/lines/compared").asBoolean());
    }

    @Test
    void whatIsNotKnownIsNull() throws Exception {
        MadePrint once = MadePrint.USUAL;
        Check check =
                Checker.check(once.readOnce(1), once.readOnce(2), ToleranceFile.named("fine"));
        JsonNode change = json(check).at("/changes/0");
        assertTrue(change.path("halfWidth").isNull());
        assertEquals("cannot-tell", change.path("outcome").asText());
    }

    @Test
    void thePageNeedsNoNetworkNoScriptsAndNoColour() throws Exception {
        String page = CheckPage.write(check(MadePrint.USUAL.withShifts(7, 0)), true);
        assertTrue(page.contains("Content-Security-Policy"));
        assertTrue(
                page.contains("default-src &#39;none&#39;") || page.contains("default-src 'none'"));
        assertFalse(page.contains("<script"));
        assertFalse(page.contains("http://") || page.contains("https://"));
        assertTrue(page.contains("Simulated: no real printer"));
        assertTrue(page.contains("<h1>Failed: made-2.tif</h1>"));
        for (String outcome : List.of("within", "drifted", "cannot tell", "failed")) {
            assertTrue(page.contains(outcome), outcome);
        }
        Set<String> ids = new HashSet<>();
        Matcher matcher = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
        while (matcher.find()) {
            assertTrue(ids.add(matcher.group(1)), "twice: " + matcher.group(1));
        }
    }

    /** Read back by PDFBox: headings, sentences and the table are there as text. */
    @Test
    void thePagesHoldTheSameWords() throws Exception {
        Check check = check(MadePrint.USUAL.withShifts(7, 0));
        CheckReports.writeAll(check, true, PageFormat.LETTER, folder);
        Path file = folder.resolve("check.pdf");
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(text.contains("Failed: made-2.tif"), text);
            assertTrue(text.contains("Shadow wedge as a whole"), text);
            assertTrue(text.contains("taken from the tolerances (fine)"), text);
            assertTrue(text.contains(PageText.SIMULATED), text);
            String page = Files.readString(folder.resolve("check.html"));
            for (PDOutlineItem item : pdf.getDocumentCatalog().getDocumentOutline().children()) {
                assertTrue(page.contains(">" + item.getTitle() + "</h2>"), item.getTitle());
            }
            assertEquals(612, pdf.getPage(0).getMediaBox().getWidth(), 0.1);
        }
        byte[] first = Files.readAllBytes(file);
        CheckReports.writeAll(check, true, PageFormat.LETTER, folder);
        assertArrayEquals(first, Files.readAllBytes(file));
    }

    @Test
    void textFromOutsideIsEscaped() throws Exception {
        Evaluation before = SampleEvaluations.hostile();
        Check check =
                Checker.check(
                        before,
                        MadePrint.withFiles(before, "other-<b>.tif"),
                        ToleranceFile.named("workshop"));
        String page = CheckPage.write(check, false);
        assertFalse(page.contains("<script"));
        assertFalse(page.contains("<b>"));
        assertTrue(page.contains("&lt;script&gt;"));
        json(check);
    }
}
