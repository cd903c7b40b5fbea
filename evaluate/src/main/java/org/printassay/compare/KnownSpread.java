package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * How prints differ though nothing changed, known beforehand, and where from.
 *
 * @param spread what is known
 * @param from where from, to stand in a sentence; empty when nothing is known
 * @param told which prints told it; empty when that is not said there
 */
public record KnownSpread(PrintSpread spread, String from, List<Told> told) {
    /** Nothing known. */
    public static final KnownSpread NONE = new KnownSpread(PrintSpread.UNKNOWN, "", List.of());

    /** Fewer prints than this tell their spread badly (common practice). */
    private static final int ENOUGH = 20;

    public KnownSpread {
        told = List.copyOf(told);
    }

    /**
     * Prints of one printer, paper and route.
     *
     * @param what which
     * @param fewest prints that any figure's deviation was told from
     * @param most the same of the figure with most
     */
    public record Told(String what, int fewest, int most) {
        private String words() {
            return (fewest == most ? most : fewest + " to " + most) + " prints of " + what;
        }
    }

    /** Whether so few prints told it that it is itself known badly. */
    public boolean fromFew() {
        return told.stream().anyMatch(one -> one.fewest < ENOUGH);
    }

    /** Whether anything is known. */
    public boolean known() {
        return !spread.deviations().isEmpty();
    }

    /** Both together; where from is the same. */
    public KnownSpread and(KnownSpread other) {
        List<Told> all = new ArrayList<>(told);
        all.addAll(other.told);
        return new KnownSpread(spread.and(other.spread), from.isEmpty() ? other.from : from, all);
    }

    /** Where from and over how many prints, to stand in a sentence. */
    public String words() {
        return told.isEmpty()
                ? from
                : from
                        + " ("
                        + told.stream().map(Told::words).collect(Collectors.joining("; "))
                        + ")";
    }
}
