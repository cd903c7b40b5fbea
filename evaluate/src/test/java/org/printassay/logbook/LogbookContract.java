package org.printassay.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.check.Baseline;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PrintSpread;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;
import org.printassay.reading.MadeReadings;
import org.printassay.reading.Reading;
import org.printassay.reading.Trust;
import org.printassay.report.EvaluationJson;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/** What holds for a logbook in any database. Evaluations are made by hand. */
abstract class LogbookContract {
    private static final Instant DAY = Instant.parse("2026-03-01T09:30:00Z");

    @TempDir Path dir;

    /** A place that holds nothing yet. */
    abstract LogbookPlace freshPlace() throws Exception;

    private static Instant day(int days) {
        return DAY.plusSeconds(86_400L * days);
    }

    private static List<Long> ids(List<Entry> entries) {
        return entries.stream().map(Entry::id).toList();
    }

    private static void fill(Logbook logbook, int prints) throws Problem {
        for (int i = 1; i <= prints; i++) {
            logbook.add(Samples.print(i, 95 + 0.1 * (i % 3)), day(i), null, false);
        }
    }

    @Test
    void whatIsAddedIsGivenBack() throws Exception {
        LogbookPlace place = freshPlace();
        Evaluation print = Samples.print(3, 95.2);
        try (Logbook logbook = Logbook.open(place)) {
            Added added = logbook.add(print, day(0), "after a nozzle clean", false);
            assertEquals(Added.Outcome.ADDED, added.outcome());
        }
        try (Logbook logbook = Logbook.open(place, Opening.READ)) {
            Entry entry = logbook.entries(Selection.ALL).get(0);
            assertEquals(new Series("Printer 1", "Paper A", "as usual"), entry.series());
            assertEquals(day(0), entry.readAt());
            assertEquals("PA-2-A4", entry.chart());
            assertEquals(3, entry.print());
            assertEquals("after a nozzle clean", entry.note());
            assertEquals("instrument, srgb", entry.manner());
            assertFalse(entry.baseline());
            assertEquals(EvaluationJson.write(print), logbook.text(entry.id()));
            assertEquals(
                    EvaluationJson.write(print),
                    EvaluationJson.write(logbook.evaluation(entry.id())));
        }
    }

