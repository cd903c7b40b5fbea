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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;

/** Folders, lists and many files that are checked at once. All simulated. */
class ManyChecksTest {
    private static final int FAILED = 1;
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;
    private static final int OUTPUT = 5;

    @TempDir Path dir;

    private JsonNode summary(String out) throws Exception {
        return new ObjectMapper().readTree(dir.resolve(out).resolve("checks.json").toFile());
    }

    /** Names and outcomes; a small change inside the tolerance is as good as none. */
    private static List<String> outcomes(JsonNode summary) {
        List<String> outcomes = new ArrayList<>();
        for (JsonNode print : summary.path("prints")) {
            String outcome = print.path("outcome").asText().replace("drifted", "within");
            outcomes.add(print.path("name").asText() + " " + outcome);
        }
        return outcomes;
    }

    private void scan(PaperModel paper, long seed, double degrees, String name) throws Exception {
        Flatbed bed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(150)
                        .withPlacing(Placing.STRAIGHT.withDegrees(degrees))
                        .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
        Print print = SimulatedPrint.print(paper, Printing.EXACT, seed);
        Path file = dir.resolve(name);
        Files.createDirectories(file.getParent());
        PrintRoom.scan(print, bed, seed + Math.round(degrees), file);
    }

    /** Repeats are joined, a broken scan stops nothing, and the gravest code is told. */
    @Test
    void aFolderOfScansIsCheckedAgainstOneOfThem() throws Exception {
        PaperModel paper = SimulatedPrint.goodPaper();
        PaperModel blocked = paper.withTone(paper.tone().withBlocked(20, 20, true));
        scan(paper, 61, 0.4, "scans/before.png");
        scan(paper, 62, 0.2, "scans/monday-1.png");
        scan(paper, 62, 180.5, "scans/monday-2.png");
        scan(blocked, 63, 0, "scans/tuesday/clogged.png");
        Path out = dir.resolve("checks");
        Path baseline = dir.resolve("scans/before.png");
        CommandLineRun run =
                CommandLineRun.of(
                        "check", dir.resolve("scans"), "--baseline", baseline, "--out", out);
        assertEquals(FAILED, run.exitCode(), run.out() + run.err());
        JsonNode summary = summary("checks");
        assertEquals(List.of("monday within", "tuesday-clogged failed"), outcomes(summary));
        assertEquals(2, summary.at("/prints/0/files").size());
        assertTrue(summary.path("skipped").toString().contains("the baseline."));
        assertTrue(
                run.out().lines().toList().get(1).startsWith("tuesday-clogged  failed"), run.out());
        String page = Files.readString(out.resolve("index.html"));
        assertTrue(page.contains("href=\"tuesday-clogged/check.html\""), page);
        assertTrue(
                page.contains("2 prints checked: 1 failed, 1 within; 1 file passed over."), page);

        Files.writeString(dir.resolve("scans/broken.tif"), "II*");
        CommandLineRun broken =
                CommandLineRun.of(
                        "check", dir.resolve("scans"), "--baseline", baseline, "--out", out);
        assertEquals(INPUT, broken.exitCode(), broken.out() + broken.err());
        assertTrue(broken.err().contains("broken: broken.tif"), broken.err());
        assertEquals(2, summary("checks").path("checked").asInt());
        assertTrue(Files.readString(out.resolve("checks.csv")).contains("\r\nmonday,"));
    }

    private Path evaluated(String name, String paper, long seed, double lighter) throws Exception {
        Path made =
                MeasuredPrint.evaluation(dir.resolve("made").resolve(name), paper, seed, lighter);
        Path folder = Files.createDirectories(dir.resolve("results").resolve(name));
        return Files.copy(made, folder.resolve("evaluation.json"));
    }

    /** As a lab checks every morning: each print against its own paper's baseline. */
    @Test
    void eachPrintHasTheBaselineOfItsPaper() throws Exception {
        Path logbook = dir.resolve("lab.sqlite");
        for (String paper : List.of("Paper A", "Paper B")) {
            for (int i = 0; i < 2; i++) {
                double lighter = paper.equals("Paper A") ? 0 : 5;
                long seed = i + (long) (10 * lighter);
                Path made = MeasuredPrint.evaluation(dir.resolve(paper + i), paper, seed, lighter);
                CommandLineRun add = CommandLineRun.of("log", "add", made, "--logbook", logbook);
                assertEquals(0, add.exitCode(), add.err());
            }
        }
        CommandLineRun.of("log", "baseline", 1, 2, "--logbook", logbook);
        CommandLineRun.of("log", "baseline", 3, 4, "--logbook", logbook);
        evaluated("one", "Paper A", 84, 0);
        evaluated("two", "Paper B", 81, 5);
        evaluated("wrong", "Paper B", 82, 0);
        evaluated("unknown", "Paper C", 83, 0);
        CommandLineRun run =
                CommandLineRun.of(
                        "check",
                        dir.resolve("results"),
                        "--logbook",
                        logbook,
                        "--json",
                        "--out",
                        dir.resolve("out"));
        assertEquals(INPUT, run.exitCode(), run.err());
        JsonNode summary = new ObjectMapper().readTree(run.out());
        assertEquals(
                List.of("one within", "two within", "unknown null", "wrong failed"),
                outcomes(summary));
        assertTrue(summary.at("/prints/1/baseline").asText().contains("(no. 3, 4)"), run.out());
        assertTrue(run.err().contains("no baseline for"), run.err());
        assertTrue(Files.exists(dir.resolve("out/wrong/check.pdf")));
        assertFalse(Files.exists(dir.resolve("out/unknown")));
    }

    @Test
    void aListNamesPrintsToo() throws Exception {
        Path before = evaluated("before", "Paper A", 90, 0);
        evaluated("after", "Paper A", 91, 0);
        Path list =
                Files.writeString(
                        dir.resolve("prints.csv"),
                        "file,print\nresults/after/evaluation.json,=after\ngone.tif,\n");
        CommandLineRun run =
                CommandLineRun.of(
                        "check", "--list", list, "--baseline", before, "--out", dir.resolve("out"));
        assertEquals(INPUT, run.exitCode(), run.err());
        assertEquals(List.of("=after within", "gone null"), outcomes(summary("out")));
        assertTrue(
                Files.readString(dir.resolve("out/checks.csv")).contains("\n'=after,"),
                "no formula");
        CommandLineRun both = CommandLineRun.of("check", before, "--list", list);
        assertEquals(WRONG_USE, both.exitCode(), both.err());
    }

    @Test
    void somebodysPageAndOtherPrintsAreLeftAlone() throws Exception {
        Path before = evaluated("before", "Paper A", 90, 0);
        Path one = evaluated("one", "Paper A", 91, 0);
        Path two = evaluated("two", "Paper A", 92, 0);
        Path out = Files.createDirectory(dir.resolve("out"));
        Path page = Files.writeString(out.resolve("index.html"), "mine");
        CommandLineRun run =
                CommandLineRun.of("check", one, two, "--baseline", before, "--out", out);
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertEquals("mine", Files.readString(page));
        Files.delete(page);
        assertEquals(
                0,
                CommandLineRun.of("check", one, two, "--baseline", before, "--out", out)
                        .exitCode());
        assertEquals(List.of("one within", "two within"), outcomes(summary("out")));
        Path empty = Files.createDirectory(dir.resolve("empty"));
        CommandLineRun none = CommandLineRun.of("check", empty, "--baseline", before);
        assertEquals(INPUT, none.exitCode(), none.err());
        assertTrue(none.err().contains("holds no scan and no evaluation"), none.err());
    }
}
