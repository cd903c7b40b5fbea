package org.printassay.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.printassay.problem.Problem;

/** A logbook in an SQLite file, and files that are none. */
class SqliteLogbookTest extends LogbookContract {
    private int places;

    @Override
    LogbookPlace freshPlace() {
        // No folder yet, and a name that means something in addresses and in SQL.
        return new SqlitePlace(dir.resolve("new " + places++).resolve("lab's 50% #1?mode=ro.db"));
    }

    private static Problem refused(Path file, Opening opening) {
        return assertThrows(
                Problem.class, () -> Logbook.open(new SqlitePlace(file), opening).close());
    }

    private static void refused(Path file, Problem.Kind kind, String words) {
        for (Opening opening : Opening.values()) {
            Problem problem = refused(file, opening);
            assertEquals(kind, problem.kind(), problem.getMessage());
            assertTrue(problem.getMessage().contains(words), problem.getMessage());
            assertEquals(1, problem.getMessage().lines().count(), problem.getMessage());
        }
    }

    private Path made(String name, String... statements) throws Exception {
        Path file = dir.resolve(name);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
        return file;
    }

    private Path filled(String name) throws Exception {
        Path file = dir.resolve(name);
        try (Logbook logbook = Logbook.open(new SqlitePlace(file))) {
            for (int i = 0; i < 20; i++) {
                logbook.add(Samples.print(i, 95), Instant.EPOCH, null, false);
            }
        }
        return file;
    }

    @Test
    void filesThatAreNoLogbookAreRefusedAndLeftAlone() throws Exception {
        Path text = Files.writeString(dir.resolve("notes.txt"), "Paper A: warm\n".repeat(99));
        Path foreign = made("photos.db", "CREATE TABLE photo (id INTEGER)");
        byte[] foreignBytes = Files.readAllBytes(foreign);
        refused(text, Problem.Kind.INPUT, "is not a logbook");
        refused(foreign, Problem.Kind.INPUT, "is not a logbook");
        refused(dir, Problem.Kind.INPUT, "is a folder");
        assertEquals("Paper A: warm\n".repeat(99), Files.readString(text));
        assertTrue(Arrays.equals(foreignBytes, Files.readAllBytes(foreign)));
    }

    @Test
    void aMissingLogbookIsBegunByAddingOnly() {
        Path file = dir.resolve("none").resolve("logbook.sqlite");
        assertTrue(refused(file, Opening.READ).getMessage().contains("no logbook here yet"));
        assertTrue(refused(file, Opening.CHANGE).getMessage().contains("no logbook here yet"));
        assertFalse(Files.exists(file.getParent()));
    }

    @Test
    void foreignThingsInALogbookAreRefused() throws Exception {
        Path trigger = filled("trigger.db");
        made("trigger.db", "CREATE TRIGGER t AFTER DELETE ON entry BEGIN SELECT 1; END");
        refused(trigger, Problem.Kind.INPUT, "it holds a trigger t");
        Path view = filled("view.db");
        made("view.db", "CREATE VIEW v AS SELECT 1");
        refused(view, Problem.Kind.INPUT, "it holds a view v");
        Path table = filled("table.db");
        made("table.db", "CREATE VIRTUAL TABLE words USING fts5(text)");
        refused(table, Problem.Kind.INPUT, "it holds a table words");
    }

    @Test
    void truncatedFilesAreDamaged() throws Exception {
        byte[] whole = Files.readAllBytes(filled("whole.db"));
        Path cut = dir.resolve("cut.db");
        for (int share = 1; share < 8; share++) {
            Files.write(cut, Arrays.copyOf(whole, whole.length * share / 8));
            refused(cut, Problem.Kind.INPUT, "is damaged");
        }
        Files.write(cut, Arrays.copyOf(whole, 60));
        refused(cut, Problem.Kind.INPUT, "cut.db");
    }

    /** Bytes set at random: refused in one line, or every entry can still be read or is refused. */
    @Test
    void damagedPagesAreRefusedInWords() throws Exception {
        byte[] whole = Files.readAllBytes(filled("whole.db"));
        Path file = dir.resolve("damaged.db");
        Random random = new Random(5);
        int refused = 0;
        for (int round = 0; round < 60; round++) {
            Files.write(file, whole);
            try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
                byte[] noise = new byte[1 + random.nextInt(200)];
                random.nextBytes(noise);
                bytes.seek(random.nextInt(whole.length - noise.length));
                bytes.write(noise);
            }
            try (Logbook logbook = Logbook.open(new SqlitePlace(file), Opening.CHANGE)) {
                for (Entry entry : logbook.entries(Selection.ALL)) {
                    logbook.evaluation(entry.id());
                }
            } catch (Problem e) {
                assertEquals(1, e.getMessage().lines().count(), e.getMessage());
                refused++;
            }
        }
        assertTrue(refused > 20, "refused " + refused);
    }

    @Test
    void anEmptyFileIsBegunByAdding() throws Exception {
        Path file = Files.createFile(dir.resolve("empty.db"));
        assertTrue(refused(file, Opening.READ).getMessage().contains("is empty"));
        Logbook.open(new SqlitePlace(file)).close();
        Logbook.open(new SqlitePlace(file), Opening.READ).close();
    }

    @Test
    void nothingIsLeftBesideTheFile() throws Exception {
        filled("logbook.sqlite");
        try (var files = Files.list(dir)) {
            assertEquals(
                    List.of("logbook.sqlite"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void foldersThatTakeNothingAreToldAsOutput() throws Exception {
        Path file = Files.writeString(dir.resolve("file"), "x");
        Problem problem = refused(file.resolve("logbook.sqlite"), Opening.BEGIN);
        assertEquals(Problem.Kind.OUTPUT, problem.kind(), problem.getMessage());
        assertTrue(problem.getMessage().contains("its folder cannot be made"));
    }
}
