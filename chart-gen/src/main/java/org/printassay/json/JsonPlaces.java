package org.printassay.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;

/** Where values stand in a JSON text, and how alike two names are. */
final class JsonPlaces {
    private static final JsonFactory FACTORY = new JsonFactory();

    private JsonPlaces() {}

    /** {@code ", line 12"} of the value at a JSON pointer, or nothing when there is none. */
    static String line(byte[] bytes, String pointer) {
        try (JsonParser parser = FACTORY.createParser(bytes)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                boolean value = token != JsonToken.FIELD_NAME && !token.isStructEnd();
                if (value && at(parser).equals(pointer)) {
                    return ", line " + parser.currentTokenLocation().getLineNr();
                }
            }
            return "";
        } catch (IOException e) {
            return "";
        }
    }

    private static String at(JsonParser parser) {
        boolean starts =
                parser.currentToken() == JsonToken.START_OBJECT
                        || parser.currentToken() == JsonToken.START_ARRAY;
        var context = parser.getParsingContext();
        var own = starts ? context.getParent() : context;
        return own == null ? "" : own.pathAsPointer().toString();
    }

    /**
     * How many characters must be changed, added or left out to make one word of another (V.
     * Levenshtein, "Binary codes capable of correcting deletions, insertions, and reversals",
     * 1966).
     */
    static int edits(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[other.length()];
    }
}
