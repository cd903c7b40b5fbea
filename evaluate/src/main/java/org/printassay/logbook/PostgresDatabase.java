package org.printassay.logbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Set;
import org.postgresql.PGProperty;
import org.postgresql.ds.PGSimpleDataSource;
import org.printassay.problem.Problem;

/** A logbook in a PostgreSQL database, in a schema of its own. */
final class PostgresDatabase implements Database {
    /** Schema that holds the tables. */
    static final String SCHEMA = "printassay";

    private static final int CONNECT_SECONDS = 15;

    /** A server that fell silent is given up after this. */
    private static final int ANSWER_SECONDS = 120;

    private final PostgresPlace place;
    private final Map<String, String> environment;

    PostgresDatabase(PostgresPlace place, Map<String, String> environment) {
        this.place = place;
        this.environment = environment;
    }

    @Override
    public LogbookPlace place() {
        return place;
    }

    @Override
    public String schema() {
        return SCHEMA;
    }

    @Override
    public String migrations() {
        return "org/printassay/logbook/postgres";
    }

    @Override
    public String versionTableQuestion() {
        return "SELECT count(*) FROM pg_catalog.pg_tables WHERE schemaname = '"
                + SCHEMA
                + "' AND tablename = '"
                + Migrations.VERSIONS
                + "'";
    }

    @Override
    public boolean readOnly() {
        return false;
    }

    @Override
    public PGSimpleDataSource source() {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(place.url());
        source.setCurrentSchema(SCHEMA);
        source.setApplicationName("printassay");
        source.setConnectTimeout(CONNECT_SECONDS);
        source.setSocketTimeout(ANSWER_SECONDS);
        source.setTcpKeepAlive(true);
        try {
            for (Map.Entry<String, String> option : place.options().entrySet()) {
                source.setProperty(option.getKey(), option.getValue());
            }
            String password = environment.get(PostgresPlace.PASSWORD_VARIABLE);
            if (password != null) {
                source.setProperty(PGProperty.PASSWORD.getName(), password);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("options were checked", e);
        }
        return source;
    }

    @Override
    public Connection connect() throws SQLException, Problem {
        refuseOpenPasswordFile();
        return source().getConnection();
    }

    /** A password file that others may read is refused, as PostgreSQL's own library does. */
    private void refuseOpenPasswordFile() throws Problem {
        if (environment.containsKey(PostgresPlace.PASSWORD_VARIABLE)) {
            return;
        }
        String named = environment.get("PGPASSFILE");
        try {
            Path file =
                    named == null
                            ? Path.of(System.getProperty("user.home", "."), ".pgpass")
                            : Path.of(named);
            if (!Files.exists(file)) {
                return;
            }
            Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
            for (PosixFilePermission permission : permissions) {
                if (!permission.name().startsWith("OWNER_")) {
                    throw Problem.input(
                            file.toString(),
                            "others may read the passwords in it. Keep it to yourself: chmod 600.");
                }
            }
        } catch (UnsupportedOperationException | InvalidPathException e) {
            // No such permissions here, or no such file: the driver looks for itself.
        } catch (IOException e) {
            throw Problem.input(String.valueOf(named), "cannot be read.", e);
        }
    }
}
