package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Independent programs that tests use as witnesses; missing ones skip, unless required. */
final class Tool {
    private Tool() {}

    /**
     * Where a program is; the test is skipped without it, or fails where witnesses are required.
     */
    static Path require(String name) {
        Optional<Path> found =
                Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":", -1))
                        .map(dir -> Path.of(dir, name))
                        .filter(Files::isExecutable)
                        .findFirst();
        if (found.isEmpty() && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError(name + " is missing but witnesses are required");
        }
        assumeTrue(found.isPresent(), "witness missing: " + name);
        return found.orElseThrow();
    }

    /** Standard output of a program that must succeed. */
    static String run(Object... words) throws Exception {
        require(words[0].toString());
        List<String> command = new ArrayList<>();
        for (Object word : words) {
            command.add(word.toString());
        }
        Path out = Files.createTempFile("tool", ".txt");
        Path err = Files.createTempFile("tool", ".txt");
        try {
            Process process =
                    new ProcessBuilder(command)
                            .redirectOutput(out.toFile())
                            .redirectError(err.toFile())
                            .start();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS), command.get(0));
            assertEquals(0, process.exitValue(), Files.readString(err));
            return new String(Files.readAllBytes(out), StandardCharsets.UTF_8);
        } finally {
            Files.deleteIfExists(out);
            Files.deleteIfExists(err);
        }
    }
}
