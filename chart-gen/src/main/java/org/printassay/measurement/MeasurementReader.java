package org.printassay.measurement;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.printassay.measurement.MeasurementFile.Condition;
import org.printassay.problem.Problem;

/**
 * Reads ISO 28178 text (CGATS.17) by its field names, with the dialects of real files: spectral
 * columns in several spellings, percent or fraction, tabs or spaces or semicolons or commas,
 * quotes, no header, comments, decimal comma, several tables, byte order marks, any line ends.
 */
public final class MeasurementReader {
    /** Larger files are no measurements of prints. */
    public static final int MAX_BYTES = 64 << 20;

    private static final Pattern CONDITION = Pattern.compile("\\bM([0-3])\\b");

    private MeasurementReader() {}

    /** Whether the first bytes of a file look like a measurement file of this kind. */
    public static boolean recognises(byte[] head) {
        String text = decode(head);
        if (text.indexOf('\0') >= 0) {
            return false; // an image or a profile, which may hold such a table inside
        }
        return text.contains("BEGIN_DATA")
                || text.stripLeading().startsWith("CGATS")
                || text.stripLeading().startsWith("ISO28178")
                || text.lines()
                        .limit(50)
                        .anyMatch(
                                line ->
                                        Columns.looksLikeHeading(Words.of(line, false))
                                                || Columns.looksLikeHeading(Words.of(line, true)));
    }

    /**
     * Reads a file.
     *
     * @throws Problem when it cannot be read or used; names the file and the line
     */
    public static MeasurementFile read(Path file) throws Problem {
        String name = String.valueOf(file.getFileName());
        try {
            if (Files.size(file) > MAX_BYTES) {
                throw tooLarge(name);
            }
            return read(name, Files.readAllBytes(file));
        } catch (IOException e) {
            throw Problem.input(name, "cannot be read. Check that it exists and may be read.", e);
        }
    }

    /**
     * Reads a file's bytes.
     *
     * @param name file name for messages
     * @throws Problem when they cannot be used; names the file and the line
     */
    public static MeasurementFile read(String name, byte[] bytes) throws Problem {
        if (bytes.length > MAX_BYTES) {
            throw tooLarge(name);
        }
        TextTables text = TextTables.parse(name, decode(bytes));
        List<String> notes = new ArrayList<>(text.notes());
        TextTables.Table table = choose(name, text.tables(), notes);
        List<MeasuredPatch> patches = new PatchReader(name, table, notes).read();
        return new MeasurementFile(
                name, patches, condition(text.keywords()), text.keywords(), notes);
    }

    /** The first table with RGB and colour, and those that carry it on with other patches. */
    private static TextTables.Table choose(
            String name, List<TextTables.Table> tables, List<String> notes) throws Problem {
        TextTables.Table chosen = null;
        Set<String> ids = new HashSet<>();
        List<TextTables.Row> rows = new ArrayList<>();
        int left = 0;
        for (TextTables.Table table : tables) {
            Columns columns = Columns.of(table.fields());
            boolean usable = !columns.rgb().isEmpty() && columns.hasColour();
            if (!usable || table.rows().isEmpty()) {
                left++;
            } else if (chosen == null
                    || (table.fields().equals(chosen.fields())
                            && columns.id() >= 0
                            && table.rows().stream()
                                    .noneMatch(r -> ids.contains(r.cells().get(columns.id()))))) {
                chosen = chosen == null ? table : chosen;
                rows.addAll(table.rows());
                if (columns.id() >= 0) {
                    table.rows().forEach(r -> ids.add(r.cells().get(columns.id())));
                }
            } else {
                left++;
            }
        }
        if (chosen == null) {
            Optional<TextTables.Table> joined = TableJoin.codesWithColours(tables);
            if (joined.isEmpty() || joined.get().rows().isEmpty()) {
                throw unusable(name, tables);
            }
            notes.add("RGB codes and readings stand in two tables; joined by patch name.");
            return joined.get();
        }
        if (left > 0) {
            notes.add("Further tables in the file were not used: " + left + ".");
        }
        return new TextTables.Table(chosen.fields(), rows);
    }

    private static Problem unusable(String name, List<TextTables.Table> tables) {
        if (tables.isEmpty()) {
            return Problem.input(
                    name, "no measurement table found (BEGIN_DATA_FORMAT, BEGIN_DATA).");
        }
        Columns columns = Columns.of(tables.get(0).fields());
        if (columns.rgb().isEmpty() && columns.cmyk()) {
            return Problem.input(
                    name,
                    "only CMYK columns. printassay needs the RGB codes that were printed (columns"
                            + " RGB_R, RGB_G, RGB_B).");
        }
        if (columns.rgb().isEmpty()) {
            return Problem.input(
                    name, "the columns RGB_R, RGB_G and RGB_B are missing. Export them with it.");
        }
        if (!columns.hasColour()) {
            return Problem.input(
                    name,
                    "no colour columns: LAB_L, LAB_A, LAB_B or XYZ_X, XYZ_Y, XYZ_Z or spectral"
                            + " ones (SPECTRAL_NM380 and on) are needed.");
        }
        return Problem.input(name, "the measurement table has no rows.");
    }

    private static Optional<Condition> condition(Map<String, String> keywords) {
        Set<Condition> found = new HashSet<>();
        keywords.forEach(
                (key, value) -> {
                    Matcher matcher = CONDITION.matcher(value.toUpperCase(Locale.ROOT));
                    while (matcher.find()) {
                        found.add(Condition.valueOf("M" + matcher.group(1)));
                    }
                });
        return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
    }

    private static String decode(byte[] bytes) {
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE);
        }
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
            return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE);
        }
        try {
            String text =
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            return new String(bytes, StandardCharsets.ISO_8859_1);
        }
    }

    private static Problem tooLarge(String name) {
        return Problem.input(name, "larger than 64 MB, too large for a measurement file.");
    }
}
