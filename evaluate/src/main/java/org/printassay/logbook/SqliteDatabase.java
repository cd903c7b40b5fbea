package org.printassay.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.printassay.problem.Problem;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A logbook in an SQLite file. A file from elsewhere is treated as sqlite.org/security.html advises
 * for untrusted databases: no extensions, schema not trusted, cells checked, no memory mapping, a
 * quick check and the very tables that are ours before anything else is asked of it.
 */
final class SqliteDatabase implements Database {
    /** Says in the file's header that it is a logbook: "PrLb". */
    static final int APPLICATION = 0x50724c62;

    /** How long one waits for another that writes. */
    static final int PATIENCE_MS = (int) TimeUnit.SECONDS.toMillis(60);

    /** A larger file is checked but for the packed evaluations: each is checked when it is read. */
    private static final long CHECKED_WHOLE_BYTES = 64L << 20;

    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    private static final Set<String> TABLES =
            Set.of(
                    "series",
                    "entry",
                    "evaluation",
                    "figure",
                    "baseline",
                    Migrations.VERSIONS,
                    "sqlite_sequence");

    private final SqlitePlace place;
    private final Path file;
    private final Opening opening;
    private final boolean readOnly;

    SqliteDatabase(SqlitePlace place, Opening opening) {
        this.place = place;
        this.file = place.file();
        this.opening = opening;
        this.readOnly = opening == Opening.READ && Files.exists(file) && !writable();
    }

    private boolean writable() {
        Path folder = file.getParent();
        return Files.isWritable(file) && (folder == null || Files.isWritable(folder));
    }

    @Override
    public LogbookPlace place() {
        return place;
    }

    @Override
    public String schema() {
        return "main";
    }

    @Override
    public String migrations() {
        return "org/printassay/logbook/sqlite";
    }

    @Override
    public String versionTableQuestion() {
        return "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = '"
                + Migrations.VERSIONS
                + "'";
    }

    @Override
    public boolean readOnly() {
        return readOnly;
    }

    @Override
    public SQLiteDataSource source() {
        SQLiteConfig config = new SQLiteConfig();
        config.enableLoadExtension(false);
        config.setReadOnly(readOnly);
        config.setBusyTimeout(PATIENCE_MS);
        config.enforceForeignKeys(true);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        // What was said to be added stays, even if the power fails.
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        SQLiteDataSource source = new SQLiteDataSource(config);
        // As a URI, since the driver takes what follows a question mark for settings.
        source.setUrl("jdbc:sqlite:" + file.toUri());
        return source;
    }

    @Override
    public Connection connect() throws SQLException, Problem {
        boolean fresh = fresh();
        Connection connection = source().getConnection();
        try {
            distrust(connection);
            if (fresh) {
                sign(connection);
            }
            check(connection);
            return connection;
        } catch (SQLException | Problem | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    /** Whether a logbook is to be begun here. */
    private boolean fresh() throws Problem {
        try {
            if (Files.isDirectory(file)) {
                throw Problem.input(place.shown(), "is a folder. Name a file with --logbook.");
            }
            if (!Files.exists(file)) {
                return begin();
            }
            if (!Files.isRegularFile(file)) {
                throw Problem.input(place.shown(), "is no file. Name one with --logbook.");
            }
            if (opening != Opening.READ && !writable()) {
                throw Problem.output(
                        place.shown(), "cannot be written (permission denied), nor its folder.");
            }
            if (Files.size(file) == 0) {
                if (opening != Opening.BEGIN) {
                    throw Problem.input(
                            place.shown(), "is empty. printassay log add begins a logbook.");
                }
                return true;
            }
            if (!startsLikeSqlite() && !Files.exists(journal())) {
                throw notALogbook();
            }
            return false;
        } catch (IOException e) {
            throw Problem.input(place.shown(), "cannot be read (" + e.getMessage() + ").", e);
        }
    }

    private boolean begin() throws Problem {
        if (opening != Opening.BEGIN) {
            throw Problem.input(
                    place.shown(), "there is no logbook here yet. printassay log add begins one.");
        }
        try {
            Path folder = file.getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            return true;
        } catch (IOException e) {
            throw Problem.output(
                    place.shown(),
                    "its folder cannot be made ("
                            + e.getClass().getSimpleName()
                            + "). Name another place with --logbook.");
        }
    }

    private Path journal() {
        return file.resolveSibling(file.getFileName() + "-journal");
    }

    private boolean startsLikeSqlite() throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(MAGIC.length), MAGIC);
        }
    }

    private Problem notALogbook() {
        return Problem.input(place.shown(), "is not a logbook. Name another file with --logbook.");
    }

    private static void distrust(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA trusted_schema = OFF");
            statement.execute("PRAGMA cell_size_check = ON");
            statement.execute("PRAGMA mmap_size = 0");
        }
    }

    /** Marks an empty file as a logbook, unless another just did. */
    private static void sign(Connection connection) throws SQLException {
        connection.setAutoCommit(false);
        try (Statement statement = connection.createStatement()) {
            if (number(statement, "SELECT count(*) FROM sqlite_schema") == 0
                    && number(statement, "PRAGMA application_id") == 0) {
                statement.execute("PRAGMA application_id = " + APPLICATION);
            }
            connection.commit();
        } catch (SQLException e) {
            connection.rollback();
            throw e;
        } finally {
            connection.setAutoCommit(true);
        }
    }

    private void check(Connection connection) throws SQLException, Problem {
        try (Statement statement = connection.createStatement()) {
            if (number(statement, "PRAGMA application_id") != APPLICATION) {
                throw notALogbook();
            }
            for (String question : checks(statement)) {
                String answer = texts(statement, question).get(0);
                if (!answer.equals("ok")) {
                    throw Failures.damaged(place, answer);
                }
            }
            for (String thing :
                    texts(
                            statement,
                            "SELECT type || ' ' || name FROM sqlite_schema WHERE type <> 'index'"
                                    + " ORDER BY name")) {
                if (!thing.startsWith("table ") || !TABLES.contains(thing.substring(6))) {
                    throw Problem.input(
                            place.shown(),
                            "is not a logbook as printassay writes it: it holds a " + thing + ".");
                }
            }
        }
    }

    private List<String> checks(Statement statement) throws SQLException {
        long bytes = number(statement, "PRAGMA page_count") * number(statement, "PRAGMA page_size");
        if (bytes <= CHECKED_WHOLE_BYTES) {
            return List.of("PRAGMA quick_check(1)");
        }
        return List.of(
                "PRAGMA quick_check(sqlite_schema)",
                "PRAGMA quick_check(series)",
                "PRAGMA quick_check(entry)",
                "PRAGMA quick_check(figure)");
    }

    private static long number(Statement statement, String question) throws SQLException {
        try (ResultSet row = statement.executeQuery(question)) {
            return row.next() ? row.getLong(1) : 0;
        }
    }

    private static List<String> texts(Statement statement, String question) throws SQLException {
        List<String> out = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(question)) {
            while (rows.next()) {
                out.add(String.valueOf(rows.getString(1)));
            }
        }
        return out;
    }
}
