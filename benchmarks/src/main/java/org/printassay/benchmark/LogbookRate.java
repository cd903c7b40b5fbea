package org.printassay.benchmark;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.SourceFile;
import org.printassay.logbook.Addition;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookPlace;
import org.printassay.logbook.Opening;
import org.printassay.logbook.Selection;
import org.printassay.logbook.SeriesTrend;
import org.printassay.report.EvaluationJson;

/**
 * Adds varied copies of one evaluation to a logbook, then reads trends: how long each takes, and
 * how large the logbook grows. In a file, and in a PostgreSQL server that is started for it.
 */
public final class LogbookRate {
    private static final int RUNS = 5;
    private static final int VARIANTS = 30;

    private LogbookRate() {}

    /** Arguments: an evaluation.json, how many entries. */
    public static void main(String[] arguments) throws Exception {
        String text = Files.readString(Path.of(arguments[0]));
        int entries = Integer.parseInt(arguments[1]);
        System.out.printf(Locale.ROOT, "%d entries of %d kB each%n", entries, text.length() / 1024);
        Path folder = Files.createTempDirectory("logbook-rate");
        Path file = folder.resolve("logbook.sqlite");
        measure("SQLite", file.toString(), text, entries);
        System.out.printf(Locale.ROOT, "  file %.0f MB%n", Files.size(file) / 1e6);
        Files.delete(file);
        Files.delete(folder);
        try (EmbeddedPostgres server = EmbeddedPostgres.start()) {
            measure(
                    "PostgreSQL",
                    "jdbc:postgresql://localhost:" + server.getPort() + "/postgres?user=postgres",
                    text,
                    entries);
        }
    }

    private static void measure(String name, String place, String text, int entries)
            throws Exception {
        List<Evaluation> prints = new ArrayList<>();
        for (int i = 0; i < VARIANTS; i++) {
            prints.add(EvaluationJson.parse("print", varied(text, new Random(i))));
        }
        double[] millis = new double[entries];
        try (Logbook logbook = Logbook.open(LogbookPlace.parse(place))) {
            for (int i = 0; i < entries; i++) {
                Addition print = addition(prints, i);
                long start = System.nanoTime();
                logbook.add(print.evaluation(), print.readAt(), null, false);
                millis[i] = (System.nanoTime() - start) / 1e6;
            }
            int more = Math.min(entries, 20 * Addition.AT_ONCE);
            long together = 0;
            for (int i = 0; i < more; i += Addition.AT_ONCE) {
                List<Addition> some = new ArrayList<>();
                for (int k = i; k < Math.min(more, i + Addition.AT_ONCE); k++) {
                    some.add(addition(prints, entries + k));
                }
                long start = System.nanoTime();
                logbook.addAll(some, false);
                together += System.nanoTime() - start;
            }
            System.out.printf(
                    Locale.ROOT,
                    "%s: %d more, %d at once: mean %.1f ms each%n",
                    name,
                    more,
                    Addition.AT_ONCE,
                    together / 1e6 / more);
        }
        Arrays.sort(millis);
        System.out.printf(
                Locale.ROOT,
                "%s: add mean %.1f ms, median %.1f ms, 95 of 100 below %.1f ms, largest %.0f ms%n",
                name,
                Arrays.stream(millis).average().orElseThrow(),
                millis[entries / 2],
                millis[entries * 95 / 100],
                millis[entries - 1]);
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            try (Logbook logbook = Logbook.open(LogbookPlace.parse(place), Opening.READ)) {
                long opened = System.nanoTime();
                SeriesTrend trend = SeriesTrend.of(logbook, Selection.ALL, SeriesTrend.USUAL);
                System.out.printf(
                        Locale.ROOT,
                        "  trend of %d figures over %d prints: %.0f ms, and opening %.0f ms%n",
                        trend.trends().size(),
                        trend.entries().size(),
                        (System.nanoTime() - opened) / 1e6,
                        (opened - start) / 1e6);
            }
        }
    }

    /** Another digit here and there, so that packing is not flattered. */
    private static String varied(String text, Random random) {
        StringBuilder out = new StringBuilder(text);
        for (int at = out.indexOf("\"l\""); at >= 0; at = out.indexOf("\"l\"", at + 1)) {
            int dot = out.indexOf(".", at);
            if (dot > 0 && dot - at < 12 && Character.isDigit(out.charAt(dot + 1))) {
                out.setCharAt(dot + 1, (char) ('0' + random.nextInt(9)));
            }
        }
        return out.toString();
    }

    private static Addition addition(List<Evaluation> prints, int number) {
        Evaluation print = of(prints.get(number % VARIANTS), number);
        return new Addition(print, Instant.ofEpochSecond(1_700_000_000L + 3600L * number), null);
    }

    /** The same results, read from another file. */
    private static Evaluation of(Evaluation e, int number) {
        SourceFile file = new SourceFile("scan.tif", String.format("%064x", number));
        return e.toBuilder().files(List.of(file)).build();
    }
}
