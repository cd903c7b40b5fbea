package org.printassay.report;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/** JSON laid out for people too: whatever fits stands on one line, one reading a line. */
final class JsonLayout {
    private static final int LINE = 100;
    private static final int ROW_DEPTH = 2;
    private static final JsonStringEncoder QUOTER = JsonStringEncoder.getInstance();

    private JsonLayout() {}

    static String write(JsonNode node) {
        StringBuilder out = new StringBuilder(1 << 16);
        write(out, node, 0);
        return out.append('\n').toString();
    }

    private static void write(StringBuilder out, JsonNode node, int depth) {
        if (!node.isContainerNode() || node.isEmpty()) {
            line(out, node, Integer.MAX_VALUE);
            return;
        }
        if (depth > 0) {
            int start = out.length();
            boolean row = depth >= ROW_DEPTH && node.isObject();
            if (line(out, node, row ? Integer.MAX_VALUE : start + LINE - 2 * depth)) {
                return;
            }
            out.setLength(start);
        }
        List<String> keys = new ArrayList<>();
        List<JsonNode> values = new ArrayList<>();
        if (node.isObject()) {
            for (Map.Entry<String, JsonNode> entry : node.properties()) {
                keys.add(key(entry.getKey()));
                values.add(entry.getValue());
            }
        } else {
            for (JsonNode value : node) {
                keys.add("");
                values.add(value);
            }
        }
        String indent = "  ".repeat(depth + 1);
        out.append(node.isObject() ? '{' : '[');
        for (int i = 0; i < values.size(); i++) {
            out.append(i == 0 ? "\n" : ",\n").append(indent).append(keys.get(i));
            write(out, values.get(i), depth + 1);
        }
        out.append('\n').append("  ".repeat(depth)).append(node.isObject() ? '}' : ']');
    }

    /** Writes on one line; gives up, and says so, where that passes the end. */
    private static boolean line(StringBuilder out, JsonNode node, int end) {
        if (node.isObject()) {
            String separator = "{";
            for (Map.Entry<String, JsonNode> entry : node.properties()) {
                out.append(separator).append(key(entry.getKey()));
                if (!line(out, entry.getValue(), end)) {
                    return false;
                }
                separator = ", ";
            }
            out.append(node.isEmpty() ? "{}" : "}");
        } else if (node.isArray()) {
            out.append('[');
            for (Iterator<JsonNode> i = node.iterator(); i.hasNext(); ) {
                if (!line(out, i.next(), end)) {
                    return false;
                }
                out.append(i.hasNext() ? ", " : "");
            }
            out.append(']');
        } else if (node.isTextual()) {
            out.append('"').append(QUOTER.quoteAsString(node.asText())).append('"');
        } else {
            // Not node.toString(): that starts a whole object mapper.
            out.append(node.asText());
        }
        return out.length() <= end;
    }

    /** Our own keys: letters only, nothing to escape. */
    private static String key(String key) {
        return '"' + key + "\": ";
    }
}
