package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an earlier run left does not pass for a part of new results. */
class OlderResultsTest {
    private static final int OUTPUT = 5;

    @TempDir Path dir;

    private static CommandLineRun done(Object... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertEquals(0, run.exitCode(), run.err());
        return run;
    }

    private static void refused(String said, Object... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertEquals(OUTPUT, run.exitCode(), run.err());
        assertTrue(run.err().contains(said), run.err());
    }

    private static Set<String> inside(Path folder) throws Exception {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(file -> !file.equals(folder))
                    .map(file -> folder.relativize(file).toString())
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    /** Lightness of a grey scale alone, as a device without colour tells it; simulated. */
    private Path greys() throws Exception {
        StringBuilder rows = new StringBuilder("RGB_R,RGB_G,RGB_B,LAB_L,LAB_A,LAB_B\n");
        for (int code = 0; code < 256; code += 5) {
            rows.append("%1$d,%1$d,%1$d,%2$d,0,0\n".formatted(code, 16 + 79 * code / 255));
        }
        return Files.writeString(dir.resolve("greys.csv"), rows);
    }

    @Test
    void resultsWithoutColoursKeepNoColoursOfAnEarlierRun() throws Exception {
        Path out = MeasuredPrint.evaluation(dir).resolveSibling("");
        assertTrue(Files.exists(out.resolve("readings.cxf")));
        Path own = Files.writeString(out.resolve("notes.txt"), "mine");
        done("evaluate", greys(), "--out", out, "--force");
        assertFalse(Files.exists(out.resolve("readings.cxf")), "of the earlier run");
        assertEquals("mine", Files.readString(own));
    }

    /** Somebody's own file is no earlier result, whatever its name is. */
    @Test
    void aFileInAFolderWithoutResultsStays() throws Exception {
        Path out = Files.createDirectory(dir.resolve("mine"));
        Path own = Files.writeString(out.resolve("readings.cxf"), "mine");
        done("evaluate", greys(), "--out", out);
        assertEquals("mine", Files.readString(own));
    }

    @Test
    void aPrintFromTheLogbookIsWrittenWithItsColours() throws Exception {
        Path evaluation = MeasuredPrint.evaluation(dir);
        Path logbook = dir.resolve("lab.sqlite");
        done("log", "add", evaluation, "--logbook", logbook);
        Path colours = evaluation.resolveSibling("readings.cxf");
        List<String> before = Files.readAllLines(colours);
        done("log", "show", 1, "--out", evaluation.resolveSibling(""), "--logbook", logbook);
        List<String> after = Files.readAllLines(colours);
        // Read at another moment, as far as known.
        assertEquals(undated(before), undated(after));
    }

    private static List<String> undated(List<String> lines) {
        return lines.stream().filter(line -> !line.contains("CreationDate")).toList();
    }

    @Test
    void aPrintIsTheSameHoweverItsPaperIsTyped() throws Exception {
        MeasuredPrint.evaluation(dir, "Paper A", 1, 0);
        MeasuredPrint.evaluation(dir, "paper  a", 1, 0);
    }

    /** Sheets of another chart would be printed with the new one. */
    @Test
    void aChartOfFewerSheetsKeepsNoSheetOfAnother() throws Exception {
        Path out = dir.resolve("chart");
        done(
                "chart",
                "--page",
                "8x10in",
                "--margin-mm",
                12,
                "--dpi",
                72,
                "--preview",
                "--out",
                out);
        assertTrue(Files.exists(out.resolve("chart-2.tif")), "needs a chart of several sheets");
        Path own = Files.writeString(out.resolve("chart-99.tif"), "somebody's scan");
        refused("--force", "chart", "--recipe", "short", "--page", "4x6in", "--out", out);
        done("chart", "--recipe", "short", "--page", "4x6in", "--dpi", 72, "--out", out, "--force");
        assertEquals(
                Set.of(
                        "chart-1.tif",
                        "chart-99.tif",
                        "chart.json",
                        "chart.pdf",
                        "chart.txt",
                        "how-to-print-and-scan.html",
                        "reading-order.txt"),
                inside(out));
        assertEquals("somebody's scan", Files.readString(own));
    }

    /** Prints of the same chart stay, for they may be on their way to the printer. */
    @Test
    void fewerPrintsOfAChartTakeNoneAway() throws Exception {
        Path out = dir.resolve("chart");
        prints(out, 3);
        Set<String> before = inside(out);
        prints(out, 2);
        assertEquals(before, inside(out));
        Path scan = Files.writeString(out.resolve("print-3/scan.tif"), "mine");
        done("chart", "--page", "A4", "--dpi", 72, "--out", out, "--force");
        assertEquals(Set.of("print-3", "print-3/scan.tif"), withoutChart(out));
        assertEquals("mine", Files.readString(scan));
    }

    /** Another program's colours are no earlier result. */
    @Test
    void coloursOfAnotherProgramStay() throws Exception {
        Path out = MeasuredPrint.evaluation(dir).resolveSibling("");
        String colours = "<Creator>an instrument</Creator>";
        Path own = Files.writeString(out.resolve("readings.cxf"), colours);
        done("evaluate", greys(), "--out", out, "--force");
        assertEquals(colours, Files.readString(own));
    }

    private static void prints(Path out, int prints) {
        done(wanted(out, prints));
    }

    private static Object[] wanted(Path out, int prints) {
        return new Object[] {
            "chart",
            "--recipe",
            "short",
            "--page",
            "4x6in",
            "--dpi",
            72,
            "--prints",
            prints,
            "--out",
            out
        };
    }

    private static Set<String> withoutChart(Path out) throws Exception {
        Set<String> inside = inside(out);
        inside.removeIf(name -> name.matches("(chart|reading-order|how-to-)[^/]*"));
        return inside;
    }

    /** Whether the first print is of this chart says nothing of the others. */
    @Test
    void anotherChartAmongThePrintsIsNotRemovedUnasked() throws Exception {
        Path out = dir.resolve("chart");
        prints(out, 1);
        done("chart", "--page", "A4", "--dpi", 72, "--out", out.resolve("print-2"));
        Set<String> before = inside(out);
        refused("--force", wanted(out, 1));
        assertEquals(before, inside(out));
    }
}
