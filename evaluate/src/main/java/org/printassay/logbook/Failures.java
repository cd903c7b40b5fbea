package org.printassay.logbook;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * What databases say when something fails, in words. PostgreSQL's codes: its manual, appendix A;
 * SQLite's: sqlite.org/rescode.html.
 */
final class Failures {
    private static final int LONGEST = 200;

    private Failures() {}

    /** The database's own error within another; null when there is none. */
    static @Nullable SQLException cause(Throwable e) {
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof SQLException sql) {
                return sql;
            }
        }
        return null;
    }

    /** Whether trying again may help: another program was at it. */
    static boolean another(SQLException e) {
        if (e instanceof SQLiteException sqlite) {
            // Two that begin a logbook at once: the second finds tables that it is about to make.
            return primary(sqlite) == SQLiteErrorCode.SQLITE_BUSY
                    || primary(sqlite) == SQLiteErrorCode.SQLITE_ERROR
                    || primary(sqlite) == SQLiteErrorCode.SQLITE_CONSTRAINT;
        }
        String state = String.valueOf(e.getSQLState());
        return state.startsWith("40") || state.equals("23505") || state.startsWith("42P0");
    }

    /** A damaged file. */
    static Problem damaged(LogbookPlace place, String how) {
        return Problem.input(
                place.shown(),
                "is damaged ("
                        + clean(how)
                        + "). Put a copy in its place, or import an export of it.");
    }

    /** One line for a database's error. */
    static Problem problem(LogbookPlace place, SQLException e) {
        return e instanceof SQLiteException sqlite
                ? ofSqlite(place, sqlite)
                : ofPostgres(place, e, String.valueOf(e.getSQLState()));
    }

    private static Problem ofSqlite(LogbookPlace place, SQLiteException e) {
        String where = place.shown();
        return switch (primary(e)) {
            case SQLITE_BUSY, SQLITE_LOCKED ->
                    Problem.output(
                            where,
                            "another program has been writing to it for a minute. Try again, or end"
                                    + " that program.");
            case SQLITE_FULL -> Problem.output(where, "there is no room left. Make room.");
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH ->
                    Problem.output(
                            where,
                            "cannot be opened for writing. Name another place with --logbook.");
            case SQLITE_NOTADB ->
                    Problem.input(where, "is not a logbook. Name another file with --logbook.");
            case SQLITE_CORRUPT -> damaged(place, "SQLite finds its pages in disorder");
            case SQLITE_IOERR ->
                    Problem.output(where, "cannot be read or written (" + line(e) + ").");
            default -> damaged(place, line(e));
        };
    }

    /** Extended codes have the primary one in their lowest byte. */
    private static SQLiteErrorCode primary(SQLiteException e) {
        return SQLiteErrorCode.getErrorCode(e.getResultCode().code & 0xff);
    }

    private static Problem ofPostgres(LogbookPlace place, SQLException e, String state) {
        String where = place.shown();
        if (state.startsWith("28")) {
            return Problem.input(
                    where,
                    "the server does not let this user in ("
                            + line(e)
                            + "). "
                            + PostgresPlace.WHERE_PASSWORDS_GO,
                    e);
        }
        if (state.startsWith("08")) {
            String password =
                    String.valueOf(e.getMessage()).contains("password")
                            ? " " + PostgresPlace.WHERE_PASSWORDS_GO
                            : "";
            return Problem.input(
                    where, "the server cannot be reached (" + line(e) + ")." + password, e);
        }
        if (state.equals("3D000")) {
            return Problem.input(where, "the server has no such database. Make it first.", e);
        }
        if (state.equals("42501") || state.equals("25006")) {
            return Problem.output(where, "this user may not write here (" + line(e) + ").");
        }
        if (state.startsWith("53")) {
            return Problem.output(where, "the server has no room left (" + line(e) + ").");
        }
        return Problem.output(where, "the server refuses (" + line(e) + ").");
    }

    /** The first line of a message, fit for a sentence. */
    static String line(Throwable e) {
        String message = String.valueOf(e.getMessage());
        return clean(message.lines().findFirst().orElse(message));
    }

    private static String clean(String text) {
        String plain = text.replaceAll("\\p{C}+", " ").strip();
        String cut = plain.length() > LONGEST ? plain.substring(0, LONGEST) + "..." : plain;
        return cut.endsWith(".") ? cut.substring(0, cut.length() - 1) : cut;
    }
}
