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
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.chart.ChartFile;
import org.printassay.colour.Lab;
import org.printassay.demo.DemoScenario;
import org.printassay.demo.PrintRoom;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.print.Print;
import org.printassay.demo.print.Printing;

/**
 * Papers compared from their scans and measurements, all simulated, with known truth: the paper
 * models' own colours and what follows from them by the definitions alone ({@link PaperTruth}).
 */
class CompareTest {
    @TempDir static Path shared;
    @TempDir Path dir;

    private static final Map<String, PaperModel> SCANNED = new TreeMap<>();

    @BeforeAll
    static void printAndScanOnce() throws Exception {
        for (DemoScenario scenario : DemoScenario.threePapers()) {
            String name = scenario.key();
            SCANNED.put(name, scenario.paper());
            scan(scenario, scenario.seed(), name, name);
        }
        DemoScenario pearl = DemoScenario.coolPearl();
        scan(pearl, 811, "pearl-again", "paper-b");
        scan(pearl, 812, "pearl-other-name", "paper-x");
    }

    private static void scan(DemoScenario scenario, long seed, String folder, String paper)
            throws Exception {
        Print print = SimulatedPrint.print(scenario.paper(), scenario.printing(), seed);
        Path scan = shared.resolve(folder + ".tif");
        PrintRoom.scan(print, scenario.flatbed().withSamplesPerInch(200), seed, scan);
        evaluate(scan, folder, paper);
        Files.delete(scan);
    }

    private static void evaluate(Path file, String folder, String paper, Object... more) {
        List<Object> words = new ArrayList<>(List.of("evaluate", file, "--paper", paper));
        words.addAll(List.of("--dried-hours", 24, "--out", shared.resolve(folder)));
        words.addAll(List.of(more));
        CommandLineRun run = CommandLineRun.of(words.toArray());
        assertEquals(0, run.exitCode(), run.err());
    }

    private CommandLineRun compare(Object... words) {
        List<Object> all = new ArrayList<>(List.of("compare", "--out", dir.resolve("out")));
        for (Object word : words) {
            boolean folder = word instanceof String s && Files.exists(shared.resolve(s));
            all.add(folder ? shared.resolve(word.toString()) : word);
        }
        CommandLineRun run = CommandLineRun.of(all.toArray());
        assertEquals(0, run.exitCode(), run.err());
        assertEquals("", run.err());
        return run;
    }

    private JsonNode comparison() throws Exception {
        return new ObjectMapper().readTree(dir.resolve("out/comparison.json").toFile());
    }

    private static JsonNode difference(JsonNode pair, String figure) {
        for (JsonNode d : pair.path("differences")) {
            if (d.path("figure").asText().equals(figure)) {
                return d;
            }
        }
        throw new AssertionError("no difference in " + figure);
    }

    /** Counts true differences that lie in their intervals; says which do not. */
    private static int outside(JsonNode root, Map<String, PaperModel> papers, List<String> misses) {
        int checked = 0;
        for (JsonNode pair : root.path("pairs")) {
            Map<String, Double> one = truth(root, papers, pair.path("one").asInt());
            Map<String, Double> other = truth(root, papers, pair.path("other").asInt());
            for (String figure : one.keySet()) {
                JsonNode d = difference(pair, figure);
                double truth = number(other, figure) - number(one, figure);
                checked++;
                if (truth < d.path("low").asDouble() || truth > d.path("high").asDouble()) {
                    misses.add(pair.path("one") + "-" + pair.path("other") + " " + truth + " " + d);
                }
            }
        }
        return checked;
    }

    private static double number(Map<String, Double> truth, String figure) {
        return Objects.requireNonNull(truth.get(figure));
    }

    private static Map<String, Double> truth(
            JsonNode root, Map<String, PaperModel> papers, int side) {
        PaperModel paper = papers.get(root.path("sides").get(side - 1).path("name").asText());
        return PaperTruth.of(Objects.requireNonNull(paper));
    }

    @Test
    void truthLiesInTheStatedIntervalsOfScans() throws Exception {
        CommandLineRun run = compare("paper-a", "paper-b", "paper-c");
        JsonNode root = comparison();
        List<String> misses = new ArrayList<>();
        int checked = outside(root, SCANNED, misses);
        assertTrue(checked > 40, "compared " + checked);
        assertTrue(misses.size() <= checked / 20, () -> String.join("\n", misses));
        assertEquals("prints", root.path("subject").asText());
        assertFalse(run.out().contains("these papers"), run.out());
        assertTrue(run.out().lines().count() <= 8, run.out());
        assertTrue(run.out().contains("comparison.html"), run.out());
    }

