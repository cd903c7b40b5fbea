package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What check and compare take from the logbook. The measurements are simulated. */
class CheckLogbookTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int WRONG_USE = 2;
    private static final int INPUT = 3;
    private static final int KEPT = 9;

    @TempDir static Path shared;
    @TempDir Path dir;

    /** Nine prints of paper A and three of paper B; the first four are the baseline of A. */
    private static Path logbook;

    private static Path after;
    private static Path lighter;
    private static Path other;

    @BeforeAll
    static void keepPrints() throws Exception {
        logbook = shared.resolve("lab.sqlite");
        for (int i = 0; i < KEPT; i++) {
            add(MeasuredPrint.evaluation(shared.resolve("a" + i), "Paper A", i, 0));
        }
        for (int i = 0; i < 3; i++) {
            add(MeasuredPrint.evaluation(shared.resolve("b" + i), "Paper B", 20 + i, 0));
        }
        assertEquals(
                0,
                CommandLineRun.of("log", "baseline", 1, 2, 3, 4, "--logbook", logbook).exitCode());
        after = MeasuredPrint.evaluation(shared.resolve("after"), "Paper A", 30, 0);
        lighter = MeasuredPrint.evaluation(shared.resolve("lighter"), "Paper A", 31, 4);
        other = MeasuredPrint.evaluation(shared.resolve("other"), "Paper C", 32, 0);
    }

    private static void add(Path evaluation) {
        CommandLineRun run = CommandLineRun.of("log", "add", evaluation, "--logbook", logbook);
        assertEquals(0, run.exitCode(), run.err());
    }

    private CommandLineRun run(String command, Object... words) {
        List<Object> all = new ArrayList<>(List.of(command));
        all.addAll(Arrays.asList(words));
        all.addAll(List.of("--out", dir.resolve("out")));
        return CommandLineRun.of(all.toArray());
    }

    private void refused(int code, List<String> said, String command, Object... words) {
        CommandLineRun run = run(command, words);
        assertEquals(code, run.exitCode(), run.err());
        assertEquals(1, run.err().strip().lines().count(), run.err());
        assertEquals("", run.out());
        for (String word : said) {
            assertTrue(run.err().contains(word), () -> "\"" + word + "\" in: " + run.err());
        }
        assertFalse(Files.exists(dir.resolve("out")), "nothing half-written");
    }

    @Test
    void aPrintIsHeldAgainstTheBaselineOfItsPrinterPaperAndRoute() throws Exception {
        CommandLineRun run = run("check", after, "--logbook", logbook);
        assertEquals(0, run.exitCode(), run.out() + run.err());
        String held = "the mean of 4 prints in the logbook lab.sqlite (no. 1, 2, 3, 4)";
        assertTrue(run.out().contains("Held against " + held), run.out());
        assertTrue(run.out().contains("is taken from the tolerances (workshop)."), run.out());
        JsonNode check = JSON.readTree(dir.resolve("out/check.json").toFile());
        assertEquals("[1,2,3,4]", check.at("/baseline/entries").toString());
        assertEquals("the logbook lab.sqlite", check.at("/baseline/logbook").asText());
        assertEquals(4, check.at("/baseline/prints").size());
        assertTrue(check.at("/spread/from").isNull());
        assertTrue(Files.readString(dir.resolve("out/check.html")).contains(held));
        // The mean of the four, by what their own files say.
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            Path file = shared.resolve("a" + i + "/evaluation/evaluation.json");
            sum += JSON.readTree(file.toFile()).at("/white/lab/l").asDouble();
        }
        assertEquals(sum / 4, change(check, "paperL").path("before").asDouble(), 1e-3);

        CommandLineRun changed = run("check", lighter, "--logbook", logbook, "--force");
        assertEquals(1, changed.exitCode(), changed.out() + changed.err());
    }

    private static JsonNode change(JsonNode check, String quantity) {
        for (JsonNode change : check.path("changes")) {
            if (change.path("quantity").asText().equals(quantity)) {
                return change;
            }
        }
        throw new AssertionError("no change of " + quantity);
    }

    @Test
    void howPrintsLieApartComesFromTheLogbookAndIsSaidEverywhere() throws Exception {
        CommandLineRun run = run("check", after, "--logbook", logbook, "--logbook-spread");
        String words = "the logbook lab.sqlite (9 prints of Printer 1 \u00b7 Paper A \u00b7 usual)";
        assertTrue(run.out().contains(words), run.out() + run.err());
        JsonNode check = JSON.readTree(dir.resolve("out/check.json").toFile());
        assertEquals("the logbook lab.sqlite", check.at("/spread/from").asText());
        assertEquals(9, check.at("/spread/told/0/mostPrints").asInt());
        JsonNode white = change(check, "paperL");
        assertEquals("prints", white.path("spreadFrom").asText());
        assertEquals("tolerances", change(check, "shadowShift").path("spreadFrom").asText());
        // The deviation of the same prints, by its definition.
        CommandLineRun trend =
                CommandLineRun.of(
                        "log",
                        "trend",
                        "white.lab.l",
                        "--paper",
                        "Paper A",
                        "--json",
                        "--logbook",
                        logbook);
        List<Double> values = new ArrayList<>();
        JSON.readTree(trend.out())
                .at("/figures/0/points")
                .forEach(point -> values.add(point.path("value").asDouble()));
        double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
        double squares = values.stream().mapToDouble(v -> Math.pow(v - mean, 2)).sum();
        assertEquals(Math.sqrt(squares / 8), white.path("spread").asDouble(), 1e-4);
        assertTrue(Files.readString(dir.resolve("out/check.html")).contains(words));
        try (PDDocument pdf = Loader.loadPDF(dir.resolve("out/check.pdf").toFile())) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            assertTrue(text.contains(words), text);
        }
    }

    @Test
    void aNamedBaselineMayUseTheSpreadOfTheLogbookToo() throws Exception {
        Path before = shared.resolve("a0/evaluation");
        CommandLineRun run =
                run("check", after, "--baseline", before, "--logbook", logbook, "--logbook-spread");
        assertTrue(run.out().contains("Held against measured.txt"), run.out() + run.err());
        assertTrue(run.out().contains("9 prints of Printer 1"), run.out());
    }

    @Test
    void withASpreadFromTheLogbookOnePrintEachSpeaksOfPapers() throws Exception {
        Path a = shared.resolve("a0/evaluation");
        CommandLineRun alone = run("compare", a, other);
        assertTrue(alone.out().contains("these two prints"), alone.out() + alone.err());
        CommandLineRun known =
                run("compare", a, other, "--logbook", logbook, "--logbook-spread", "--force");
        assertEquals(0, known.exitCode(), known.err());
        assertTrue(known.out().contains("these two papers"), known.out());
        // The print itself is one of nine there, and tells nothing of the others' spread.
        String words = "the logbook lab.sqlite (8 prints of Printer 1 \u00b7 Paper A \u00b7 usual)";
        assertTrue(known.out().contains(words), known.out());
        JsonNode comparison = JSON.readTree(dir.resolve("out/comparison.json").toFile());
        assertEquals("papers", comparison.path("subject").asText());
        assertEquals(words, comparison.path("spreadFrom").asText());
        assertEquals("known-spread", comparison.at("/pairs/0/differences/0/basis").asText(), words);
        assertTrue(Files.readString(dir.resolve("out/comparison.html")).contains(words));
    }

    @Test
    void aPrintOfTheBaselineIsHeldAgainstTheOthers() throws Exception {
        CommandLineRun run = run("check", shared.resolve("a1/evaluation"), "--logbook", logbook);
        String words = "the mean of 3 prints in the logbook lab.sqlite (no. 1, 3, 4)";
        assertTrue(run.out().contains(words), run.out() + run.err());
        assertEquals(0, run.exitCode(), run.out());
    }

    @Test
    void whatTheLogbookCannotTellIsOneLine() throws Exception {
        Path none = dir.resolve("none.sqlite");
        refused(INPUT, List.of("no logbook here yet"), "check", after, "--logbook", none);
        refused(
                INPUT,
                List.of("no logbook here yet"),
                "compare",
                after,
                other,
                "--logbook-spread",
                "--logbook",
                none);
        refused(
                INPUT,
                List.of("no baseline for measured.txt", "Paper C", "There are: Printer 1"),
                "check",
                other,
                "--logbook",
                logbook);
        refused(
                INPUT,
                List.of("too few prints", "0 of Printer 1", "Paper C", "8 are needed"),
                "check",
                other,
                "--baseline",
                shared.resolve("b0/evaluation"),
                "--logbook",
                logbook,
                "--logbook-spread");
        refused(
                INPUT,
                List.of("too few prints", "2 of Printer 1 \u00b7 Paper B"),
                "compare",
                other,
                shared.resolve("b0/evaluation"),
                "--logbook",
                logbook,
                "--logbook-spread");
        refused(
                WRONG_USE,
                List.of("nothing is taken from --logbook"),
                "compare",
                after,
                other,
                "--logbook",
                logbook);
        refused(
                WRONG_USE,
                List.of("--spread or from --logbook-spread"),
                "compare",
                after,
                other,
                "--logbook",
                logbook,
                "--logbook-spread",
                "--spread",
                after);
        refused(
                WRONG_USE,
                List.of("PGPASSFILE"),
                "check",
                after,
                "--logbook",
                "jdbc:postgresql://lab/prints?password=hunter2");
    }

    @Test
    void withoutABaselineTheLogbookSaysHowToNameOne() throws Exception {
        Path bare = dir.resolve("bare.sqlite");
        assertEquals(
                0,
                CommandLineRun.of(
                                "log",
                                "add",
                                shared.resolve("b0/evaluation/evaluation.json"),
                                "--logbook",
                                bare)
                        .exitCode());
        refused(INPUT, List.of("log baseline NUMBER"), "check", after, "--logbook", bare);
    }

    /** What was not said of a print fits anything, so long as it fits one series alone. */
    @Test
    void anUnnamedPrintFitsTheOnlyBaseline() throws Exception {
        Path bare =
                Files.writeString(
                        dir.resolve("bare.json"),
                        Files.readString(after)
                                .replace("\"paper\": \"Paper A\"", "\"paper\": null")
                                .replace("\"printer\": \"Printer 1\"", "\"printer\": null"));
        Path copy = dir.resolve("two.sqlite");
        Files.copy(logbook, copy);
        CommandLineRun one = run("check", bare, "--logbook", copy);
        assertTrue(one.out().contains("the mean of 4 prints"), one.out() + one.err());
        assertEquals(0, CommandLineRun.of("log", "baseline", 10, 11, "--logbook", copy).exitCode());
        CommandLineRun two = run("check", bare, "--logbook", copy, "--force");
        assertEquals(WRONG_USE, two.exitCode(), two.out() + two.err());
        assertTrue(two.err().contains("fits more than one baseline"), two.err());
    }
}
