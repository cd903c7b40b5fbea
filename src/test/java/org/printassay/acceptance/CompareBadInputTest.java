package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;

/**
 * What cannot be compared ends with one line, the right code and no files. Prints are simulated.
 */
class CompareBadInputTest {
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;
    private static final int OUTPUT = 5;

    @TempDir static Path shared;
    @TempDir Path dir;

    @BeforeAll
    static void measureOnce() throws Exception {
        Path chart = shared.resolve("chart.json");
        Files.writeString(chart, ChartFile.write(SimulatedPrint.chart()));
        for (String name : List.of("a", "b")) {
            Path file = shared.resolve(name + ".txt");
            Print print =
                    SimulatedPrint.print(
                            SimulatedPrint.goodPaper(), Printing.EXACT, name.charAt(0));
            PrintRoom.measure(print, name.charAt(0), file);
            CommandLineRun run =
                    CommandLineRun.of(
                            "evaluate",
                            file,
                            "--chart",
                            chart,
                            "--paper",
                            "Paper " + name,
                            "--out",
                            shared.resolve(name));
            assertEquals(0, run.exitCode(), run.err());
        }
    }

    private static Path folder(String name) {
        return shared.resolve(name);
    }

    private CommandLineRun run(List<?> arguments) {
        List<Object> all = new ArrayList<>(List.of("compare", "--out", dir.resolve("out")));
        all.addAll(arguments);
        return CommandLineRun.of(all.toArray());
    }

    private void refused(int code, List<?> arguments, String... words) {
        CommandLineRun run = run(arguments);
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("", run.out());
        assertFalse(run.err().contains("\tat "), run.err());
        for (String word : words) {
            assertTrue(run.err().contains(word), () -> "\"" + word + "\" in: " + run.err());
        }
        assertFalse(Files.exists(dir.resolve("out")), "nothing half-written");
    }

    /** The evaluation of "b", changed. */
    private Path edited(String name, Edit edit) throws Exception {
        Path there = folder("b").resolve("evaluation.json");
        ObjectNode root = (ObjectNode) new ObjectMapper().readTree(there.toFile());
        edit.apply(root);
        return Files.writeString(dir.resolve(name), root.toString());
    }

    private interface Edit {
        void apply(ObjectNode root);
    }

    @Test
    void oneEvaluationOnly() {
        refused(WRONG_USE, List.of(folder("a")), "two evaluations or more");
    }

    @Test
    void theSameFileTwice() {
        refused(
                WRONG_USE,
                List.of(folder("a"), folder("a").resolve("evaluation.json")),
                "named twice");
    }

    @Test
    void theSameMeasurementUnderAnotherName() throws Exception {
        Path copy = edited("copy.json", root -> root.put("paper", "Paper c"));
        refused(INPUT, List.of(folder("b"), copy), "there twice", "b.txt");
    }

    @Test
    void notAnEvaluation() throws Exception {
        Path text = Files.writeString(dir.resolve("text.json"), "hello");
        refused(INPUT, List.of(folder("a"), text), "text.json", "is not JSON");
        Path chart = folder("chart.json");
        refused(INPUT, List.of(folder("a"), chart), "is not an evaluation file");
        refused(INPUT, List.of(folder("a"), dir.resolve("none.json")), "there is no such file");
        Path empty = Files.createDirectory(dir.resolve("empty"));
        refused(INPUT, List.of(folder("a"), empty), "holds no evaluation.json");
    }

    @Test
    void anEvaluationOfANewerVersion() throws Exception {
        Path newer = edited("newer.json", root -> root.put("schema", "printassay/evaluation/2"));
        refused(INPUT, List.of(folder("a"), newer), "another version", "Update printassay");
    }

    @Test
    void mixedTrust() throws Exception {
        Path scanned =
                edited(
                        "scan.json",
                        root -> {
                            ((ObjectNode) root.path("source")).put("trust", "profiled-scan");
                            ((ObjectNode) root.path("source")).put("kind", "scan");
                        });
        refused(
                INPUT,
                List.of(folder("a"), scanned),
                "these prints cannot be compared",
                "instrument for Paper a; profiled-scan for Paper b");
    }

    @Test
    void printsOfOnePaperAlone() throws Exception {
        Path same = edited("same.json", root -> root.put("paper", "paper A"));
        refused(WRONG_USE, List.of(folder("a"), same), "no two sides to compare");
    }

    @Test
    void aFolderOfEvaluationsStandsForAllOfThem() {
        CommandLineRun run = run(List.of(shared));
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("these two prints"), run.out());
    }

    @Test
    void unknownWords() {
        refused(
                WRONG_USE,
                List.of(folder("a"), folder("b"), "--question", "fun"),
                "dark-pictures, black-and-white, skin, colour");
        refused(
                WRONG_USE,
                List.of(folder("a"), folder("b"), "--against", "Paper z"),
                "Paper a; Paper b");
    }

    @Test
    void aSpreadThatSawNoRepeats() throws Exception {
        assertEquals(0, run(List.of(folder("a"), folder("b"))).exitCode());
        Path earlier = dir.resolve("earlier.json");
        Files.move(dir.resolve("out/comparison.json"), earlier);
        try (var files = Files.list(dir.resolve("out"))) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(dir.resolve("out"));
        refused(
                INPUT,
                List.of(folder("a"), folder("b"), "--spread", earlier),
                "holds no spread between prints");
    }

    @Test
    void aComparisonOfOtherPrintsIsNotWrittenOver() throws Exception {
        assertEquals(0, run(List.of(folder("a"), folder("b"))).exitCode());
        Path other =
                edited(
                        "other.json",
                        root -> {
                            root.put("paper", "Paper o");
                            ((ObjectNode) root.path("source").path("files").get(0))
                                    .put("sha256", "0".repeat(64));
                        });
        CommandLineRun again = run(List.of(folder("b"), other));
        assertEquals(OUTPUT, again.exitCode(), again.err());
        assertTrue(again.err().contains("holds a comparison of other prints"), again.err());
        assertEquals(0, run(List.of(folder("b"), other, "--force")).exitCode());
    }

    @Test
    void hostileNamesHarmNeitherTerminalNorPage() throws Exception {
        String name = "=cmd()|'<script>alert(1)</script>\u001b[31m\u202e";
        Path hostile = edited("hostile.json", root -> root.put("paper", name));
        CommandLineRun run = run(List.of(folder("a"), hostile));
        assertEquals(0, run.exitCode(), run.err());
        assertFalse(run.out().contains("\u001b"), "an escape on the terminal");
        assertFalse(run.out().contains("\u202e"), "text turned around on the terminal");
        String page = Files.readString(dir.resolve("out/comparison.html"));
        assertFalse(page.contains("<script"), "markup from a name");
        String table = Files.readString(dir.resolve("out/comparison.csv"));
        assertFalse(table.contains(",=cmd") || table.contains(",\"=cmd"), "a formula");
        Path before = dir.resolve("before.json");
        Files.copy(dir.resolve("out/comparison.json"), before);
        CommandLineRun json = run(List.of(folder("a"), hostile, "--json"));
        assertEquals(Files.readString(before).strip(), json.out().strip());
    }
}
