package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.PrintedPatch;
import org.printassay.demo.print.Printing;
import org.printassay.demo.print.RenderedSheet;

/** The printer sheet, the short sheet and edited recipes, from the command to the readings. */
class OtherSheetsTest {
    /**
     * A simulated scan without stray light reads a patch of 5 mm to this, CIEDE2000: spread, grain
     * and noise of the simulated print and scan, 8-bit profile included.
     */
    private static final double READ_WITHIN = 1.5;

    @TempDir private Path dir;

    private Path chart(String... options) {
        Path folder = dir.resolve("chart");
        List<Object> words = new ArrayList<>(List.of("chart", "--out", folder, "--dpi", "150"));
        words.addAll(List.of(options));
        CommandLineRun run = CommandLineRun.of(words.toArray());
        assertEquals(0, run.exitCode(), run.err());
        return folder;
    }

    /** Prints and scans every sheet of a chart; truth by patch. */
    private List<Path> scans(Path folder, Map<String, Lab> truth) throws Exception {
        Chart chart = ChartFile.read(folder.resolve("chart.json"));
        List<Path> scans = new ArrayList<>();
        for (int number = 1; number <= chart.sheets().size(); number++) {
            RenderedSheet page = PrintRoom.render(folder.resolve("chart.pdf"), number);
            Print print =
                    PrintRoom.print(
                            page, chart, number, SimulatedPrint.goodPaper(), Printing.EXACT, 3);
            for (PrintedPatch patch : print.patches()) {
                truth.put(patch.patch().id(), patch.printed());
            }
            Path scan = dir.resolve("scan-" + number + ".tif");
            PrintRoom.scan(print, SimulatedPrint.flatbed().withSamplesPerInch(200), 5, scan);
            scans.add(scan);
        }
        return scans;
    }

    private CommandLineRun evaluate(List<Path> scans, Object... options) {
        List<Object> words = new ArrayList<>(List.of("evaluate", "--force"));
        words.addAll(scans);
        words.addAll(List.of("--out", dir.resolve("evaluation")));
        words.addAll(List.of(options));
        return CommandLineRun.of(words.toArray());
    }

    private JsonNode evaluation() throws IOException {
        return new ObjectMapper().readTree(dir.resolve("evaluation/evaluation.json").toFile());
    }

    private void allIsRead(Map<String, Lab> truth) throws IOException {
        JsonNode patches = evaluation().path("patches");
        assertEquals(truth.size(), patches.size());
        for (JsonNode patch : patches) {
            JsonNode lab = patch.path("lab");
            Lab read =
                    new Lab(
                            lab.path("l").asDouble(),
                            lab.path("a").asDouble(),
                            lab.path("b").asDouble());
            String id = patch.path("id").asText();
            Lab wanted = truth.get(id);
            double off = wanted == null ? 100 : DeltaE.ciede2000(wanted, read);
            assertTrue(off < READ_WITHIN, id + " " + wanted + " read as " + read);
        }
    }

    @Test
    void thePrinterSheetIsReadAndSaysWhatItLacks() throws Exception {
        Map<String, Lab> truth = new TreeMap<>();
        List<Path> scans =
                scans(chart("--recipe", "printer", "--page", "A5", "--margin-mm", "8"), truth);
        CommandLineRun run = evaluate(scans);
        assertEquals(0, run.exitCode(), run.err());
        allIsRead(truth);
        JsonNode evaluation = evaluation();
        assertTrue(evaluation.path("shadows").path("blockedThrough").isNull());
        assertTrue(evaluation.path("highlights").path("mergedFrom").isNull());
        assertTrue(evaluation.path("colours").path("gamutVolume").isNull());
        List<String> codes = evaluation.path("warnings").findValuesAsText("code");
        assertTrue(codes.contains("shadows-not-judged"), codes.toString());
        assertTrue(codes.contains("highlights-not-judged"), codes.toString());
        assertFalse(evaluation.path("white").path("lab").isNull());
        assertFalse(evaluation.path("evenness").path("maxDeltaE00").isNull());
    }

