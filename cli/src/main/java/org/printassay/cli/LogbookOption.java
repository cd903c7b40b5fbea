package org.printassay.cli;

import org.jspecify.annotations.Nullable;
import org.printassay.logbook.DefaultPlace;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.LogbookPlace;
import org.printassay.logbook.Opening;
import org.printassay.problem.Problem;
import picocli.CommandLine.Option;

/** Which logbook, for every command that uses one. */
final class LogbookOption {
    @Option(
            names = "--logbook",
            paramLabel = "FILE-OR-URL",
            description =
                    "The logbook: a file, or jdbc:postgresql://host/database?user=NAME (default:"
                            + " PRINTASSAY_LOGBOOK, else a file in your data folder).")
    private @Nullable String logbook;

    /** Whether the user named one. */
    boolean named() {
        return logbook != null;
    }

    Logbook open(Opening opening) throws Problem {
        LogbookPlace place = logbook == null ? DefaultPlace.here() : LogbookPlace.parse(logbook);
        return Logbook.open(place, opening);
    }
}
