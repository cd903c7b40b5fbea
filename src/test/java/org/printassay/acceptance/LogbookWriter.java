package org.printassay.acceptance;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.printassay.logbook.Added;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookPlace;
import org.printassay.report.EvaluationJson;

/**
 * A station of a lab as a process of its own: adds prints to a logbook and says so after each. It
 * is made to be killed at any moment.
 */
public final class LogbookWriter {
    private LogbookWriter() {}

    /** Arguments: the logbook, an evaluation to vary, first print number, how many. */
    public static void main(String[] arguments) throws Exception {
        String text = Files.readString(Path.of(arguments[1]));
        int first = Integer.parseInt(arguments[2]);
        int count = Integer.parseInt(arguments[3]);
        try (Logbook logbook = Logbook.open(LogbookPlace.parse(arguments[0]))) {
            for (int print = first; print < first + count; print++) {
                Added added =
                        logbook.add(
                                EvaluationJson.parse("print " + print, varied(text, print)),
                                Instant.ofEpochSecond(1_700_000_000L + print),
                                null,
                                false);
                System.out.println(print + " " + added.outcome().key());
            }
        }
    }

    /** The evaluation as if read from another file: its checksum ends in the print's number. */
    static String varied(String text, int print) {
        return text.replaceFirst(
                "(\"sha256\"\\s*:\\s*\"[0-9a-f]{56})[0-9a-f]{8}",
                "$1" + String.format("%08x", print));
    }
}
