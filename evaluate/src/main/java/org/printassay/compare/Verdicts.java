package org.printassay.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Verdicts on many differences looked at together. Of those called differences at most one in
 * twenty is chance, on average; where nothing differs at all, a comparison calls anything a
 * difference in at most one case of twenty.
 *
 * <p>Source: Benjamini, Hochberg (1995), Controlling the false discovery rate, J. R. Statist. Soc.
 * B 57(1), 289-300: the largest i with p(i) at most i q / m, and all below it. Proven where figures
 * are independent or rise and fall together (Benjamini, Yekutieli 2001).
 */
final class Verdicts {
    /** Share of chance among what is called a difference. */
    static final double RATE = 0.05;

    private Verdicts() {}

    /** Verdict of each; those without an interval are not counted among the many. */
    static Map<Difference, Verdict> of(List<Difference> all) {
        List<Difference> told =
                new ArrayList<>(all.stream().filter(d -> d.standard() != null).toList());
        told.sort(Comparator.comparingDouble(Difference::chance));
        int held = 0;
        for (int i = 1; i <= told.size(); i++) {
            if (told.get(i - 1).chance() <= RATE * i / told.size()) {
                held = i;
            }
        }
        Map<Difference, Verdict> verdicts = new IdentityHashMap<>();
        for (int i = 0; i < told.size(); i++) {
            Difference d = told.get(i);
            verdicts.put(
                    d,
                    !d.measurable()
                            ? Verdict.NOT_MEASURABLE
                            : i < held ? Verdict.DIFFERS : Verdict.UNSURE);
        }
        all.stream()
                .filter(d -> d.standard() == null)
                .forEach(d -> verdicts.put(d, Verdict.NOT_TOLD));
        return verdicts;
    }
}
