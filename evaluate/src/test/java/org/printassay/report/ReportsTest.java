package org.printassay.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;

class ReportsTest {
    @TempDir Path folder;

    @Test
    void writesTheFiveFiles() throws Exception {
        Reports.writeAll(
                SampleEvaluations.matt(),
                List.of(SampleEvaluations.preview("scan-a.tif")),
                true,
                folder);
        for (String name :
                List.of(
                        "evaluation.json",
                        "report.html",
                        "report.pdf",
                        "readings.csv",
                        "readings.txt")) {
            assertTrue(Files.size(folder.resolve(name)) > 500, name);
        }
        EvaluationJson.read(folder.resolve("evaluation.json"));
    }

    /** What is wrong where nothing lies as it should is seen in pictures that stand last. */
    @Test
    void theFirstPartsOnPaperTellOfThePicturesAtTheEnd() throws Exception {
        Reports.writeAll(
                SampleEvaluations.matt(),
                List.of(SampleEvaluations.preview("scan-a.tif")),
                true,
                folder);
        String pointer = "The last part, \u201cWhat was read\u201d";
        String text = text();
        int at = text.indexOf(pointer);
        assertTrue(at > 0 && at < text.indexOf("Conditions"), text);
        Reports.writeAll(SampleEvaluations.matt(), List.of(), true, folder);
        assertFalse(text().contains(pointer), "there are no pictures");
    }

    private String text() throws Exception {
        try (PDDocument document = Loader.loadPDF(folder.resolve("report.pdf").toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void readingsTextIsReadBack() throws Exception {
        Reports.writeAll(SampleEvaluations.matt(), List.of(), true, folder);
        MeasurementFile back = MeasurementReader.read(folder.resolve("readings.txt"));
        var patches = SampleEvaluations.matt().patches();
        assertEquals(patches.size(), back.patches().size());
        for (int i = 0; i < patches.size(); i++) {
            assertEquals(patches.get(i).rgb(), back.patches().get(i).rgb());
            assertEquals(patches.get(i).best().l(), back.patches().get(i).lab().l(), 1e-3);
        }
    }
}
