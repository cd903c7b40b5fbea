package org.printassay.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.printassay.evaluation.Evaluation;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;

/**
 * The evaluation file, {@code evaluation.json}. Every key is always there; what was not judged is
 * null, and a warning says why. Numbers are rounded to what can mean something: colours to 0.001,
 * shares to 0.00001. The same evaluation always gives the same text, and what was read is written
 * again as the same text.
 */
public final class EvaluationJson {
    /** Version of the schema that is written and read. */
    public static final int SCHEMA_VERSION = 1;

    private EvaluationJson() {}

    /** The text of an evaluation's file. */
    public static String write(Evaluation evaluation) {
        return JsonLayout.write(JsonOut.of(evaluation));
    }

    /**
     * Reads an evaluation file.
     *
     * @throws Problem input, when it cannot be read, is of another version or is not valid
     */
    public static Evaluation read(Path file) throws Problem {
        return JsonIn.evaluation(CheckedJson.read(file, "evaluation", SCHEMA_VERSION));
    }

    /** As {@link #read(Path)}, of text already in memory; {@code where} is for messages. */
    public static Evaluation parse(String where, String text) throws Problem {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return JsonIn.evaluation(CheckedJson.parse(where, bytes, "evaluation", SCHEMA_VERSION));
    }
}
