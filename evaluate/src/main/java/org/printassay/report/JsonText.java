package org.printassay.report;

import com.fasterxml.jackson.databind.JsonNode;

/** JSON as all files of ours are laid out. */
public final class JsonText {
    private JsonText() {}

    /** The text of a file, with a line end at its end. */
    public static String write(JsonNode node) {
        return JsonLayout.write(node);
    }
}
