package org.printassay.logbook;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.zip.GZIPOutputStream;
import org.printassay.problem.Problem;

/**
 * Writes a logbook as lines of JSON ({@code printassay/logbook/1}, JSON Lines), one an entry, so
 * that an export of any size needs the memory of one entry.
 */
public final class LogbookExport {
    /** Schema of each line. */
    static final String SCHEMA = "printassay/logbook/1";

    private static final JsonMapper MAPPER = new JsonMapper();

    private LogbookExport() {}

    /**
     * Writes selected entries, oldest first.
     *
     * @param to new file; packed with gzip when its name ends in {@code .gz}
     * @param progress told the share that is done
     * @return how many entries were written
     * @throws IOException when the file cannot be written; what was written of it stays
     */
    public static int write(Logbook logbook, Selection selection, Path to, DoubleConsumer progress)
            throws IOException, Problem {
        List<Entry> entries = logbook.entries(selection);
        try (Writer out = writer(to)) {
            ObjectNode first = MAPPER.createObjectNode().put("schema", SCHEMA);
            line(out, first.put("made", Instant.now().toString()));
            int done = 0;
            for (Entry entry : entries) {
                Optional<String> text = logbook.textIfThere(entry.id());
                if (text.isEmpty()) {
                    // Another removed it meanwhile.
                    continue;
                }
                ObjectNode line = MAPPER.createObjectNode().put("schema", SCHEMA);
                ObjectNode body = line.putObject("entry");
                body.put("readAt", entry.readAt().toString());
                body.put("addedAt", entry.addedAt().toString());
                body.put("note", entry.note());
                body.put("baseline", entry.baseline());
                body.set("evaluation", MAPPER.readTree(text.get()));
                line(out, line);
                progress.accept((double) ++done / entries.size());
            }
            ObjectNode last = MAPPER.createObjectNode().put("schema", SCHEMA);
            line(out, last.put("entries", done));
            return done;
        }
    }

    private static void line(Writer out, ObjectNode line) throws IOException {
        out.write(MAPPER.writeValueAsString(line));
        out.write('\n');
    }

    private static Writer writer(Path to) throws IOException {
        OutputStream bytes = new BufferedOutputStream(Files.newOutputStream(to));
        if (packed(to)) {
            bytes = new GZIPOutputStream(bytes);
        }
        return new BufferedWriter(new OutputStreamWriter(bytes, StandardCharsets.UTF_8));
    }

    static boolean packed(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".gz");
    }
}
