package org.printassay.acceptance;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** What the program writes for simulated scans, made once and kept for all tests of a run. */
final class EvaluatedSheet {
    /** Text that tries to be markup, a formula, a control or a direction, in many scripts. */
    static final String HOSTILE =
            "=cmd()<script>document.title='hit'</script>\"><img src=x onerror=document.title='hit'>"
                    + "'&amp;\u202e\u0007\u001b[31m\t\r\n\u0639\u0631\u0628\u064a"
                    + " \u05e2\u05d1\u05e8\u05d9\u05ea \u7d19 \ud83d\udda8\ufe0f "
                    + "x".repeat(300);

    /** A file name as hostile as a file system allows. */
    static final String HOSTILE_FILE =
            "=<img src=x onerror=document.title='hit'>\u202e\"'&\u7d19\ud83d\udda8.png";

    private static final Map<String, Path> MADE = new ConcurrentHashMap<>();

    private EvaluatedSheet() {}

    /** Results for a good print with plain names. */
    static Path plain() {
        return MADE.computeIfAbsent("plain", key -> made("scan.png", "Paper Q (simulated)", key));
    }

    /** Results for the same print with hostile names. */
    static Path hostile() {
        return MADE.computeIfAbsent("hostile", key -> made(HOSTILE_FILE, HOSTILE, key));
    }

    private static Path made(String scanName, String name, String key) {
        try {
            Path folder = Files.createTempDirectory("evaluated-" + key);
            Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder.toFile())));
            Path scan = SimulatedPrint.plainGood(folder.resolve("plain.png"));
            Path named = Files.move(scan, folder.resolve(scanName));
            Path out = folder.resolve("out");
            List<Object> words =
                    List.of(
                            "evaluate",
                            named,
                            "--paper",
                            name,
                            "--printer",
                            name,
                            "--route",
                            name,
                            "--dried-hours",
                            "24",
                            "--out",
                            out);
            CommandLineRun run = CommandLineRun.of(words.toArray());
            if (run.exitCode() != 0) {
                throw new AssertionError(run.err());
            }
            return out;
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    private static void remove(File file) {
        File[] inside = file.listFiles();
        if (inside != null) {
            for (File one : inside) {
                remove(one);
            }
        }
        if (!file.delete()) {
            file.deleteOnExit();
        }
    }

    /** One of the files, as text. */
    static String text(Path results, String file) throws IOException {
        return Files.readString(results.resolve(file));
    }
}
