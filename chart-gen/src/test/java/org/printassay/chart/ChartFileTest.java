package org.printassay.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Sheet;

class ChartFileTest {
    private Chart chart;
    private String text;

    @BeforeEach
    void makeChart() throws Problem {
        chart = PaperSheetFitTest.chart("A4", "12,12,35,12");
        text = ChartFile.write(chart);
    }

    @Test
    void readsBackWhatWasWritten() throws Problem {
        assertEquals(chart, ChartFile.parse("chart.json", text));
        Chart spilled = Charts.create(PaperSheetFitTest.chart("A4", "25").recipe(), 12);
        assertEquals(spilled, ChartFile.parse("chart.json", ChartFile.write(spilled)));
        Chart odd = PaperSheetFitTest.chart("300.5x402.25mm", "12.7");
        assertEquals(odd, ChartFile.parse("chart.json", ChartFile.write(odd)));
    }

    /** The keys that scripts rely on, as the design names them. */
    @Test
    void hasTheAgreedKeys() throws IOException {
        JsonNode file = new ObjectMapper().readTree(text);
        assertEquals("printassay/chart/1", file.path("schema").asText());
        assertEquals(chart.id(), file.path("id").asText());
        JsonNode sheet = file.path("sheets").path(0);
        assertEquals(210, sheet.path("page").path("widthMm").asDouble());
        assertEquals(297, sheet.path("page").path("heightMm").asDouble());
        assertEquals(12, sheet.path("tiff").path("xMm").asDouble());
        Sheet own = chart.sheets().get(0);
        assertEquals(own.patches().size(), sheet.path("patches").size());
        for (int i = 0; i < own.patches().size(); i++) {
            Patch patch = own.patches().get(i);
            JsonNode written = sheet.path("patches").path(i);
            assertEquals(patch.id(), written.path("id").asText());
            assertEquals(patch.section().key(), written.path("section").asText());
            assertEquals(patch.rgb().r(), written.path("rgb").path(0).asInt());
            assertEquals(patch.rgb().b(), written.path("rgb").path(2).asInt());
            assertEquals(patch.area().x(), written.path("xMm").asDouble(), 0.5e-4);
            assertEquals(patch.area().y(), written.path("yMm").asDouble(), 0.5e-4);
            assertEquals(patch.area().width(), written.path("widthMm").asDouble(), 0.5e-4);
            assertEquals(patch.area().height(), written.path("heightMm").asDouble(), 0.5e-4);
        }
        for (int i = 0; i < own.markers().size(); i++) {
            JsonNode written = sheet.path("markers").path(i);
            assertEquals(own.markers().get(i).id(), written.path("id").asInt());
            assertEquals(own.markers().get(i).area().x(), written.path("xMm").asDouble(), 0.5e-4);
            assertTrue(written.path("sizeMm").asDouble() > 8);
        }
    }

    /** Each edit is one that a reader would otherwise believe. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"rgb\": [48, 48, 48]|\"rgb\": [47, 48, 48]",
                "\"widthMm\": 6.096|\"widthMm\": 6.3",
                "\"section\": \"skin\"|\"section\": \"cube\"",
                "\"bottom\": 35|\"bottom\": 36",
                "\"space\": \"srgb\"|\"space\": \"romm\"",
                "{\"id\": 103,|{\"id\": 104,",
                "\"print\": 1,|\"print\": 2,"
            })
    void aFileThatDoesNotAgreeWithItsRecipeIsRefused(String from, String to) {
        assertTrue(text.contains(from), from);
        Problem problem = refused(text.replaceFirst(Pattern.quote(from), to));
        assertTrue(
                String.valueOf(problem.getMessage()).contains("does not agree"),
                problem.getMessage());
    }

    @Test
    void newerSchemaIsRefusedInOneLine() {
        Problem problem = refused(text.replace("printassay/chart/1", "printassay/chart/2"));
        String message = String.valueOf(problem.getMessage());
        assertTrue(message.contains("another version of printassay"), message);
        assertEquals(1, message.lines().count());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[]",
                "not json",
                "{\"schema\": \"printassay/evaluation/1\"}",
                "{\"schema\": \"printassay/chart/1\"}",
                "{\"schema\": \"printassay/chart/1\", \"schema\": \"printassay/chart/1\"}",
                "{\"a\u001b\n\": 1}"
            })
    void whatIsNotAChartFileIsRefusedInOneLine(String other) {
        String message = String.valueOf(refused(other).getMessage());
        assertTrue(message.matches("[\\x20-\\x7e]+"), message);
        assertTrue(message.startsWith("chart.json"), message);
    }

    @Test
    void valuesOutOfRangeAreNamedWithTheirPlace() {
        Problem problem = refused(text.replaceFirst("\"rgb\": \\[48", "\"rgb\": [300"));
        assertTrue(String.valueOf(problem.getMessage()).contains("rgb"), problem.getMessage());
    }

    @Test
    void deepNestingIsRefused() {
        refused("[".repeat(100_000));
    }

    @Test
    void hugeFileIsRefusedBeforeItIsRead(@TempDir Path dir) throws IOException {
        Path huge = dir.resolve("chart.json");
        try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(CheckedJson.LARGEST_BYTES + (1L << 33));
        }
        Problem problem = assertThrows(Problem.class, () -> ChartFile.read(huge));
        assertTrue(String.valueOf(problem.getMessage()).contains("too large"));
    }

    @Test
    void missingFileSaysWhereItWasLookedFor(@TempDir Path dir) {
        Problem problem =
                assertThrows(Problem.class, () -> ChartFile.read(dir.resolve("none.json")));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        assertTrue(String.valueOf(problem.getMessage()).contains(dir.toString()));
    }

    @Test
    void readsFromADisk(@TempDir Path dir) throws IOException, Problem {
        Path file = Files.writeString(dir.resolve("chart.json"), text);
        assertEquals(chart, ChartFile.read(file));
    }

    private static Problem refused(String other) {
        Problem problem = assertThrows(Problem.class, () -> ChartFile.parse("chart.json", other));
        assertEquals(Problem.Kind.INPUT, problem.kind());
        return problem;
    }
}
