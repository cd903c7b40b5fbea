package org.printassay.logbook;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.printassay.problem.Problem;

/** How one kind of database is reached; what the tables hold is the same in all. */
interface Database {
    /** Where it is. */
    LogbookPlace place();

    /**
     * A connection, after checks that this is a logbook at all.
     *
     * @throws Problem when it is none, is damaged or is not there
     */
    Connection connect() throws SQLException, Problem;

    /** Connections without checks, for what brings the tables up to date. */
    DataSource source();

    /** Schema of the tables; empty where there are none. */
    String schema();

    /** Folder of the class path that holds the tables' versions. */
    String migrations();

    /** Question whether the table of versions is there: one row with a number, 0 for no. */
    String versionTableQuestion();

    /** Whether nothing can be changed here. */
    boolean readOnly();

    /** Opens a place. */
    static Database of(LogbookPlace place, Opening opening) {
        if (place instanceof PostgresPlace server) {
            return new PostgresDatabase(server, System.getenv());
        }
        return new SqliteDatabase((SqlitePlace) place, opening);
    }
}
