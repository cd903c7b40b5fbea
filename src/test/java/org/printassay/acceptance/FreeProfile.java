package org.printassay.acceptance;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

/** Profiles of Debian packages, below the folder of the system property {@code iccProfiles}. */
final class FreeProfile {
    private FreeProfile() {}

    /** A profile by its file name; the test is skipped without it, or fails where required. */
    static Path named(String name) throws IOException {
        String given = System.getProperty("iccProfiles", "");
        Optional<Path> found = Optional.empty();
        if (!given.isEmpty()) {
            try (Stream<Path> all = Files.walk(Path.of(given))) {
                found = all.filter(p -> p.getFileName().toString().equals(name)).findFirst();
            }
        }
        if (found.isEmpty() && "required".equals(System.getProperty("witnesses"))) {
            fail("there is no " + name + " below -DiccProfiles");
        }
        assumeTrue(found.isPresent(), "no " + name + " below -DiccProfiles");
        return found.orElseThrow();
    }
}
