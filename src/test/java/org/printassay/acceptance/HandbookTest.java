package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.printassay.cli.Handbook;

/** The completion script in a real bash, the manual pages in a real roff. */
class HandbookTest {
    @TempDir static Path dir;

    @BeforeAll
    static void write() throws Exception {
        Handbook.write(dir);
    }

    private static boolean isThere(String tool) {
        boolean there =
                Stream.of("/bin/", "/usr/bin/", "/usr/local/bin/")
                        .anyMatch(place -> Files.isExecutable(Path.of(place + tool)));
        if (!there && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError(tool + " is missing but witnesses are required");
        }
        return there;
    }

    /** Standard output and error of a command that ends well. */
    private static String run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), out);
        return out;
    }

    private static Set<String> completed(String... words) throws Exception {
        String query =
                "source \"$1\"; shift; COMP_WORDS=(\"$@\"); COMP_CWORD=$(($# - 1));"
                        + " COMPREPLY=(); _complete_printassay 2>/dev/null; printf '%s\\n' \"${COMPREPLY[@]}\"";
        String[] command = new String[5 + words.length];
        command[0] = "bash";
        command[1] = "-c";
        command[2] = query;
        command[3] = "bash";
        command[4] = dir.resolve("completion/printassay").toString();
        System.arraycopy(words, 0, command, 5, words.length);
        return new TreeSet<>(run(command).lines().map(String::strip).toList());
    }

    @Test
    void bashCompletesCommandsAndOptions() throws Exception {
        assumeTrue(isThere("bash"), "bash is not installed");
        run("bash", "-n", dir.resolve("completion/printassay").toString());
        assertEquals(Set.of("calibrate"), completed("printassay", "cal"));
        assertTrue(completed("printassay", "").containsAll(List.of("chart", "evaluate", "demo")));
        assertEquals(Set.of("--threshold"), completed("printassay", "evaluate", "--thr"));
        assertEquals(Set.of("--margin-mm"), completed("printassay", "chart", "--mar"));
    }

    @Test
    void everyCommandHasAPageThatRoffTakesWithoutWarning() throws Exception {
        assumeTrue(isThere("groff"), "groff is not installed");
        List<Path> pages;
        try (Stream<Path> all = Files.list(dir.resolve("man/man1"))) {
            pages = all.sorted().toList();
        }
        Set<String> names = new TreeSet<>();
        for (Path page : pages) {
            names.add(page.getFileName().toString());
            assertEquals("", run("groff", "-man", "-Tutf8", "-ww", "-z", page.toString()));
        }
        assertTrue(
                names.containsAll(
                        List.of("printassay.1", "printassay-chart.1", "printassay-evaluate.1")),
                names.toString());
    }

    /** What a reader sees: options with their meaning, an example, exit codes. */
    @Test
    void aPageSaysWhatHelpSays() throws Exception {
        assumeTrue(isThere("groff"), "groff is not installed");
        String page = dir.resolve("man/man1/printassay-chart.1").toString();
        String shown =
                run("bash", "-c", "groff -man -Tascii -P-c -P-b -P-u \"$0\"", page)
                        .replaceAll("-\\s*\\n\\s+", "")
                        .replaceAll("\\s+", " ");
        assertTrue(shown.contains("--margin-mm=MM"), shown);
        assertTrue(shown.contains("(default: 300)"), shown);
        assertTrue(shown.contains("printassay chart --page Letter --margin-mm 12"), shown);
        assertTrue(shown.contains("EXIT STATUS"), shown);
        assertTrue(CommandLineRun.of("chart", "--help").out().contains("--margin-mm"));
    }
}
