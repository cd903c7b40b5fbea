package org.printassay.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;
import org.printassay.logbook.Selection;
import org.printassay.problem.Problem;
import picocli.CommandLine.Option;

/** Which prints a command of the logbook is about. */
final class LogSelection {
    @Option(names = "--printer", paramLabel = "NAME", description = "Prints of this printer only.")
    private @Nullable String printer;

    @Option(names = "--paper", paramLabel = "NAME", description = "Prints on this paper only.")
    private @Nullable String paper;

    @Option(names = "--route", paramLabel = "TEXT", description = "Prints of this route only.")
    private @Nullable String route;

    @Option(
            names = "--read-as",
            paramLabel = "TRUST",
            description =
                    "Prints read in this way only: instrument, calibrated-scan, profiled-scan or"
                            + " plain-scan.")
    private @Nullable String readAs;

    Selection selection() {
        return new Selection(printer, paper, route, null, readAs, 0);
    }

    Selection selection(@Nullable String since, int newest) throws Problem {
        if (newest < 0) {
            throw Problem.usage("--last must be 0 (all) or more, got " + newest + ".");
        }
        Instant from = since == null ? null : time("--since", since);
        return new Selection(printer, paper, route, from, readAs, newest);
    }

    /** A day (in UTC) or a moment. */
    static Instant time(String option, String text) throws Problem {
        try {
            return text.length() <= 10
                    ? LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant()
                    : OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException e) {
            throw Problem.usage(
                    option
                            + " takes a day (2026-03-01) or a moment with its zone"
                            + " (2026-03-01T14:30:00+01:00), got "
                            + PlainText.line(text)
                            + ".");
        }
    }
}
