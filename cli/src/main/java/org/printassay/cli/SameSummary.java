package org.printassay.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.printassay.prints.OnePrint;
import org.printassay.prints.Summary;
import org.printassay.problem.Problem;

/** Keeps a summary from being written over one of other prints, or over somebody's own page. */
final class SameSummary {
    private SameSummary() {}

    /**
     * Refuses a folder with a summary of quite other prints, or with a page of somebody's.
     *
     * @param json file of the summary for scripts
     * @throws Problem output, unless {@code force}
     */
    static void refuseOthers(Path folder, String json, List<OnePrint> prints, boolean force)
            throws Problem {
        Path there = folder.resolve(json);
        boolean page = Files.exists(folder.resolve(Summary.PAGE));
        if (force || (!Files.exists(there) && !page)) {
            return;
        }
        Set<String> names = new HashSet<>();
        prints.forEach(print -> names.add(print.name()));
        try {
            for (JsonNode old : new ObjectMapper().readTree(there.toFile()).path("prints")) {
                if (names.contains(old.path("name").asText())) {
                    return;
                }
            }
        } catch (IOException e) {
            // Not a summary of ours.
        }
        throw Problem.output(
                folder.toString(),
                "holds "
                        + (Files.exists(there) ? "the summary of other prints" : "another page")
                        + ". Name another folder with --out, or write over it with --force.");
    }
}
