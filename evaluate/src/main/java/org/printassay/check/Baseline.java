package org.printassay.check;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.PrintLabel;
import org.printassay.evaluation.Evaluation;

/**
 * What a print is held against: one print, or several whose mean shows the printer as it should be.
 *
 * @param prints at least one, in the order of time
 * @param logbook the logbook that they are kept in; null when the user named a file
 * @param entries their numbers there
 */
public record Baseline(List<Evaluation> prints, @Nullable String logbook, List<Long> entries) {
    private static final int MOST_NUMBERS = 10;

    public Baseline {
        prints = List.copyOf(prints);
        entries = List.copyOf(entries);
        if (prints.isEmpty()) {
            throw new IllegalArgumentException("a baseline needs a print");
        }
    }

    /** One print that the user named. */
    public static Baseline of(Evaluation print) {
        return new Baseline(List.of(print), null, List.of());
    }

    /** The last of its prints. */
    public Evaluation newest() {
        return prints.get(prints.size() - 1);
    }

    /** What it was read from, or where it is kept. */
    public String name() {
        if (logbook == null) {
            return PrintLabel.byFile(newest());
        }
        String numbers =
                entries.stream()
                        .limit(MOST_NUMBERS)
                        .map(String::valueOf)
                        .collect(Collectors.joining(", "));
        String more = entries.size() > MOST_NUMBERS ? ", ..." : "";
        return (prints.size() == 1 ? "a print" : "the mean of " + prints.size() + " prints")
                + " in "
                + logbook
                + " (no. "
                + numbers
                + more
                + ")";
    }
}
