package org.printassay.prints;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Gives prints names that no two share, however letters are cased, and that folders can have. */
final class PrintNames {
    /** Results are written beside it under a longer name; most file systems hold 255 bytes. */
    private static final int LONGEST = 60;

    private final Set<String> taken =
            new HashSet<>(
                    List.of(
                            "summary.json",
                            "summary.csv",
                            "checks.json",
                            "checks.csv",
                            "index.html"));

    /**
     * A name of its own.
     *
     * @param wanted as it would best be; folders in it are joined by hyphens
     */
    String give(String wanted) {
        String plain =
                wanted.replaceAll("[\\p{C}/\\\\:*?\"<>|]+", "-")
                        .replaceAll("^[.\\s]+", "")
                        .replaceAll("[.\\s]+$", "");
        int end = Math.min(LONGEST, plain.codePointCount(0, plain.length()));
        String name = plain.substring(0, plain.offsetByCodePoints(0, end));
        if (name.isEmpty()) {
            name = "print";
        }
        String free = name;
        for (int i = 2; !taken.add(free.toLowerCase(Locale.ROOT)); i++) {
            free = name + "-" + i;
        }
        return free;
    }
}
