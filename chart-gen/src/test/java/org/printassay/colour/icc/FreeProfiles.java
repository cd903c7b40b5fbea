package org.printassay.colour.icc;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Profiles of the Debian packages icc-profiles-free, colord-data, texlive-base, scribus-data,
 * libgs-common: where those install them, or all below the folder of the system property {@code
 * iccProfiles}, into which {@code .ci/run} unpacks them.
 */
final class FreeProfiles {
    private static final List<Path> FOLDERS =
            List.of(
                    Path.of("/usr/share/color/icc"),
                    Path.of("/usr/share/scribus/profiles"),
                    Path.of("/usr/share/texlive/texmf-dist/tex/generic/colorprofiles"));

    private FreeProfiles() {}

    /** All there are, sorted. */
    static List<Path> all() {
        List<Path> folders = new ArrayList<>(FOLDERS);
        String given = System.getProperty("iccProfiles", "");
        if (!given.isEmpty()) {
            folders = List.of(Path.of(given));
        }
        List<Path> files = new ArrayList<>();
        for (Path folder : folders) {
            if (Files.isDirectory(folder)) {
                try (Stream<Path> walk = Files.walk(folder)) {
                    walk.filter(Files::isRegularFile)
                            .filter(FreeProfiles::isProfile)
                            .sorted()
                            .forEach(files::add);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
        return files;
    }

    private static boolean isProfile(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".icc") || name.endsWith(".icm");
    }

    /** The file with a checksum. */
    static Optional<Path> bySha256(String sha256) {
        return all().stream().filter(file -> sha256(read(file)).equals(sha256)).findFirst();
    }

    /** Skips the test when a thing is missing, or fails it where witnesses are required. */
    static void require(boolean found, String what) {
        if (!found && "required".equals(System.getProperty("witnesses"))) {
            throw new AssertionError(what + " is required and missing");
        }
        assumeTrue(found, "witness missing: " + what);
    }

    static byte[] read(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }
}
