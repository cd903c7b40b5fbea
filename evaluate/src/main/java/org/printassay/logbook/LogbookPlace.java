package org.printassay.logbook;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import org.printassay.problem.Problem;

/** Where a logbook is: an SQLite file, or a PostgreSQL database of a lab. */
public sealed interface LogbookPlace permits SqlitePlace, PostgresPlace {
    /** The place for messages and reports; never holds a password. */
    String shown();

    /** What it is called in reports that are handed on: no folders, no options. */
    String name();

    /**
     * The place that a user names.
     *
     * @param given a file, or {@code jdbc:postgresql://host/database}
     * @throws Problem usage; the message repeats nothing of an address, for it may hold a password
     */
    static LogbookPlace parse(String given) throws Problem {
        String text = given.strip();
        String lower = text.toLowerCase(Locale.ROOT);
        if (lower.startsWith("jdbc:postgresql:")) {
            return PostgresPlace.parse(text);
        }
        if (lower.contains("jdbc:") || lower.contains("://")) {
            throw Problem.usage(
                    "--logbook takes a file, or the address of a PostgreSQL database"
                            + " (jdbc:postgresql://host/database).");
        }
        try {
            if (text.isBlank()) {
                throw Problem.usage("--logbook needs the name of a file.");
            }
            return new SqlitePlace(Path.of(given));
        } catch (InvalidPathException e) {
            throw Problem.usage("--logbook: this is no file name: " + e.getReason() + ".");
        }
    }
}