    @Test
    void theShortSheetIsReadFromAScan() throws Exception {
        Path folder = chart("--recipe", "short", "--page", "4x6in");
        Map<String, Lab> truth = new TreeMap<>();
        List<Path> scans = scans(folder, truth);
        CommandLineRun run = evaluate(scans);
        assertEquals(0, run.exitCode(), run.err());
        allIsRead(truth);
        JsonNode scanned = evaluation().path("shadows").path("firstSeparated");
        assertTrue(scanned.isInt(), scanned.toString());
        // What the chart aims at is no measurement of a print.
        assertEquals(3, evaluate(List.of(folder.resolve("chart.txt"))).exitCode());
    }

    @Test
    void anEditedRecipeNeedsItsChartFileAndIsReadWithIt() throws Exception {
        Path recipe =
                Files.writeString(
                        dir.resolve("my.json"),
                        """
                        {"schema": "printassay/recipe/1", "kind": "edited", "page": "A5",
                         "marginsMm": [8], "sections": [
                          {"section": "neutral-ramp", "steps": 17, "copies": 2, "patchMm": 12},
                          {"section": "cube", "steps": 3, "patchMm": 12},
                          {"section": "skin", "copies": 2, "patchMm": 12},
                          {"section": "shadows", "every": 4, "patchMm": 12},
                          {"section": "own", "lab": [[40, 20, -30], [70, -20, 40]], "copies": 2}]}
                        """);
        Path folder = chart("--recipe", recipe.toString(), "--preview");
        assertTrue(Files.exists(folder.resolve("preview-2.png")), "it takes two sheets");
        Map<String, Lab> truth = new TreeMap<>();
        List<Path> scans = scans(folder, truth);
        CommandLineRun without = evaluate(scans);
        assertEquals(4, without.exitCode(), without.err());
        assertTrue(without.err().contains("--chart chart.json"), without.err());
        Path other = dir.resolve("other");
        CommandLineRun.of("chart", "--dpi", "100", "--out", other);
        CommandLineRun wrong = evaluate(scans, "--chart", other.resolve("chart.json"));
        assertEquals(4, wrong.exitCode(), wrong.err());
        assertEquals(1, wrong.err().strip().lines().count(), wrong.err());
        CommandLineRun run = evaluate(scans, "--chart", folder.resolve("chart.json"));
        assertEquals(0, run.exitCode(), run.err());
        allIsRead(truth);
        // Levels 1 to 3 are not on the sheet: nothing may be said about them.
        assertFalse(run.out().contains("print as one black"), run.out());
    }

    @Test
    void badRecipesAreOneLineThatNamesThePlace() throws Exception {
        String start =
                "{\"schema\": \"printassay/recipe/1\",\n\"kind\": \"edited\",\n\"sections\": [\n";
        Map<String, String> bad =
                Map.of(
                        "{\"section\": \"cube\", \"colums\": 3}",
                        "\"columns\" is",
                        "{\"section\": \"cube\", \"patchMm\": 2}",
                        "patchMm",
                        "{\"section\": \"own\", \"rgb\": [[0, 300, 0]]}",
                        "/sections/0/rgb/0/1",
                        "{\"section\": \"cube\", \"atMm\": [40, 60]},"
                                + "{\"section\": \"skin\", \"atMm\": [41, 61]}",
                        "overlaps");
        for (Map.Entry<String, String> one : bad.entrySet()) {
            Path file = Files.writeString(dir.resolve("bad.json"), start + one.getKey() + "]}");
            refused(file, "bad.json, line 4: ", one.getValue());
        }
        Path large = dir.resolve("large.json");
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(100L << 20);
        }
        refused(large, "large.json: ", "is 100 MB, too large to be a recipe file");
    }

    private void refused(Path recipe, String start, String words) {
        CommandLineRun run =
                CommandLineRun.of("chart", "--recipe", recipe, "--out", dir.resolve("none"));
        assertEquals(3, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertTrue(run.err().contains(start) && run.err().contains(words), run.err());
        assertFalse(Files.exists(dir.resolve("none")));
    }

    @Test
    void aRollTakesTheLengthThatIsNeeded() throws Exception {
        Path folder = chart("--page", "329mm");
        Chart chart = ChartFile.read(folder.resolve("chart.json"));
        assertEquals(1, chart.sheets().size());
        assertEquals(329, chart.recipe().page().widthMm());
        double length = chart.recipe().page().heightMm();
        assertTrue(length > 150 && length < 420, "length " + length);
    }
}
