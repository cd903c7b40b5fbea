package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Printing;

/** The check command on simulated prints that were measured or scanned; bad input in one line. */
class CheckTest {
    private static final int FAILED = 1;
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;
    private static final int CHART = 4;
    private static final int CANNOT_TELL = 6;

    @TempDir static Path shared;
    @TempDir Path dir;

    private static Path chart;
    private static Path before;
    private static Path same;
    private static Path blocked;

    @BeforeAll
    static void measure() throws Exception {
        chart = shared.resolve("chart.json");
        Files.writeString(chart, ChartFile.write(SimulatedPrint.chart()));
        PaperModel paper = SimulatedPrint.goodPaper();
        before = measured("before.txt", paper, 1);
        same = measured("same.txt", paper, 2);
        blocked =
                measured("blocked.txt", paper.withTone(paper.tone().withBlocked(16, 20, true)), 3);
    }

    private static Path measured(String name, PaperModel paper, long seed) throws Exception {
        Path file = shared.resolve(name);
        PrintRoom.measure(SimulatedPrint.print(paper, Printing.EXACT, seed), seed, file);
        return file;
    }

    private CommandLineRun check(Object... arguments) {
        List<Object> all = new ArrayList<>(List.of("check"));
        all.addAll(List.of(arguments));
        all.addAll(List.of("--out", dir.resolve("out")));
        return CommandLineRun.of(all.toArray());
    }

    private void refused(int code, List<?> arguments, String... words) throws Exception {
        CommandLineRun run = check(arguments.toArray());
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("", run.out());
        for (String word : words) {
            assertTrue(run.err().contains(word), () -> "\"" + word + "\" in: " + run.err());
        }
        assertFalse(Files.exists(dir.resolve("out")), "nothing half-written");
        try (Stream<Path> left = Files.list(dir)) {
            assertEquals(List.of(), left.filter(p -> p.toString().contains("-part-")).toList());
        }
    }

    private JsonNode result() throws Exception {
        return new ObjectMapper().readTree(dir.resolve("out/check.json").toFile());
    }

    private Path evaluation(Path file) {
        Path out = dir.resolve(file.getFileName() + "-evaluation");
        CommandLineRun run = CommandLineRun.of("evaluate", file, "--chart", chart, "--out", out);
        assertEquals(0, run.exitCode(), run.err());
        return out;
    }

    @Test
    void anUnchangedPrintIsWithin() throws Exception {
        CommandLineRun run =
                check(same, "--baseline", before, "--chart", chart, "--tolerances", "fine");
        assertEquals(0, run.exitCode(), run.out() + run.err());
        assertTrue(run.out().startsWith("Within: "), run.out());
        assertTrue(run.out().strip().endsWith("check.html"), run.out());
        assertTrue(
                run.out().contains("Held against before.txt. How far unchanged prints"), run.out());
        assertTrue(run.out().lines().count() <= 9);
        assertEquals("within", result().path("outcome").asText());
        assertTrue(Files.readString(dir.resolve("out/check.html")).contains("Within: same.txt"));
    }

    @Test
    void blockedShadowsFailAndTheWedgeSaysByHowMuch() throws Exception {
        CommandLineRun run = check(blocked, "--baseline", before, "--chart", chart);
        assertEquals(FAILED, run.exitCode(), run.out() + run.err());
        assertTrue(run.out().startsWith("Failed: "), run.out());
        assertEquals("failed", result().path("outcome").asText());
        assertTrue(run.out().contains("Shadow wedge as a whole"), run.out());
    }

    @Test
    void storedEvaluationsAndTheirFoldersServeToo() throws Exception {
        Path stored = evaluation(before);
        CommandLineRun folder = check(evaluation(same), "--baseline", stored);
        assertEquals(0, folder.exitCode(), folder.err());
        CommandLineRun file =
                check(
                        evaluation(same).resolve("evaluation.json"),
                        "--baseline",
                        stored.resolve("evaluation.json"),
                        "--json");
        assertEquals(0, file.exitCode(), file.err());
        JsonNode printed = new ObjectMapper().readTree(file.out());
        assertEquals("printassay/check/1", printed.path("schema").asText());
        assertEquals(result(), printed);
    }

    @Test
    void ofSeveralPrintsTheGravestCodeCounts() throws Exception {
        Path damaged = Files.writeString(dir.resolve("damaged.json"), "{\"schema\": ");
        CommandLineRun two = check(blocked, same, "--baseline", before, "--chart", chart);
        assertEquals(FAILED, two.exitCode(), two.err());
        List<String> lines = two.out().lines().toList();
        assertTrue(lines.get(1).startsWith("blocked  failed "), two.out());
        assertTrue(lines.get(2).startsWith("same     within "), two.out());
        assertTrue(lines.get(3).startsWith("2 prints checked: 1 failed, 1 within."), two.out());
        CommandLineRun three =
                check(blocked, damaged, same, "--baseline", before, "--chart", chart);
        assertEquals(INPUT, three.exitCode(), three.err());
        assertTrue(three.err().contains("damaged.json"), three.err());
        JsonNode all = new ObjectMapper().readTree(dir.resolve("out/checks.json").toFile());
        assertEquals(2, all.path("checked").asInt());
        assertEquals("failed", all.at("/prints/0/outcome").asText());
        assertEquals(INPUT, all.at("/prints/1/problem/exitCode").asInt());
        for (String name : List.of("blocked", "same")) {
            for (String file : List.of("check.json", "check.html", "check.pdf")) {
                assertTrue(Files.exists(dir.resolve("out").resolve(name).resolve(file)), file);
            }
        }
    }

