package org.printassay.compare;

import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;

/** What a comparison may speak of. */
public enum Subject {
    /** One print each and no known spread: nothing can be said beyond these prints. */
    PRINTS("prints", "print"),
    /** Papers, by repeats or a known spread. */
    PAPERS("papers", "paper"),
    /** One paper on several printers. */
    PRINTERS("printers", "printer"),
    /** One paper and printer by several routes, or a mixture. */
    ROUTES("routes", "route");

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
        if (!spreadKnown || !allSay(sides, PrintDetails::paper)) {
            return PRINTS;
        }
        if (different(sides, PrintDetails::paper) > 1) {
            return PAPERS;
        }
        return different(sides, PrintDetails::printer) > 1 ? PRINTERS : ROUTES;
    }

    private static boolean allSay(List<Side> sides, Function<PrintDetails, @Nullable String> said) {
        return sides.stream().map(side -> said.apply(details(side))).allMatch(Objects::nonNull);
    }

    private static long different(List<Side> sides, Function<PrintDetails, @Nullable String> said) {
        return sides.stream().map(side -> said.apply(details(side))).distinct().count();
    }

    private static PrintDetails details(Side side) {
        return side.prints().get(0).details();
    }
}
