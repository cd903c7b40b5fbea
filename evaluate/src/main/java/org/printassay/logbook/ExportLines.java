package org.printassay.logbook;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.json.CheckedJson;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;

/** Reads an export line by line; every line is checked before it is handed on. */
final class ExportLines {
    private static final int GZIP_FIRST = 0x1f;
    private static final int GZIP_SECOND = 0x8b;

    private final Path file;
    private final String where;

    ExportLines(Path file) {
        this.file = file;
        this.where = String.valueOf(file.getFileName());
    }

    /** One entry of an export. */
    record Line(Evaluation evaluation, Instant readAt, @Nullable String note, boolean baseline) {}

    /** Takes entries. */
    @FunctionalInterface
    interface Taker {
        void take(Line line) throws Problem;
    }

    /**
     * Hands on every entry.
     *
     * @return how many
     * @throws Problem input, when the file is not an export, is not valid or not whole
     */
    int each(Taker taker) throws Problem {
        int entries = 0;
        boolean whole = false;
        try (InputStream in = open()) {
            int number = 0;
            for (byte[] line = next(in, 1); line != null; line = next(in, number + 1)) {
                number++;
                JsonNode node = CheckedJson.parse(at(number), line, "logbook", 1);
                if (number == 1 && !node.has("made")) {
                    throw Problem.input(where, "is not the beginning of a logbook's export.");
                }
                if (whole) {
                    throw Problem.input(at(number), "something follows the end of the export.");
                }
                if (node.has("entry")) {
                    taker.take(line(node.path("entry"), at(number)));
                    entries++;
                }
                whole = node.has("entries");
                if (whole && node.path("entries").asInt() != entries) {
                    throw Problem.input(
                            where,
                            "is not whole: "
                                    + entries
                                    + " of "
                                    + node.path("entries").asInt()
                                    + " entries are there. Export again.");
                }
            }
        } catch (NoSuchFileException e) {
            throw Problem.input(where, "there is no such file: " + file.toAbsolutePath(), e);
        } catch (EOFException | ZipException e) {
            throw Problem.input(where, "is not whole, or no gzip file. Export again.", e);
        } catch (IOException e) {
            throw Problem.input(where, "cannot be read (" + e.getMessage() + ").", e);
        }
        if (!whole) {
            throw Problem.input(
                    where, "is not whole: its end is missing after " + entries + " entries.");
        }
        return entries;
    }

    private String at(int number) {
        return where + ", line " + number;
    }

    private static Line line(JsonNode entry, String at) throws Problem {
        JsonNode note = entry.path("note");
        return new Line(
                EvaluationJson.parse(at, entry.path("evaluation").toString()),
                instant(entry.path("readAt").asText(), at),
                note.isTextual() ? note.asText() : null,
                entry.path("baseline").asBoolean());
    }

    private static Instant instant(String text, String at) throws Problem {
        try {
            return Instant.parse(text);
        } catch (DateTimeException e) {
            throw Problem.input(at, "there is no such time: " + text + ".", e);
        }
    }

    private InputStream open() throws IOException, Problem {
        if (Files.isDirectory(file)) {
            throw Problem.input(where, "is a folder, not an export.");
        }
        BufferedInputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        in.mark(2);
        boolean packed = in.read() == GZIP_FIRST && in.read() == GZIP_SECOND;
        in.reset();
        return packed ? new BufferedInputStream(new GZIPInputStream(in), 1 << 16) : in;
    }

    /** The next line that is not empty; null at the end. */
    private byte @Nullable [] next(InputStream in, int number) throws IOException, Problem {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int b = in.read(); b >= 0; b = in.read()) {
            if (b == '\n' && line.size() > 0) {
                return line.toByteArray();
            }
            if (b != '\n' && b != '\r') {
                line.write(b);
            }
            if (line.size() > CheckedJson.LARGEST_BYTES) {
                throw Problem.input(at(number), "is longer than any line of an export.");
            }
        }
        return line.size() > 0 ? line.toByteArray() : null;
    }
}
