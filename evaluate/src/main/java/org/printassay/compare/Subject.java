package org.printassay.compare;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparability.Reason;
import org.printassay.evaluation.PrintDetails;

/** What a comparison may speak of. */
public enum Subject {
    /** One print each and no known spread: nothing can be said beyond these prints. */
    PRINTS("prints", "print"),
    /** Papers on one printer, by repeats or a known spread. */
    PAPERS("papers", "paper"),
    /** One paper on several printers. */
    PRINTERS("printers", "printer"),
    /** One paper and printer by several routes. */
    ROUTES("routes", "route"),
    /** Several papers on several printers. */
    COMBINATIONS("combinations", "combination");

    private final String many;
    private final String one;

    Subject(String many, String one) {
        this.many = many;
        this.one = one;
    }

    /** In the plural; also the name in files. */
    public String many() {
        return many;
    }

    /** In the singular. */
    public String one() {
        return one;
    }

    /**
     * The subject of sides.
     *
     * @param spreadKnown whether it is known how prints of one side differ among themselves
     */
    static Subject of(List<Side> sides, boolean spreadKnown) {
        return spreadKnown ? differing(sides) : PRINTS;
    }

    /** In what sides differ, known or not how surely; prints where papers are not said. */
    static Subject differing(List<Side> sides) {
        if (sides.stream().anyMatch(side -> plain(side, PrintDetails::paper).isEmpty())) {
            return PRINTS;
        }
        boolean printers = differ(sides, PrintDetails::printer);
        if (differ(sides, PrintDetails::paper)) {
            return printers ? COMBINATIONS : PAPERS;
        }
        return printers ? PRINTERS : ROUTES;
    }

    /** What cannot be told when sides differ in more than one respect. */
    static Optional<Caution> mixture(List<Side> sides) {
        boolean papers = differ(sides, PrintDetails::paper);
        boolean printers = differ(sides, PrintDetails::printer);
        boolean routes = differ(sides, PrintDetails::route);
        if ((papers ? 1 : 0) + (printers ? 1 : 0) + (routes ? 1 : 0) < 2) {
            return Optional.empty();
        }
        String what =
                papers && printers && routes
                        ? "Papers, printers and routes all"
                        : (papers ? "Papers" : "Printers")
                                + " and "
                                + (papers && printers ? "printers" : "routes")
                                + " both";
        return Optional.of(
                new Caution(
                        Reason.MIXTURE,
                        what
                                + " differ, or are not said for all: between sides that differ in"
                                + " more than one of them, which of them makes the difference"
                                + " cannot be told."));
    }

    static boolean differ(List<Side> sides, Function<PrintDetails, @Nullable String> said) {
        return sides.stream().map(side -> plain(side, said)).distinct().count() > 1;
    }

    private static String plain(Side side, Function<PrintDetails, @Nullable String> said) {
        return PrintDetails.key(said.apply(side.prints().get(0).details()));
    }
}
