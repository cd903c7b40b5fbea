package org.printassay.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.printassay.compare.Comparison;
import org.printassay.problem.Problem;

/** Keeps a comparison from being written over one of other prints. */
final class SameComparison {
    private static final String RESULT = "comparison.json";

    private SameComparison() {}

    /**
     * Refuses a folder that holds a comparison of prints that are not all in this one.
     *
     * @throws Problem output, unless {@code force}
     */
    static void refuseOther(Path folder, Comparison comparison, boolean force) throws Problem {
        Path there = folder.resolve(RESULT);
        if (force || !Files.exists(there)) {
            return;
        }
        Set<String> now = new TreeSet<>();
        comparison.sides().stream()
                .flatMap(side -> side.prints().stream())
                .flatMap(print -> print.files().stream())
                .forEach(file -> now.add(file.sha256()));
        if (!now.containsAll(before(there))) {
            throw Problem.output(
                    folder.toString(),
                    "holds a comparison of other prints. Name another folder with --out, or write"
                            + " over it with --force.");
        }
    }

    private static Set<String> before(Path there) {
        Set<String> sums = new TreeSet<>();
        try {
            for (JsonNode side : new ObjectMapper().readTree(there.toFile()).path("sides")) {
                for (JsonNode print : side.path("prints")) {
                    for (JsonNode file : print.path("files")) {
                        sums.add(file.path("sha256").asText());
                    }
                }
            }
        } catch (IOException e) {
            sums.add("unreadable");
        }
        return sums;
    }
}
