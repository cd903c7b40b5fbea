package org.printassay.prints;

import java.util.List;
import org.printassay.check.Check;
import org.printassay.check.CheckWords;
import org.printassay.check.Outcome;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;

/**
 * What is kept of one print's check for the summary of many; the whole is in its own file.
 *
 * @param name what the print is called; also the folder of its results
 * @param details what was said about it
 * @param files what it was read from
 * @param outcome of everything together
 * @param sentences most consequential first
 * @param baseline what it was held against
 * @param spread where it is known from how unchanged prints lie apart
 */
public record CheckedPrint(
        String name,
        PrintDetails details,
        List<SourceFile> files,
        Outcome outcome,
        List<String> sentences,
        String baseline,
        String spread)
        implements ReadPrint {
    public CheckedPrint {
        files = List.copyOf(files);
        sentences = List.copyOf(sentences);
    }

    /** What a check comes to. */
    public static CheckedPrint of(String name, Check check) {
        return new CheckedPrint(
                name,
                check.print().details(),
                check.print().files(),
                check.outcome(),
                CheckWords.sentences(check),
                check.baselineName(),
                CheckWords.spread(check));
    }

    /** The weightiest sentence; empty when there is none. */
    String first() {
        return sentences.isEmpty() ? "" : sentences.get(0);
    }
}
