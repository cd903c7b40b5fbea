package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Pages of checks and of the logbook as commands write them. The measurements are simulated. */
final class CheckPages {
    private static final String HOSTILE = "<script>document.title='hit'</script> =cmd()";
    private static final int PRINTS = 9;

    private CheckPages() {}

    /** The page of several checks, one of which failed, one of which could not be read. */
    static Path many(Path folder) throws Exception {
        Path before = MeasuredPrint.evaluation(folder.resolve("before"), HOSTILE, 1, 0);
        Path after = MeasuredPrint.evaluation(folder.resolve("after"), HOSTILE, 2, 0);
        Path lighter = MeasuredPrint.evaluation(folder.resolve("lighter"), HOSTILE, 3, 9);
        Path broken = Files.writeString(folder.resolve("broken <b>.json"), "{\"schema\": ");
        Path out = folder.resolve("out");
        CommandLineRun run =
                CommandLineRun.of(
                        "check", after, lighter, broken, "--baseline", before, "--out", out);
        assertEquals(3, run.exitCode(), run.out() + run.err());
        return out.resolve("index.html");
    }

    /** The page of several evaluations, one of which could not be read. */
    static Path evaluated(Path folder) throws Exception {
        MeasuredPrint.evaluation(folder.resolve("one"), HOSTILE, 1, 0);
        Path broken = Files.writeString(folder.resolve("broken <b>.txt"), "none");
        Path out = folder.resolve("out");
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate",
                        "--many",
                        folder.resolve("one/measured.txt"),
                        broken,
                        "--paper",
                        HOSTILE,
                        "--out",
                        out);
        assertEquals(3, run.exitCode(), run.out() + run.err());
        return out.resolve("index.html");
    }

    /** The page of a printer over time, with a jump at the end. */
    static Path trend(Path folder) throws Exception {
        Path logbook = folder.resolve("lab.sqlite");
        List<Object> add = new ArrayList<>(List.of("log", "add", "--logbook", logbook));
        for (int i = 0; i < PRINTS; i++) {
            double lighter = i == PRINTS - 1 ? 3 : 0;
            add.add(MeasuredPrint.evaluation(folder.resolve("p" + i), HOSTILE, i, lighter));
        }
        CommandLineRun added = CommandLineRun.of(add.toArray());
        assertEquals(0, added.exitCode(), added.err());
        Path out = folder.resolve("out");
        CommandLineRun run = CommandLineRun.of("log", "trend", "--logbook", logbook, "--out", out);
        assertEquals(0, run.exitCode(), run.err());
        Path page = out.resolve("trend.html");
        assertTrue(Files.readString(page).contains("jump"), run.out());
        return page;
    }
}