    @Test
    void theSamePrintIsNeverThereTwice() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            Added first = logbook.add(Samples.print(1, 95), day(0), null, false);
            Added again = logbook.add(Samples.print(1, 95), day(5), "again", false);
            assertEquals(Added.Outcome.ALREADY_THERE, again.outcome());
            assertEquals(first.entry(), again.entry());
            Added other = logbook.add(Samples.print(1, 94), day(5), null, false);
            assertEquals(Added.Outcome.OTHER_RESULTS, other.outcome());
            assertEquals(1, logbook.entries(Selection.ALL).size());
            assertEquals(
                    EvaluationJson.write(Samples.print(1, 95)), logbook.text(first.entry().id()));
        }
    }

    @Test
    void severalAreAddedTogetherOrNoneOfThem() throws Exception {
        Addition one = new Addition(Samples.print(1, 95), day(0), null);
        Addition two = new Addition(Samples.print(2, 95), day(1), "second");
        Addition never = new Addition(Samples.print(3, 95), Instant.MAX, null);
        try (Logbook logbook = Logbook.open(freshPlace())) {
            assertThrows(
                    ArithmeticException.class, () -> logbook.addAll(List.of(one, never), false));
            assertEquals(List.of(), logbook.entries(Selection.ALL));
            List<Added> added = logbook.addAll(List.of(one, two, one), false);
            assertEquals(
                    List.of(Added.Outcome.ADDED, Added.Outcome.ADDED, Added.Outcome.ALREADY_THERE),
                    added.stream().map(Added::outcome).toList());
            assertEquals("second", added.get(1).entry().note());
            assertEquals(2, logbook.entries(Selection.ALL).size());
        }
    }

    @Test
    void otherResultsReplaceWhenAskedAndKeepTheBaseline() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            Entry first = logbook.add(Samples.print(1, 95), day(0), null, false).entry();
            logbook.setBaseline(List.of(first.id()));
            Added added = logbook.add(Samples.print(1, 94), day(0), null, true);
            assertEquals(Added.Outcome.REPLACED, added.outcome());
            assertTrue(added.entry().baseline());
            assertNotEquals(first.id(), added.entry().id());
            assertEquals(List.of(added.entry()), logbook.entries(Selection.ALL));
        }
    }

    @Test
    void selectionsFollowNamesAndTime() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 4);
            logbook.add(
                    Samples.print(9, 93, "Printer 2", null, null, Trust.PLAIN_SCAN),
                    day(0),
                    null,
                    false);
            assertEquals(5, logbook.entries(Selection.ALL).size());
            assertEquals(9, logbook.entries(Selection.ALL).get(0).print(), "oldest first");
            Selection unsaid = new Selection(null, "", null, null, null, 0);
            assertEquals(1, logbook.entries(unsaid).size());
            // Composed otherwise and with other spaces, yet the same name.
            Selection name = new Selection(" Printer  1 ", null, null, null, null, 0);
            assertEquals(4, logbook.entries(name).size());
            Selection late = new Selection(null, null, null, day(3), null, 0);
            assertEquals(2, logbook.entries(late).size());
            Selection newest = new Selection(null, null, null, null, null, 1);
            assertEquals(4, logbook.entries(newest).get(0).print());
            Selection plain = new Selection(null, null, null, null, "plain-scan", 0);
            assertEquals(1, logbook.entries(plain).size());
            assertEquals(2, logbook.series(Selection.ALL).size());
        }
    }

    @Test
    void namesOfAnyKindAreKept() throws Exception {
        String odd =
                "a'; DROP TABLE entry; --\u0000\u001b[31m\ud800 \u8a66\u9a13 e\u0301 \ud83d\ude00";
        try (Logbook logbook = Logbook.open(freshPlace())) {
            Evaluation print = Samples.print(1, 95, odd, odd, odd, Trust.INSTRUMENT);
            Entry entry = logbook.add(print, day(0), odd, false).entry();
            assertEquals(
                    "a'; DROP TABLE entry; -- [31m \u8a66\u9a13 \u00e9 \ud83d\ude00",
                    entry.series().paper());
            Selection same = new Selection(odd, odd, odd, null, null, 0);
            assertEquals(1, logbook.entries(same).size());
        }
    }

    @Test
    void removedEntriesAreGoneAllOrNone() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 3);
            List<Long> ids = ids(logbook.entries(Selection.ALL));
            Problem missing =
                    assertThrows(Problem.class, () -> logbook.remove(List.of(ids.get(0), 4711L)));
            assertTrue(missing.getMessage().contains("no entry 4711"), missing.getMessage());
            assertEquals(3, logbook.entries(Selection.ALL).size());
            logbook.remove(ids.subList(1, 3));
            assertEquals(ids.subList(0, 1), ids(logbook.entries(Selection.ALL)));
            Added anew = logbook.add(Samples.print(3, 95), day(9), null, false);
            assertEquals(Added.Outcome.ADDED, anew.outcome());
            assertFalse(ids.contains(anew.entry().id()), "numbers are never used again");
        }
    }

    @Test
    void baselinesAreOfOneSeriesAndReplaceEachOther() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 4);
            Entry other =
                    logbook.add(
                                    Samples.print(9, 93, "Printer 2", "B", "r", Trust.INSTRUMENT),
                                    day(0),
                                    null,
                                    false)
                            .entry();
            List<Long> ids =
                    ids(logbook.entries(new Selection("Printer 1", null, null, null, null, 0)));
            logbook.setBaseline(ids.subList(0, 2));
            logbook.setBaseline(List.of(other.id()));
            logbook.setBaseline(ids.subList(2, 3));
            assertEquals(
                    List.of(other.id(), ids.get(2)),
                    ids(logbook.entries(Selection.ALL).stream().filter(Entry::baseline).toList()));
            Problem mixed =
                    assertThrows(
                            Problem.class,
                            () -> logbook.setBaseline(List.of(ids.get(0), other.id())));
            assertEquals(Problem.Kind.USAGE, mixed.kind());
            logbook.clearBaseline(List.of(other.id()));
            assertFalse(logbook.entry(other.id()).baseline());
            assertTrue(logbook.entry(ids.get(2)).baseline());
        }
    }

    @Test
    void trendsAreOfOneSeriesReadInOneManner() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            logbook.add(
                    Samples.print(100, 60, "Printer 1", "Paper A", "as usual", Trust.PLAIN_SCAN),
                    day(0),
                    null,
                    false);
            fill(logbook, 30);
            logbook.add(Samples.print(31, 97.5), day(31), null, false);
            Selection all = Selection.of(new Series("Printer 1", "Paper A", "as usual"));
            SeriesTrend trend = SeriesTrend.of(logbook, all, SeriesTrend.USUAL);
            assertEquals(31, trend.entries().size());
            assertEquals(1, trend.notes().size(), trend.notes().toString());
            assertTrue(trend.notes().get(0).startsWith("1 print was read in another way"));
            Trend white = trend.trends().get(0);
            assertEquals(Figure.WHITE_L.key(), white.quantity().key());
            assertEquals(95.1, Objects.requireNonNull(white.limits()).centre(), 0.02);
            assertEquals(Trend.State.JUMPED, white.state());
            Shift change = white.changes().get(0);
            assertEquals(30, change.first());
            assertEquals(2.4, change.extent(), 0.02);
            assertTrue(trend.spread("here").spread().of(Figure.WHITE_L).orElseThrow() > 0.05);

            logbook.add(
                    Samples.print(200, 93, "Printer 2", "B", "r", Trust.INSTRUMENT),
                    day(0),
                    null,
                    false);
            Problem several =
                    assertThrows(
                            Problem.class,
                            () -> SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL));
            assertEquals(Problem.Kind.USAGE, several.kind());
            assertTrue(several.getMessage().contains("Printer 2"), several.getMessage());
        }
    }

    @Test
    void namesAreTheSameHoweverTheyAreWritten() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            logbook.add(Samples.print(1, 95), day(0), null, false);
            Added other =
                    logbook.add(
                            Samples.print(
                                    2, 95, "PRINTER  1", " paper a ", "As usual", Trust.INSTRUMENT),
                            day(1),
                            null,
                            false);
            assertEquals("Paper A", other.entry().series().paper(), "as it was written first");
            assertEquals(1, logbook.series(Selection.ALL).size());
            Selection shouted = new Selection("printer 1", "PAPER A", null, null, null, 0);
            assertEquals(2, SeriesTrend.of(logbook, shouted, SeriesTrend.USUAL).entries().size());
        }
    }

    @Test
    void namesSaidOfDifferentThingsAreDifferentSeries() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            logbook.add(
                    Samples.print(1, 95, "P", "X", null, Trust.INSTRUMENT), day(0), null, false);
            logbook.add(
                    Samples.print(2, 95, "P", null, "X", Trust.INSTRUMENT), day(1), null, false);
            Problem several =
                    assertThrows(
                            Problem.class,
                            () -> SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL));
            assertTrue(
                    several.getMessage().contains("printer P, paper X, route not said"),
                    several.getMessage());
        }
    }

    @Test
    void anotherChartStandsInNoTrendAndNoBaselineWithTheFirst() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 3);
            Added other = logbook.add(Samples.ofChart("PA-2-A3", 9), day(0), null, false);
            SeriesTrend trend = SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL);
            assertEquals(3, trend.entries().size());
            assertTrue(trend.notes().get(0).contains("another chart"), trend.notes().toString());
            List<Long> both = List.of(other.entry().id(), trend.entries().get(0).id());
            Problem mixed = assertThrows(Problem.class, () -> logbook.setBaseline(both));
            assertTrue(mixed.getMessage().contains("chart"), mixed.getMessage());
        }
    }

    @Test
    void eachChartHasItsOwnBaseline() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 2);
            List<Long> first = ids(logbook.entries(Selection.ALL));
            long other =
                    logbook.add(Samples.ofChart("PA-2-A3", 9), day(9), null, false).entry().id();
            logbook.setBaseline(first);
            logbook.setBaseline(List.of(other));
            SteadyPrints steady = new SteadyPrints(logbook);
            assertEquals(first, steady.baseline(Samples.print(60, 95)).entries());
            Evaluation again = Samples.ofChart("PA-2-A3", 61);
            assertEquals(List.of(other), steady.baseline(again).entries());
        }
    }

    @Test
    void clearingTakesNoOtherBaselineOfTheSeries() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 2);
            List<Long> first = ids(logbook.entries(Selection.ALL));
            long other =
                    logbook.add(Samples.ofChart("PA-2-A3", 9), day(9), null, false).entry().id();
            logbook.setBaseline(first);
            logbook.setBaseline(List.of(other));
            List<Entry> gone = logbook.clearBaseline(first);
            assertEquals(first, ids(gone));
            assertEquals(List.of(), gone.stream().filter(Entry::baseline).toList());
            assertTrue(logbook.entry(other).baseline());
            Problem none = refusal(() -> logbook.clearBaseline(List.of(other, 99L)));
            assertTrue(none.getMessage().contains("no entry 99"), none.getMessage());
            assertTrue(logbook.entry(other).baseline(), "all or none");
        }
    }

    /** A baseline of one chart is no reason to lose that of another. */
    @Test
    void theBaselineOfAnotherChartComesAlongToo() throws Exception {
        Path file = dir.resolve("export.jsonl");
        try (Logbook logbook = Logbook.open(freshPlace())) {
            logbook.add(Samples.print(1, 95), day(1), null, false);
            logbook.add(Samples.ofChart("PA-2-A3", 9), day(2), null, false);
            for (Entry entry : logbook.entries(Selection.ALL)) {
                logbook.setBaseline(List.of(entry.id()));
            }
            LogbookExport.write(logbook, Selection.ALL, file, done -> {});
        }
        try (Logbook logbook = Logbook.open(freshPlace())) {
            Entry own = logbook.add(Samples.print(2, 95), day(0), null, false).entry();
            logbook.setBaseline(List.of(own.id()));
            LogbookImport.of(file).into(logbook, done -> {});
            assertEquals(
                    List.of(2, 9),
                    logbook.entries(Selection.ALL).stream()
                            .filter(Entry::baseline)
                            .map(Entry::print)
                            .toList());
        }
    }

    /** The name of the scanner is part of how a print was read. */
    @Test
    void aScannerIsTheSameHoweverItsNameIsWritten() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            for (int i = 0; i < 8; i++) {
                logbook.add(Samples.readWith("Flatbed 1", i, 95 + 0.1 * i), day(i), null, false);
            }
            Evaluation print = Samples.readWith("flatbed  1", 8, 95);
            SteadyPrints steady = new SteadyPrints(logbook);
            KnownSpread known = steady.spread(List.of(print));
            assertEquals(7, known.spread().freedom(Figure.WHITE_L).orElseThrow());
            Evaluation other = Samples.readWith("FLATBED 1", 9, 95);
            KnownSpread both = steady.spread(List.of(print, other));
            assertEquals(7, both.spread().freedom(Figure.WHITE_L).orElseThrow(), "counted once");
            logbook.add(print, day(9), null, false);
            SeriesTrend trend = SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL);
            assertEquals(9, trend.entries().size(), trend.notes().toString());
            logbook.setBaseline(ids(trend.entries()));
        }
    }

    /** What the logbook hands out as a baseline must be fit to be checked against. */
    @Test
    void baselinesOfUnknownChartsAreToldByTheirCodes() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            Evaluation greys = withGreys(Samples.ofChart(null, 1), 0, 64, 128, 192, 255);
            Evaluation others = withGreys(Samples.ofChart(null, 2), 10, 20, 30, 40, 50);
            long first = logbook.add(greys, day(0), null, false).entry().id();
            logbook.setBaseline(List.of(first));
            SteadyPrints steady = new SteadyPrints(logbook);
            Evaluation known = withGreys(Samples.ofChart("PA-2-A4", 3), 0, 64, 128, 192, 255);
            assertEquals(List.of(first), steady.baseline(known).entries());
            assertEquals(Problem.Kind.CHART, refusal(() -> steady.baseline(others)).kind());
        }
    }

    private static Evaluation withGreys(Evaluation print, int... levels) {
        return print.toBuilder()
                .patches(Arrays.stream(levels).mapToObj(LogbookContract::grey).toList())
                .build();
    }

    private static Reading grey(int level) {
        return MadeReadings.neutral("N" + level, level, level / 2.55);
    }

    /** Sample standard deviation against its definition; freedom is one less than the prints. */
    @Test
    void theSpreadOfASeriesIsThatOfSinglePrints() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            List<Double> values = List.of(95.0, 95.3, 94.9, 95.2, 95.6, 95.1, 94.8, 95.4);
            for (int i = 0; i < values.size(); i++) {
                logbook.add(Samples.print(i, values.get(i)), day(i), null, false);
            }
            PrintSpread spread =
                    SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL)
                            .spread("here")
                            .spread();
            double mean = values.stream().mapToDouble(v -> v).average().orElseThrow();
            double squares = values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
            assertEquals(Math.sqrt(squares / 7), spread.of(Figure.WHITE_L).orElseThrow(), 1e-9);
            assertEquals(7, spread.freedom(Figure.WHITE_L).orElseThrow());
        }
    }

    @Test
    void unchangedPrintsTellBaselineAndSpread() throws Exception {
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 9);
            logbook.add(
                    Samples.print(50, 90, "Printer 2", "B", "r", Trust.INSTRUMENT),
                    day(0),
                    null,
                    false);
            logbook.setBaseline(ids(logbook.entries(Selection.ALL)).subList(4, 7));
            SteadyPrints steady = new SteadyPrints(logbook);
            Evaluation print = Samples.print(60, 95.1);
            Baseline baseline = steady.baseline(print);
            assertEquals(3, baseline.prints().size());
            assertEquals(3, baseline.entries().size());
            assertEquals("the logbook " + logbook.place().name(), baseline.logbook());
            KnownSpread known = steady.spread(List.of(print));
            // Three prints each of 95.0, 95.1 and 95.2.
            assertEquals(
                    Math.sqrt(6 * 0.01 / 8), known.spread().of(Figure.WHITE_L).orElseThrow(), 1e-6);
            assertEquals(8, known.spread().freedom(Figure.WHITE_L).orElseThrow());
            assertEquals(
                    List.of(new KnownSpread.Told("Printer 1 \u00b7 Paper A \u00b7 as usual", 9, 9)),
                    known.told());

            Evaluation other = Samples.print(61, 90, "Printer 2", "B", "r", Trust.INSTRUMENT);
            assertEquals(Problem.Kind.INPUT, refusal(() -> steady.baseline(other)).kind());
            Problem few = refusal(() -> steady.spread(List.of(other)));
            assertTrue(few.getMessage().contains("1 of Printer 2"), few.getMessage());
            // Where one side is known, the other is taken to be alike.
            assertEquals(known.told(), steady.spread(List.of(other, print)).told());
            Evaluation scan =
                    Samples.print(62, 95, "Printer 1", "Paper A", "as usual", Trust.PLAIN_SCAN);
            assertEquals(Problem.Kind.INPUT, refusal(() -> steady.spread(List.of(scan))).kind());
        }
    }

    private static Problem refusal(Executable wrong) {
        return assertThrows(Problem.class, wrong);
    }

    @Test
    void exportAndImportKeepEverything() throws Exception {
        for (String name : List.of("export.jsonl", "export.jsonl.gz")) {
            Path file = dir.resolve(name);
            List<Entry> before;
            try (Logbook logbook = Logbook.open(freshPlace())) {
                fill(logbook, 5);
                logbook.setBaseline(ids(logbook.entries(Selection.ALL)).subList(1, 3));
                before = logbook.entries(Selection.ALL);
                assertEquals(5, LogbookExport.write(logbook, Selection.ALL, file, done -> {}));
            }
            try (Logbook logbook = Logbook.open(freshPlace())) {
                logbook.add(Samples.print(2, 95.2), day(2), null, false);
                Map<Added.Outcome, Integer> outcomes =
                        LogbookImport.of(file).into(logbook, done -> {});
                assertEquals(
                        Map.of(Added.Outcome.ADDED, 4, Added.Outcome.ALREADY_THERE, 1), outcomes);
                List<Entry> after = logbook.entries(Selection.ALL);
                for (int i = 0; i < 5; i++) {
                    assertEquals(before.get(i).readAt(), after.get(i).readAt());
                    assertEquals(before.get(i).baseline(), after.get(i).baseline(), "no. " + i);
                    assertEquals(
                            EvaluationJson.write(Samples.print(i + 1, 95 + 0.1 * ((i + 1) % 3))),
                            logbook.text(after.get(i).id()));
                }
                LogbookImport.of(file).into(logbook, done -> {});
                assertEquals(after, logbook.entries(Selection.ALL), "an import can be repeated");
            }
        }
    }

    @Test
    void aDamagedExportChangesNothing() throws Exception {
        Path file = dir.resolve("export.jsonl");
        Path packed = dir.resolve("export.jsonl.gz");
        try (Logbook logbook = Logbook.open(freshPlace())) {
            fill(logbook, 3);
            LogbookExport.write(logbook, Selection.ALL, file, done -> {});
            LogbookExport.write(logbook, Selection.ALL, packed, done -> {});
        }
        List<String> lines = Files.readAllLines(file);
        byte[] gz = Files.readAllBytes(packed);
        try (var in = new GZIPInputStream(Files.newInputStream(packed))) {
            assertEquals(5, new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().count());
        }
        List<byte[]> damaged =
                List.of(
                        text(lines.subList(0, 4)),
                        text(lines.subList(1, 5)),
                        text(List.of(lines.get(0), lines.get(1), lines.get(4))),
                        text(List.of(lines.get(0), lines.get(1).replace("PA-2-A4\"", "PA\",4"))),
                        text(
                                List.of(
                                        lines.get(0),
                                        lines.get(1).replace("\"driedHours\"", "\"x\""))),
                        text(List.of(lines.get(0).replace("logbook/1", "logbook/2"))),
                        text(List.of("not JSON")),
                        new byte[0],
                        Arrays.copyOf(gz, gz.length / 2));
        try (Logbook logbook = Logbook.open(freshPlace())) {
            for (byte[] bytes : damaged) {
                Files.write(file, bytes);
                Problem problem =
                        assertThrows(
                                Problem.class,
                                () -> LogbookImport.of(file).into(logbook, done -> {}));
                assertEquals(Problem.Kind.INPUT, problem.kind(), problem.getMessage());
                assertTrue(problem.getMessage().startsWith("export.jsonl"), problem.getMessage());
                assertEquals(1, problem.getMessage().lines().count(), problem.getMessage());
                assertEquals(List.of(), logbook.entries(Selection.ALL));
            }
        }
    }

    private static byte[] text(List<String> lines) {
        return (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void anOlderVersionIsBroughtUpToDateWithWhatItHolds() throws Exception {
        LogbookPlace place = freshPlace();
        Database database = Database.of(place, Opening.BEGIN);
        database.connect().close();
        Migrations.migrate(database, 1);
        String packed = place instanceof SqlitePlace ? "x'00'" : "'\\x00'";
        execute(
                database,
                "INSERT INTO series (printer, paper, route) VALUES ('P', 'A', 'r')",
                "INSERT INTO entry (content_id, series_id, read_at, added_at, manner) SELECT '"
                        + "0".repeat(64)
                        + "', id, 1, 2, 'instrument' FROM series",
                "INSERT INTO evaluation SELECT id, 'x', " + packed + " FROM entry");
        try (Logbook logbook = Logbook.open(place, Opening.CHANGE)) {
            Entry old = logbook.entries(Selection.ALL).get(0);
            assertEquals("A", old.series().paper());
            assertTrue(logbook.setBaseline(List.of(old.id())).get(0).baseline());
            Problem problem = assertThrows(Problem.class, () -> logbook.text(old.id()));
            assertTrue(problem.getMessage().contains("damaged"), problem.getMessage());
        }
    }

    @Test
    void aNewerVersionIsRefusedInWords() throws Exception {
        LogbookPlace place = freshPlace();
        Logbook.open(place).close();
        Database database = Database.of(place, Opening.CHANGE);
        execute(
                database,
                "INSERT INTO logbook_version (installed_rank, version, description, type, script,"
                        + " checksum, installed_by, execution_time, success) SELECT 99, '99', 'later',"
                        + " 'SQL', 'V99__later.sql', 1, 'x', 1, success FROM logbook_version WHERE"
                        + " version = '1'");
        for (Opening opening : Opening.values()) {
            Problem problem =
                    assertThrows(Problem.class, () -> Logbook.open(place, opening).close());
            assertEquals(Problem.Kind.INPUT, problem.kind());
            assertTrue(problem.getMessage().contains("newer printassay"), problem.getMessage());
        }
    }

    private static void execute(Database database, String... statements) throws Exception {
        try (Connection connection = database.source().getConnection();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    @Test
    void severalWhoBeginAndWriteAtOnceLoseNothing() throws Exception {
        LogbookPlace place = freshPlace();
        int writers = 4;
        int each = 12;
        ExecutorService pool = Executors.newFixedThreadPool(writers);
        try {
            List<Future<Integer>> all = new ArrayList<>();
            for (int w = 0; w < writers; w++) {
                int first = w * each / 2;
                all.add(
                        pool.submit(
                                () -> {
                                    int added = 0;
                                    try (Logbook logbook = Logbook.open(place)) {
                                        for (int i = first; i < first + each; i++) {
                                            Added one =
                                                    logbook.add(
                                                            Samples.print(i, 95),
                                                            day(i),
                                                            null,
                                                            false);
                                            added += one.outcome() == Added.Outcome.ADDED ? 1 : 0;
                                        }
                                    }
                                    return added;
                                }));
            }
            int added = 0;
            for (Future<Integer> one : all) {
                added += one.get();
            }
            int different = (writers + 1) * each / 2;
            assertEquals(different, added, "each print was added by exactly one");
            try (Logbook logbook = Logbook.open(place, Opening.READ)) {
                assertEquals(different, logbook.entries(Selection.ALL).size());
            }
        } finally {
            pool.shutdownNow();
        }
    }
}