    /** Levels lie six apart beyond 24: a wedge so sparse must not seem to have moved. */
    @Test
    void unchangedWedgesOfFewLevelsHaveNotMoved() throws Exception {
        int pairs = 10;
        for (int i = 0; i < pairs; i++) {
            Path one = MeasuredPrint.evaluation(dir.resolve("one" + i), "P", 1000 + 37 * i, 0);
            Path two = MeasuredPrint.evaluation(dir.resolve("two" + i), "P", 5000 + 41 * i, 0);
            CommandLineRun run = check(two, "--baseline", one, "--force", "--json");
            for (JsonNode change : new ObjectMapper().readTree(run.out()).path("changes")) {
                if (change.path("quantity").asText().endsWith("Shift")) {
                    assertEquals("within", change.path("outcome").asText(), change.toString());
                }
            }
        }
    }

    @Test
    void tolerancesNarrowerThanWhatIsKnownCannotTell() throws Exception {
        Path narrow =
                Files.writeString(
                        dir.resolve("narrow.json"),
                        "{\"schema\": \"printassay/tolerances/1\", \"name\": \"narrow\","
                                + " \"falseAlarmPercent\": 1,"
                                + " \"quantities\": {\"blackL\": {\"limit\": 0.01}}}");
        CommandLineRun run =
                check(same, "--baseline", before, "--chart", chart, "--tolerances", narrow);
        assertEquals(CANNOT_TELL, run.exitCode(), run.out() + run.err());
        assertTrue(run.out().startsWith("Cannot tell: "), run.out());
    }

    @Test
    void tolerancesAreShownToBeEdited() throws Exception {
        CommandLineRun run = CommandLineRun.of("check", "--show-tolerances", "fine");
        assertEquals(0, run.exitCode(), run.err());
        Path mine = Files.writeString(dir.resolve("mine.json"), run.out());
        assertEquals(
                0,
                check(same, "--baseline", before, "--chart", chart, "--tolerances", mine)
                        .exitCode());
        assertEquals(
                WRONG_USE, CommandLineRun.of("check", "--show-tolerances", "other").exitCode());
    }

    @Test
    void anotherChecksResultsAreKept() throws Exception {
        Object[] first = {same, "--baseline", before, "--chart", chart};
        assertEquals(0, check(first).exitCode());
        assertEquals(0, check(first).exitCode(), "the same again");
        CommandLineRun other = check(blocked, "--baseline", before, "--chart", chart);
        assertEquals(5, other.exitCode());
        assertTrue(other.err().contains("--force"), other.err());
        assertEquals("within", result().path("outcome").asText());
    }

    @Test
    void badInputEndsInOneLine() throws Exception {
        List<Object> chartOf = List.of("--chart", chart);
        refused(INPUT, List.of(same, "--logbook", dir.resolve("none.sqlite")), "no logbook here");
        refused(
                WRONG_USE,
                with(chartOf, same, "--baseline", before, "--logbook", dir.resolve("none.sqlite")),
                "--logbook-spread");
        refused(WRONG_USE, List.of("--baseline", before), "name the print");
        refused(INPUT, with(chartOf, same, "--baseline", dir.resolve("no.json")), "no.json");
        refused(INPUT, with(chartOf, same, "--baseline", dir), "evaluation.json");
        refused(WRONG_USE, with(chartOf, same, "--baseline", same), "same file");
        refused(WRONG_USE, with(chartOf, same, "--baseline", before, "--tolerances", "x"), "fine");
        Path damaged = Files.writeString(dir.resolve("damaged.json"), "{\"schema\": ");
        refused(INPUT, with(chartOf, same, "--baseline", damaged), "damaged.json");
        refused(
                INPUT,
                with(chartOf, same, "--baseline", before, "--tolerances", damaged),
                "damaged.json");
        refused(INPUT, with(chartOf, same, "--baseline", chart), "chart.json");
        Path unknown =
                Files.writeString(
                        dir.resolve("unknown.json"),
                        CommandLineRun.of("check", "--show-tolerances", "fine")
                                .out()
                                .replace("\"blackL\"", "\"blckL\""));
        refused(
                INPUT,
                with(chartOf, same, "--baseline", before, "--tolerances", unknown),
                "blckL",
                "blackL");
    }

    private static List<Object> with(List<Object> more, Object... first) {
        List<Object> all = new ArrayList<>(List.of(first));
        all.addAll(more);
        return all;
    }

    @Test
    void aBaselineOfAnotherSpaceTrustOrChartIsRefused() throws Exception {
        Path stored = evaluation(before).resolve("evaluation.json");
        String text = Files.readString(stored);
        Path print = evaluation(same);
        Path space =
                Files.writeString(
                        dir.resolve("space.json"),
                        text.replace("\"space\": \"srgb\"", "\"space\": \"display-p3\""));
        refused(INPUT, List.of(print, "--baseline", space), "encodings");
        Path other =
                Files.writeString(
                        dir.resolve("other.json"),
                        text.replace(SimulatedPrint.chart().id(), "ZZZZZZ"));
        refused(CHART, List.of(print, "--baseline", other), "another chart");
        Path trust =
                Files.writeString(
                        dir.resolve("trust.json"),
                        text.replace("\"trust\": \"instrument\"", "\"trust\": \"profiled-scan\""));
        refused(INPUT, List.of(print, "--baseline", trust), "different ways");
        Path printer =
                Files.writeString(
                        dir.resolve("printer.json"),
                        text.replace("\"printer\": null", "\"printer\": \"Another\""));
        refused(
                INPUT,
                List.of(same, "--chart", chart, "--printer", "This", "--baseline", printer),
                "printer");
    }
}
