package org.printassay.logbook;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.printassay.problem.Problem;

/** Brings a logbook's tables up to this version, and refuses those of a newer one. */
final class Migrations {
    /** The version that this program writes. */
    static final int NEWEST = 2;

    /** Table that says which versions were applied. */
    static final String VERSIONS = "logbook_version";

    /** Tries when another program begins the same logbook at the same moment. */
    private static final int TRIES = 10;

    private static final long PAUSE_MS = 200;

    private Migrations() {}

    /**
     * Makes the tables what this version needs. Looking is cheap; the migration tool is started
     * only when there is something to do.
     *
     * @throws Problem input, when a newer version wrote it; output, when it would have to be
     *     changed and cannot
     */
    static void apply(Database database, Connection connection) throws SQLException, Problem {
        for (int tries = 1; ; tries++) {
            int version = version(database, connection);
            if (version > NEWEST) {
                throw Problem.input(
                        database.place().shown(),
                        "was written by a newer printassay (version "
                                + version
                                + " of the logbook; this one knows "
                                + NEWEST
                                + "). Update printassay.");
            }
            if (version == NEWEST) {
                return;
            }
            if (database.readOnly()) {
                throw Problem.output(
                        database.place().shown(),
                        "is of an older version and cannot be written, so it cannot be brought up"
                                + " to date.");
            }
            try {
                migrate(database, NEWEST);
            } catch (FlywayException e) {
                SQLException cause = Failures.cause(e);
                if (cause == null) {
                    throw Problem.input(
                            database.place().shown(),
                            "cannot be brought up to date: " + Failures.line(e) + ".",
                            e);
                }
                if (tries == TRIES || !Failures.another(cause)) {
                    throw cause;
                }
                pause();
            }
        }
    }

    /** Applies every version up to {@code newest}. */
    static void migrate(Database database, int newest) {
        Flyway.configure(Migrations.class.getClassLoader())
                .dataSource(database.source())
                .locations("classpath:" + database.migrations())
                .defaultSchema(database.schema())
                .table(VERSIONS)
                .target(String.valueOf(newest))
                .loggers("slf4j")
                .load()
                .migrate();
    }

    private static int version(Database database, Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (number(statement, database.versionTableQuestion()) == 0) {
                return 0;
            }
            return number(
                    statement,
                    "SELECT max(CAST(version AS INTEGER)) FROM "
                            + VERSIONS
                            + " WHERE version IS NOT NULL");
        }
    }

    private static int number(Statement statement, String question) throws SQLException {
        try (ResultSet row = statement.executeQuery(question)) {
            return row.next() ? row.getInt(1) : 0;
        }
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
