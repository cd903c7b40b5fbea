package org.printassay.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Evaluator;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.Progress;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;

/** Evaluations from their files, or made from scans and measurements on the spot. */
final class CheckedPrints {
    private static final int LOOKED_AT = 64;

    private final EvaluationOptions options;

    CheckedPrints(EvaluationOptions options) {
        this.options = options;
    }

    /** Reads an evaluation, or evaluates; told apart by content. */
    Evaluation read(Path given, Progress progress) throws Problem {
        Path file = Files.isDirectory(given) ? given.resolve(EvaluationFolders.FILE) : given;
        if (!Files.exists(file)) {
            throw Problem.input(
                    String.valueOf(given.getFileName()),
                    Files.isDirectory(given)
                            ? "the folder holds no evaluation.json. Name an evaluation, a scan or a"
                                    + " measurement."
                            : "there is no such file: " + given.toAbsolutePath());
        }
        return read(List.of(file), PrintDetails.UNKNOWN, progress);
    }

    /**
     * Reads the evaluation of a print, or evaluates its files.
     *
     * @param said what is said about this print alone
     */
    Evaluation read(List<Path> files, PrintDetails said, Progress progress) throws Problem {
        if (files.size() == 1 && Files.isRegularFile(files.get(0)) && looksLikeJson(files.get(0))) {
            return EvaluationJson.read(files.get(0));
        }
        return Evaluator.evaluate(options.request(files, said), progress).evaluation();
    }

    /** Files that must not be written over. */
    List<Path> inputs(List<Path> given) {
        List<Path> all = new ArrayList<>(options.files());
        for (Path one : given) {
            all.add(Files.isDirectory(one) ? one.resolve(EvaluationFolders.FILE) : one);
        }
        all.removeIf(file -> !Files.exists(file));
        return all;
    }

    private static boolean looksLikeJson(Path file) throws Problem {
        try (InputStream in = Files.newInputStream(file)) {
            for (byte b : in.readNBytes(LOOKED_AT)) {
                if (b == '{') {
                    return true;
                }
                if (!Character.isWhitespace(b)) {
                    return false;
                }
            }
            return false;
        } catch (IOException e) {
            throw Problem.input(String.valueOf(file.getFileName()), "cannot be read.", e);
        }
    }
}
