package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;

/** A folder of scans, a list of them, and what is wrong with some. All simulated. */
class ManyPrintsTest {
    private static final int INPUT = 3;
    private static final int CHART = 4;
    private static final int OUTPUT = 5;

    /** Two scans of one print, one of a reprint. */
    @TempDir static Path made;

    @TempDir Path dir;

    @BeforeAll
    static void scan() throws Exception {
        Flatbed bed =
                SimulatedPrint.flatbed()
                        .withSamplesPerInch(150)
                        .withFile(ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8));
        Print one = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 51);
        Print other = SimulatedPrint.print(SimulatedPrint.goodPaper(), Printing.EXACT, 52);
        PrintRoom.scan(one, bed, 51, made.resolve("one.png"));
        PrintRoom.scan(
                one,
                bed.withPlacing(Placing.STRAIGHT.withDegrees(180.5)),
                53,
                made.resolve("turned.png"));
        PrintRoom.scan(other, bed, 52, made.resolve("other.png"));
    }

    private void copy(String scan, String to) throws Exception {
        Path target = dir.resolve(to);
        Files.createDirectories(target.getParent());
        Files.copy(made.resolve(scan), target);
    }

    private JsonNode summary(String out) throws Exception {
        return new ObjectMapper().readTree(dir.resolve(out).resolve("summary.json").toFile());
    }

    private static List<String> names(JsonNode summary, boolean evaluated) {
        List<String> names = new ArrayList<>();
        for (JsonNode print : summary.path("prints")) {
            if (print.path("problem").isNull() == evaluated) {
                names.add(print.path("name").asText());
            }
        }
        return names;
    }

    private static Set<String> inside(Path folder) throws Exception {
        try (Stream<Path> all = Files.list(folder)) {
            return new TreeSet<>(all.map(file -> file.getFileName().toString()).toList());
        }
    }

    /** Repeats are joined, a reprint of like name is not, and one broken scan stops nothing. */
    @Test
    void aFolderIsSortedIntoPrints() throws Exception {
        copy("one.png", "scans/baryta-1.png");
        copy("turned.png", "scans/baryta-2.png");
        copy("one.png", "scans/matte-a.png");
        copy("other.png", "scans/matte-b.png");
        copy("other.png", "scans/tuesday/rag.png");
        Files.writeString(dir.resolve("scans/broken.tif"), "II*");
        Files.writeString(dir.resolve("scans/notes.txt"), "notes");
        Files.createSymbolicLink(dir.resolve("scans/loop"), dir.resolve("scans"));
        Path out = dir.resolve("scans/results");
        CommandLineRun run =
                CommandLineRun.of("evaluate", dir.resolve("scans"), "--paper", "P", "--out", out);
        assertEquals(INPUT, run.exitCode(), run.err());
        JsonNode summary = summary("scans/results");
        assertEquals(List.of("baryta", "matte-a", "matte-b", "tuesday-rag"), names(summary, true));
        assertEquals(List.of("broken"), names(summary, false));
        assertEquals(2, summary.at("/prints/0/files").size());
        assertEquals(INPUT, summary.path("exitCode").asInt());
        assertTrue(summary.path("skipped").toString().contains("notes.txt"));
        assertTrue(summary.path("skipped").toString().contains("loop"));
        assertTrue(run.err().contains("broken: broken.tif"), run.err());
        assertTrue(run.err().contains("matte-b: its name is like others'"), run.err());
        assertEquals(
                Set.of(
                        "baryta",
                        "matte-a",
                        "matte-b",
                        "tuesday-rag",
                        "index.html",
                        "summary.csv",
                        "summary.json"),
                inside(out));
        String page = Files.readString(out.resolve("index.html"));
        assertTrue(page.contains("href=\"tuesday-rag/report.html\""), page);

        // Its own results are no input of the next run, whose files are the same.
        String before = Files.readString(out.resolve("summary.json"));
        String evaluation = Files.readString(out.resolve("baryta/evaluation.json"));
        CommandLineRun again =
                CommandLineRun.of("evaluate", dir.resolve("scans"), "--paper", "P", "--out", out);
        assertEquals(INPUT, again.exitCode(), again.err());
        assertTrue(Files.readString(out.resolve("summary.json")).contains("\"results\""));
        assertEquals(evaluation, Files.readString(out.resolve("baryta/evaluation.json")));
        assertEquals(
                new ObjectMapper().readTree(before).path("prints"),
                summary("scans/results").path("prints"));
    }

    /** Evaluated beside others, a print comes out as it does alone, byte for byte. */
    @Test
    void nothingDependsOnTheNeighbours() throws Exception {
        copy("one.png", "scans/one.png");
        copy("other.png", "scans/other.png");
        copy("turned.png", "scans/third.png");
        CommandLineRun many =
                CommandLineRun.of("evaluate", dir.resolve("scans"), "--out", dir.resolve("many"));
        assertEquals(0, many.exitCode(), many.err());
        for (String name : List.of("one", "other", "third")) {
            Path alone = dir.resolve("alone-" + name);
            Path scan = dir.resolve("scans/" + name + ".png");
            assertEquals(0, CommandLineRun.of("evaluate", scan, "--out", alone).exitCode());
            for (String file : inside(alone)) {
                assertEquals(
                        -1,
                        Files.mismatch(
                                alone.resolve(file), dir.resolve("many/" + name + "/" + file)),
                        name + "/" + file);
            }
        }
    }

    @Test
    void aListSaysWhatBelongsTogether() throws Exception {
        copy("one.png", "scans/a.png");
        copy("turned.png", "scans/b.png");
        copy("other.png", "scans/c.png");
        Path list =
                Files.writeString(
                        dir.resolve("prints.csv"),
                        """
                        file,print,paper,printer,dried hours
                        scans/a.png,=first,Paper A,Printer 1,24
                        scans/b.png,=first,,,
                        scans/c.png,,Paper B,,
                        scans/gone.png,,,,
                        """);
        CommandLineRun run =
                CommandLineRun.of("evaluate", "--list", list, "--json", "--out", dir.resolve("o"));
        assertEquals(INPUT, run.exitCode(), run.err());
        JsonNode summary = new ObjectMapper().readTree(run.out());
        assertEquals(List.of("=first", "c"), names(summary, true));
        assertEquals("Paper A", summary.at("/prints/0/paper").asText());
        assertEquals(24, summary.at("/prints/0/driedHours").asInt());
        assertEquals("Paper B", summary.at("/prints/1/paper").asText());
        assertTrue(run.err().contains("gone.png"), run.err());
        // What a spreadsheet would take for a formula has an apostrophe in front.
        String csv = Files.readString(dir.resolve("o/summary.csv"));
        assertTrue(csv.contains("\n'=first,"), csv);
    }

    @Test
    void plainFilesAreOfOnePrintUnlessSaid() throws Exception {
        copy("one.png", "a/scan.png");
        copy("other.png", "b/scan.png");
        Path a = dir.resolve("a/scan.png");
        Path b = dir.resolve("b/scan.png");
        CommandLineRun one = CommandLineRun.of("evaluate", a, b, "--out", dir.resolve("one"));
        assertEquals(CHART, one.exitCode(), one.err());
        assertTrue(one.err().contains("b/scan.png") && one.err().contains("a/scan.png"), one.err());
        CommandLineRun many =
                CommandLineRun.of("evaluate", "--many", a, b, "--out", dir.resolve("many"));
        assertEquals(0, many.exitCode(), many.err());
        assertEquals(List.of("a-scan", "b-scan"), names(summary("many"), true));
    }

    /** Results that are whole stay; of those that were being written nothing does. */
    @Test
    void anInterruptedRunLeavesNothingHalfWritten() throws Exception {
        for (int i = 0; i < 12; i++) {
            copy("one.png", "scans/print" + i + ".png");
        }
        Path out = dir.resolve("out");
        String path = System.getProperty("surefire.test.class.path");
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-Djava.awt.headless=true",
                                "-cp",
                                path == null ? System.getProperty("java.class.path") : path,
                                "org.printassay.cli.Main",
                                "evaluate",
                                dir.resolve("scans").toString(),
                                "--out",
                                out.toString())
                        .redirectErrorStream(true)
                        .redirectOutput(dir.resolve("said.txt").toFile())
                        .start();
        while (process.isAlive() && !(Files.isDirectory(out) && isBegun(out))) {
            Thread.sleep(2);
        }
        assertTrue(process.isAlive(), () -> "ended by itself: " + said());
        process.destroy();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertFalse(Files.exists(out.resolve("summary.json")));
        for (String name : inside(out)) {
            assertTrue(name.startsWith("print"), name);
            assertTrue(
                    inside(out.resolve(name))
                            .containsAll(Set.of("evaluation.json", "report.html", "readings.csv")),
                    name);
        }
    }

    private String said() {
        try {
            return Files.readString(dir.resolve("said.txt"));
        } catch (IOException e) {
            return e.toString();
        }
    }

    /** Whether results are being written. */
    private static boolean isBegun(Path out) throws Exception {
        return inside(out).stream().anyMatch(name -> name.startsWith("."));
    }

    @Test
    void anEmptyFolderIsOneLine() throws Exception {
        Files.createDirectory(dir.resolve("scans"));
        Path out = dir.resolve("out");
        CommandLineRun run = CommandLineRun.of("evaluate", dir.resolve("scans"), "--out", out);
        assertEquals(INPUT, run.exitCode(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("holds no scan"), run.err());
        assertFalse(Files.exists(out));
    }

    @Test
    void somebodysPageIsLeftAlone() throws Exception {
        copy("one.png", "scans/one.png");
        Path page =
                Files.writeString(
                        Files.createDirectory(dir.resolve("o")).resolve("index.html"), "mine");
        CommandLineRun run =
                CommandLineRun.of("evaluate", dir.resolve("scans"), "--out", dir.resolve("o"));
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertEquals("mine", Files.readString(page));
        assertEquals(Set.of("index.html"), inside(dir.resolve("o")));
    }

    /**
     * Told before the work: a scan that is read, only for its results to be lost, is a nuisance.
     */
    @Test
    void aPlaceThatCannotBeWrittenIsToldBeforeTheWork() throws Exception {
        Path file = Files.writeString(dir.resolve("file"), "");
        for (Path out : List.of(file, file.resolve("below"), dir.resolve("x".repeat(300)))) {
            // The scan is not there: its absence would be told if it were looked for first.
            CommandLineRun run =
                    CommandLineRun.of("evaluate", dir.resolve("gone.tif"), "--out", out);
            assertEquals(OUTPUT, run.exitCode(), run.err());
        }
        assertEquals(Set.of("file"), inside(dir));
    }
}
