package org.printassay.compare;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.Reading;

/**
 * Whether prints were made from one chart: by its id where both have one; else, as for measurement
 * files that came without their chart, by the codes that they have in common.
 */
public final class ChartIdentity {
    /**
     * So many of the codes of the larger must be common where a chart is not known: some patches
     * may have been left out.
     */
    private static final double COMMON = 0.8;

    private ChartIdentity() {}

    /** Whether two prints are of different charts, as far as that can be told. */
    public static boolean differ(Evaluation one, Evaluation other) {
        String a = one.chartId();
        String b = other.chartId();
        if (known(a, b)) {
            return differ(a, b);
        }
        Set<Rgb8> before = codes(one);
        Set<Rgb8> after = codes(other);
        Set<Rgb8> common = new HashSet<>(before);
        common.retainAll(after);
        return common.size() < COMMON * Math.max(before.size(), after.size());
    }

    /** Whether two ids are of different charts; an id that is not known differs from none. */
    public static boolean differ(@Nullable String one, @Nullable String other) {
        return one != null && other != null && !one.equals(other);
    }

    /** Whether both ids are known, and no codes need to be looked at. */
    public static boolean known(@Nullable String one, @Nullable String other) {
        return one != null && other != null;
    }

    /** Whether any two of some prints are of different charts. */
    static boolean anyDiffer(List<Evaluation> prints) {
        for (int i = 0; i < prints.size(); i++) {
            for (int k = 0; k < i; k++) {
                if (differ(prints.get(i), prints.get(k))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Set<Rgb8> codes(Evaluation print) {
        return print.patches().stream().map(Reading::rgb).collect(Collectors.toSet());
    }
}
