package org.printassay.colour;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Reads the published tables of src/test/resources/published: comments, a header line, rows. */
public final class Published {
    private Published() {}

    /** Rows of a table, each by column name. */
    public static List<Map<String, String>> rows(String name) {
        String text = new String(bytes(name), StandardCharsets.UTF_8);
        List<Map<String, String>> rows = new ArrayList<>();
        String[] header = {};
        for (String line : text.lines().toList()) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split(",", -1);
            if (header.length == 0) {
                header = cells;
                continue;
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < header.length; i++) {
                row.put(header[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    /** A number of a row. */
    public static double number(Map<String, String> row, String column) {
        return Double.parseDouble(text(row, column));
    }

    /** A cell of a row. */
    public static String text(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    /** A whole file. */
    public static byte[] bytes(String name) {
        try (InputStream in = Published.class.getResourceAsStream("/published/" + name)) {
            assertNotNull(in, name);
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
