package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.logbook.Entry;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookPlace;
import org.printassay.logbook.Opening;
import org.printassay.logbook.Selection;

/**
 * Eight stations write into one logbook at once and are killed again and again: nothing that was
 * said to be added is lost, nothing is there twice, and the logbook is sound. The long run: {@code
 * -DlogbookAdds=500}.
 */
class LogbookWritersTest {
    private static final int STATIONS = 8;
    private static final int ADDS = Integer.getInteger("logbookAdds", 12);

    /** Every station is killed so often before it may finish. */
    private static final int KILLS = 2;

    @TempDir static Path dir;

    private static Path evaluation;

    @BeforeAll
    static void evaluateOnce() throws Exception {
        evaluation = MeasuredPrint.evaluation(dir.resolve("print"));
    }

    @Test
    void inAFile() throws Exception {
        Path file = dir.resolve("lab").resolve("logbook.sqlite");
        assertNothingLost(file.toString());
        try (var left = Files.list(file.getParent())) {
            assertEquals(List.of(file), left.toList(), "nothing is left beside it");
        }
    }

    @Test
    void onAServer() throws Exception {
        try (EmbeddedPostgres server = EmbeddedPostgres.start()) {
            assertNothingLost(
                    "jdbc:postgresql://localhost:" + server.getPort() + "/postgres?user=postgres");
        }
    }

    private static void assertNothingLost(String logbook) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(STATIONS);
        Set<Integer> acknowledged = new HashSet<>();
        int newOnes = 0;
        int killed = 0;
        try {
            List<Future<Station>> stations = new ArrayList<>();
            for (int s = 0; s < STATIONS; s++) {
                // Neighbours share half of their prints.
                stations.add(pool.submit(new Station(logbook, s * ADDS / 2, s)));
            }
            for (Future<Station> one : stations) {
                Station station = one.get();
                acknowledged.addAll(station.acknowledged);
                newOnes += station.newOnes;
                killed += station.killed;
            }
        } finally {
            pool.shutdownNow();
        }
        int prints = (STATIONS + 1) * ADDS / 2;
        assertEquals(prints, acknowledged.size());
        assertTrue(killed > 0, "no station was killed while it wrote");
        try (Logbook open = Logbook.open(LogbookPlace.parse(logbook), Opening.READ)) {
            List<Entry> entries = open.entries(Selection.ALL);
            Set<Instant> different = new HashSet<>();
            for (Entry entry : entries) {
                assertTrue(different.add(entry.readAt()), "twice: " + entry);
                open.evaluation(entry.id());
            }
            assertEquals(prints, entries.size(), "lost or doubled");
            // A kill between the commit and the word for it leaves a print that no one announced.
            assertTrue(newOnes <= prints && newOnes >= prints - killed, newOnes + " announced");
            System.out.println(
                    STATIONS
                            + " stations x "
                            + ADDS
                            + " adds, "
                            + killed
                            + " killed: "
                            + prints
                            + " different prints, "
                            + entries.size()
                            + " in the logbook");
        }
    }

    /** One station: started anew after each kill, with the same prints. */
    private static final class Station implements Callable<Station> {
        private final String logbook;
        private final int first;
        private final Random random;
        private final Set<Integer> acknowledged = new HashSet<>();
        private int newOnes;
        private int killed;

        Station(String logbook, int first, int number) {
            this.logbook = logbook;
            this.first = first;
            this.random = new Random(number);
        }

        @Override
        public Station call() throws Exception {
            for (int start = 0; start < KILLS; start++) {
                run(1 + random.nextInt(ADDS));
            }
            int exit = run(Integer.MAX_VALUE);
            assertEquals(0, exit, "the last start finishes");
            return this;
        }

        /** Runs the station and kills it some moments after it announced so many prints. */
        private int run(int announcements) throws IOException, InterruptedException {
            Process process =
                    new ProcessBuilder(
                                    Path.of(System.getProperty("java.home"), "bin", "java")
                                            .toString(),
                                    "-Xmx200m",
                                    "-XX:TieredStopAtLevel=1",
                                    "-cp",
                                    System.getProperty("java.class.path"),
                                    LogbookWriter.class.getName(),
                                    logbook,
                                    evaluation.toString(),
                                    String.valueOf(first),
                                    String.valueOf(ADDS))
                            .redirectError(ProcessBuilder.Redirect.INHERIT)
                            .start();
            int seen = 0;
            try (var lines = process.inputReader()) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                    acknowledged.add(Integer.valueOf(line.substring(0, line.indexOf(' '))));
                    newOnes += line.endsWith(" added") ? 1 : 0;
                    if (++seen == announcements) {
                        Thread.sleep(ThreadLocalRandom.current().nextInt(30));
                        // Not by the process itself, which would throw away what it said last.
                        killed += process.toHandle().destroyForcibly() ? 1 : 0;
                    }
                }
            } finally {
                process.destroyForcibly();
            }
            assertTrue(process.waitFor(1, TimeUnit.MINUTES));
            return process.exitValue();
        }
    }
}
