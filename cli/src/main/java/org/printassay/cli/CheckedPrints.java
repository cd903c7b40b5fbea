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
    private static final String RESULT = "evaluation.json";
    private static final int LOOKED_AT = 64;

    private final EvaluationOptions options;

    CheckedPrints(EvaluationOptions options) {
        this.options = options;
    }

    /** Reads an evaluation, or evaluates; told apart by content. */
    Evaluation read(Path given, Progress progress) throws Problem {
        Path file = Files.isDirectory(given) ? given.resolve(RESULT) : given;
        if (!Files.exists(file)) {
            throw Problem.input(
                    String.valueOf(given.getFileName()),
                    Files.isDirectory(given)
                            ? "the folder holds no evaluation.json. Name an evaluation, a scan or a"
                                    + " measurement."
                            : "there is no such file: " + given.toAbsolutePath());
        }
        if (looksLikeJson(file)) {
            return EvaluationJson.read(file);
        }
        return Evaluator.evaluate(options.request(List.of(file), PrintDetails.UNKNOWN), progress)
                .evaluation();
    }

    /** Files that must not be written over. */
    List<Path> inputs(List<Path> prints, Path baseline) {
        List<Path> all = new ArrayList<>(options.files());
        for (Path given : prints) {
            all.add(Files.isDirectory(given) ? given.resolve(RESULT) : given);
        }
        all.add(Files.isDirectory(baseline) ? baseline.resolve(RESULT) : baseline);
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