    @Test
    void thePapersThatAreBetterForDarkPicturesComeFirst() throws Exception {
        CommandLineRun run =
                compare("paper-a", "paper-b", "paper-c", "--question", "dark-pictures");
        assertTrue(
                run.out().startsWith("- For dark pictures: paper-b and paper-c alike, then paper-a")
                        || run.out()
                                .startsWith(
                                        "- For dark pictures: paper-b, then paper-c, then paper-a"),
                run.out());
        String page = Files.readString(dir.resolve("out/comparison.html"));
        assertTrue(page.contains("Three prints side by side"));
    }

    /** The same paper twice under two names. */
    @Test
    void equalPapersHaveNoMeasurableDifference() throws Exception {
        CommandLineRun run = compare("paper-b", "pearl-other-name");
        assertTrue(run.out().contains("No measurable difference between these prints"), run.out());
        for (JsonNode d : comparison().path("pairs").get(0).path("differences")) {
            assertFalse(d.path("verdict").asText().equals("differs"), d::toString);
        }
        for (JsonNode ranking : comparison().path("rankings")) {
            for (JsonNode place : ranking.path("places")) {
                assertEquals(1, place.path("place").asInt(), ranking::toString);
            }
        }
    }

    @Test
    void repeatsMakeItAComparisonOfPapersAndServeLater() throws Exception {
        compare("paper-a", "paper-b", "pearl-again", "paper-c");
        JsonNode root = comparison();
        assertEquals("papers", root.path("subject").asText());
        assertEquals(2, root.path("sides").get(1).path("prints").size());
        JsonNode black = difference(root.path("pairs").get(0), "black.lab.l");
        assertEquals("repeats", black.path("basis").asText());
        Path earlier = dir.resolve("earlier.json");
        Files.move(dir.resolve("out/comparison.json"), earlier);
        compare("paper-a", "paper-c", "--spread", earlier);
        JsonNode later = difference(comparison().path("pairs").get(0), "black.lab.l");
        assertEquals("known-spread", later.path("basis").asText());
    }

    /** Six papers, two prints each, measured: their black, white and colours in known steps. */
    @Test
    void sixMeasuredPapersAreComparedAsPapers() throws Exception {
        Map<String, PaperModel> papers = new TreeMap<>();
        Path chart = dir.resolve("chart.json");
        Files.writeString(chart, ChartFile.write(SimulatedPrint.chart()));
        List<Object> inputs = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            String name = "Paper " + (i + 1);
            Lab white = new Lab(97 - 0.4 * i, 0.2, -3 + 1.2 * i);
            PaperModel paper =
                    PaperModel.faultless(name, white, new Lab(4 + 2.5 * i, 0, 0.2))
                            .withSurface(SimulatedPrint.GOOD_SURFACE);
            papers.put(name, paper);
            for (int k = 0; k < 2; k++) {
                String folder = "measured-" + i + "-" + k;
                Path file = dir.resolve(folder + ".txt");
                Print print = SimulatedPrint.print(paper, Printing.EXACT, 900 + 10L * i + k);
                PrintRoom.measure(print, 900 + 10L * i + k, file);
                evaluate(file, folder, name, "--chart", chart);
                inputs.add(folder);
            }
        }
        inputs.addAll(List.of("--against", "Paper 3"));
        compare(inputs.toArray());
        JsonNode root = comparison();
        assertEquals(3, root.path("against").asInt());
        assertEquals("papers", root.path("subject").asText());
        List<String> misses = new ArrayList<>();
        int checked = outside(root, papers, misses);
        assertTrue(checked > 150, "compared " + checked);
        // All pairs share six papers' own departures: misses come together.
        assertTrue(misses.size() <= checked / 10, () -> String.join("\n", misses));
        List<Integer> order = new ArrayList<>();
        root.path("rankings")
                .get(0)
                .path("places")
                .forEach(place -> order.add(place.path("side").asInt()));
        assertEquals(List.of(1, 2, 3, 4, 5, 6), order, "black rises from paper to paper");
        String page = Files.readString(dir.resolve("out/comparison.html"));
        for (String name : papers.keySet()) {
            assertTrue(page.contains(name.charAt(6) + "  " + name), name + " has a plot");
        }
    }
}
