package org.printassay.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparability.Reason;
import org.printassay.compare.PrintLabel;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.problem.Problem;

/**
 * Whether a print may be checked against a baseline. What may not is refused as input that does not
 * fit, before anything is judged: it is no result of a check, so it is neither failed nor untold.
 */
final class Fitness {
    private static final Caution ROUTE_UNSAID =
            new Caution(
                    Reason.ROUTE_UNSAID,
                    "Only one of them says its route (profile, intent, driver settings): another"
                            + " route prints otherwise. Name it with --route when evaluating.");

    private Fitness() {}

    /**
     * What readers must know.
     *
     * @throws Problem when the two must not be compared: usage for the same file twice, chart for
     *     another chart, else input
     */
    static Comparability judge(Baseline baseline, Evaluation print) throws Problem {
        String where = PrintLabel.byFile(print);
        List<Evaluation> all = new ArrayList<>(baseline.prints());
        all.add(print);
        Comparability found = Comparability.of(all);
        for (Caution caution : found.cautions()) {
            refuse(where, caution);
        }
        boolean routesSaid = true;
        for (Evaluation one : baseline.prints()) {
            named(where, "printer", one.details().printer(), print.details().printer());
            named(where, "paper", one.details().paper(), print.details().paper());
            String before = one.details().route();
            String after = print.details().route();
            named(where, "route", before, after);
            routesSaid &= PrintDetails.key(before).equals(PrintDetails.key(after));
        }
        return routesSaid ? found : found.with(ROUTE_UNSAID);
    }

    private static void refuse(String where, Caution caution) throws Problem {
        switch (caution.reason()) {
            case SAME_INPUT ->
                    throw Problem.usage(
                            where
                                    + ": the baseline was read from the same file. Name a print and"
                                    + " another print as its baseline.");
            case CHART ->
                    throw Problem.chart(
                            where,
                            "was printed from another chart than the baseline. Print the baseline's"
                                    + " chart again.");
            case THRESHOLD -> {
                // Nothing that a check looks at depends on what counts as visible.
            }
            default -> {
                if (caution.reason().refuses()) {
                    throw Problem.input(
                            where, "cannot be checked: " + uncapitalised(caution.text()));
                }
            }
        }
    }

    private static String uncapitalised(String text) {
        boolean abbreviated = text.length() > 1 && Character.isUpperCase(text.charAt(1));
        return abbreviated ? text : Character.toLowerCase(text.charAt(0)) + text.substring(1);
    }

    private static void named(
            String where, String what, @Nullable String before, @Nullable String after)
            throws Problem {
        String plain = PrintDetails.key(before);
        String other = PrintDetails.key(after);
        if (!plain.isEmpty() && !other.isEmpty() && !plain.equals(other)) {
            throw Problem.input(
                    where,
                    "is of "
                            + what
                            + " \""
                            + after
                            + "\", the baseline of \""
                            + before
                            + "\". Name a baseline of the same "
                            + what
                            + "; compare tells papers, printers and routes apart.");
        }
    }
}
