package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Simulated measurements of a grey scale, evaluated: cheap prints for tests of what follows. */
final class MeasuredPrint {
    private MeasuredPrint() {}

    /** evaluation.json of one print, in a new folder. */
    static Path evaluation(Path folder) throws Exception {
        return evaluation(folder, "Paper A", 1, 0);
    }

    /**
     * evaluation.json of one print, in a new folder.
     *
     * @param lighter how much lighter than usual it is, L*
     */
    static Path evaluation(Path folder, String paper, long seed, double lighter) throws Exception {
        Files.createDirectories(folder);
        Path file = folder.resolve("measured.txt");
        Files.writeString(file, text(seed, lighter));
        Path out = folder.resolve("evaluation");
        CommandLineRun run =
                CommandLineRun.of(
                        "evaluate",
                        file,
                        "--paper",
                        paper,
                        "--printer",
                        "Printer 1",
                        "--route",
                        "usual",
                        "--out",
                        out);
        assertEquals(0, run.exitCode(), run.err());
        return out.resolve("evaluation.json");
    }

    private static String text(long seed, double lighter) {
        Random random = new Random(seed);
        List<String> rows = new ArrayList<>();
        for (int level = 0; level < 256; level += level < 24 || level >= 230 ? 1 : 6) {
            for (int twin = 0; twin < 2; twin++) {
                rows.add(
                        String.format(
                                Locale.ROOT,
                                "%d %d %d %d %.3f %.3f %.3f",
                                rows.size() + 1,
                                level,
                                level,
                                level,
                                16 + 79.0 * level / 255 + lighter + 0.1 * random.nextGaussian(),
                                0.2 + 0.05 * random.nextGaussian(),
                                -1 + 0.05 * random.nextGaussian()));
            }
        }
        return """
                CGATS.17
                NUMBER_OF_FIELDS 7
                BEGIN_DATA_FORMAT
                SAMPLE_ID RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                NUMBER_OF_SETS %d
                BEGIN_DATA
                %s
                END_DATA
                """
                .formatted(rows.size(), String.join("\n", rows));
    }
}
