package org.printassay.compare;

import java.util.List;

/**
 * Verdicts on many differences looked at together. Of those called differences at most one in
 * twenty is chance, on average; where nothing differs at all, a comparison calls anything a
 * difference in at most one case of twenty.
 *
 * <p>Source: Benjamini, Hochberg (1995), Controlling the false discovery rate, J. R. Statist. Soc.
 * B 57(1), 289-300: the largest i with p(i) at most i q / m, and all below it. Proven where figures
 * are independent or rise and fall together (Benjamini, Yekutieli 2001).
 */
public final class Verdicts {
    /** Share of chance among what is called a difference. */
    public static final double RATE = 0.05;

    private Verdicts() {}

    /**
     * Each with its verdict, in the same order; those without an interval are not counted among the
     * many.
     */
    static List<Judged> of(List<Difference> all) {
        double[] chances =
                all.stream()
                        .filter(d -> d.standard() != null)
                        .mapToDouble(Difference::chance)
                        .sorted()
                        .toArray();
        double largest = -1;
        for (int i = 1; i <= chances.length; i++) {
            if (chances[i - 1] <= RATE * i / chances.length) {
                largest = chances[i - 1];
            }
        }
        double held = largest;
        return all.stream().map(d -> new Judged(d, verdict(d, held))).toList();
    }

    private static DifferenceVerdict verdict(Difference d, double held) {
        if (d.standard() == null) {
            return DifferenceVerdict.NOT_TOLD;
        }
        if (!d.measurable()) {
            return DifferenceVerdict.NOT_MEASURABLE;
        }
        return d.chance() <= held ? DifferenceVerdict.DIFFERS : DifferenceVerdict.UNSURE;
    }
}
