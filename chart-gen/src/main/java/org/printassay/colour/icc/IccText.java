package org.printassay.colour.icc;

import org.jspecify.annotations.Nullable;

/** Description texts: {@code desc} of version 2, {@code mluc} of version 4, plain {@code text}. */
final class IccText {
    private static final int MAX_CHARACTERS = 200;

    private IccText() {}

    /** The description, safe to print; empty when missing or damaged: a name decides nothing. */
    static String description(@Nullable IccBytes tag) {
        if (tag == null) {
            return "";
        }
        try {
            return clean(read(tag));
        } catch (IccException e) {
            return "";
        }
    }

    private static String read(IccBytes tag) throws IccException {
        return switch (tag.ascii(0, 4)) {
            case "desc" -> tag.ascii(12, tag.u32(8));
            case "text" -> tag.ascii(8, tag.size() - 8);
            case "mluc" -> localised(tag);
            default -> "";
        };
    }

    /** English when there is some, else the first record. */
    private static String localised(IccBytes tag) throws IccException {
        long count = Math.min(tag.u32(8), 100);
        String first = "";
        for (int i = 0; i < count; i++) {
            long at = 16 + 12L * i;
            String text = tag.utf16(tag.u32(at + 8), tag.u32(at + 4));
            if (tag.ascii(at, 2).equals("en")) {
                return text;
            }
            first = i == 0 ? text : first;
        }
        return first;
    }

    private static String clean(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints()
                .takeWhile(c -> c != 0)
                .filter(c -> !Character.isISOControl(c) && Character.getType(c) != Character.FORMAT)
                .limit(MAX_CHARACTERS)
                .forEach(clean::appendCodePoint);
        return clean.toString().strip();
    }
}
