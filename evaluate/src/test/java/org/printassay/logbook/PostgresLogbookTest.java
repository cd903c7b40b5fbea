package org.printassay.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.sql.Connection;
import java.sql.Statement;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.printassay.problem.Problem;

/** A logbook in a real PostgreSQL server, started for the test. */
class PostgresLogbookTest extends LogbookContract {
    private static EmbeddedPostgres server;
    private static int databases;

    @BeforeAll
    static void start() throws Exception {
        server = EmbeddedPostgres.start();
    }

    @AfterAll
    static void stop() throws Exception {
        server.close();
    }

    private static void execute(String sql) throws Exception {
        try (Connection connection = server.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static LogbookPlace place(String database, String options) throws Problem {
        return LogbookPlace.parse(
                "jdbc:postgresql://localhost:" + server.getPort() + "/" + database + options);
    }

    @Override
    LogbookPlace freshPlace() throws Exception {
        String name = "lab " + ++databases;
        execute("CREATE DATABASE \"" + name + "\"");
        return place(name.replace(" ", "%20"), "?user=postgres");
    }

    private static Problem refused(LogbookPlace place) {
        return assertThrows(Problem.class, () -> Logbook.open(place).close());
    }

    @Test
    void missingDatabaseAndServerAreToldInWords() throws Exception {
        Problem database = refused(place("nowhere", "?user=postgres"));
        assertEquals(Problem.Kind.INPUT, database.kind());
        assertTrue(database.getMessage().contains("no such database"), database.getMessage());
        Problem silent = refused(LogbookPlace.parse("jdbc:postgresql://localhost:9/lab?user=x"));
        assertEquals(Problem.Kind.INPUT, silent.kind());
        assertTrue(silent.getMessage().contains("cannot be reached"), silent.getMessage());
    }

    @Test
    void aUserWithoutRightsIsTold() throws Exception {
        freshPlace();
        execute("CREATE USER reader");
        Problem problem = refused(place("lab%20" + databases, "?user=reader"));
        assertEquals(Problem.Kind.OUTPUT, problem.kind(), problem.getMessage());
        assertTrue(problem.getMessage().contains("may not write"), problem.getMessage());
    }

    @Test
    void aPasswordComesFromTheEnvironmentAndIsNeverShown() throws Exception {
        PostgresPlace place = (PostgresPlace) freshPlace();
        PostgresDatabase database =
                new PostgresDatabase(place, Map.of("PGPASSWORD", "correct horse"));
        assertEquals("correct horse", database.source().getPassword());
        assertFalse(place.shown().contains("horse"));
        assertFalse(database.source().getURL().contains("horse"), database.source().getURL());
    }
}
