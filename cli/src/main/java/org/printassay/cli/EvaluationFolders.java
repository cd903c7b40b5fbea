package org.printassay.cli;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.printassay.problem.Problem;

/** Folders that evaluate has written. */
final class EvaluationFolders {
    /** What it writes into each. */
    static final String FILE = "evaluation.json";

    private EvaluationFolders() {}

    /**
     * The evaluation in a folder, or those in the folders that are in it; none where it is no
     * folder of results.
     *
     * @throws Problem input, when it cannot be read
     */
    static List<Path> in(Path folder) throws Problem {
        Path inside = folder.resolve(FILE);
        if (Files.exists(inside)) {
            return List.of(inside);
        }
        List<Path> below = new ArrayList<>();
        try (DirectoryStream<Path> folders = Files.newDirectoryStream(folder)) {
            for (Path one : folders) {
                if (Files.isRegularFile(one.resolve(FILE))) {
                    below.add(one.resolve(FILE));
                }
            }
        } catch (IOException e) {
            throw Problem.input(
                    PlainText.path(folder), "cannot be read. Check its permissions.", e);
        }
        Collections.sort(below);
        return below;
    }
}
