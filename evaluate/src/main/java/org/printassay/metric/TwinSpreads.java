package org.printassay.metric;

import java.util.NavigableMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.reading.Repeatability;

/**
 * How far twins of neutrals differ, by range of levels.
 *
 * @param levels all that were read, by level
 * @param repeats how well the instrument repeats; null where it is not known
 */
record TwinSpreads(NavigableMap<Integer, LevelData> levels, @Nullable Repeatability repeats) {
    private static final int PAPER = 255;
    private static final int FEWEST_FREEDOM = 10;

    /** Pooled spread over levels, or over all levels when these have too few twins. */
    TwinSpread of(int lowest, int highest, ToDoubleFunction<Lab> value) {
        TwinSpread zone = pooled(lowest, highest, value);
        return zone.freedom() >= FEWEST_FREEDOM ? zone : pooled(0, PAPER, value);
    }

    /**
     * Random error of one printed patch: the spread between twins; without twins how well the
     * instrument repeats, which is the least that it can be.
     */
    TwinSpread printed(ToDoubleFunction<Lab> value) {
        TwinSpread inked = pooled(0, PAPER - 1, value);
        TwinSpread twins = inked.known() ? inked : pooled(0, PAPER, value);
        return twins.known() || repeats == null
                ? twins
                : new TwinSpread(value.applyAsDouble(repeats.each()), repeats.freedom());
    }

    /** Random error of one patch of bare paper, which has no ink that could differ. */
    TwinSpread paper(ToDoubleFunction<Lab> value) {
        TwinSpread own = pooled(PAPER, PAPER, value);
        return own.known() ? own : printed(value);
    }

    private TwinSpread pooled(int lowest, int highest, ToDoubleFunction<Lab> value) {
        double squares = 0;
        int freedom = 0;
        for (LevelData data : levels.subMap(lowest, true, highest, true).values()) {
            if (data.count() >= 2) {
                double middle = data.kept().stream().mapToDouble(value).average().orElseThrow();
                squares +=
                        data.kept().stream()
                                .mapToDouble(lab -> Math.pow(value.applyAsDouble(lab) - middle, 2))
                                .sum();
                freedom += data.count() - 1;
            }
        }
        return new TwinSpread(freedom == 0 ? Double.NaN : Math.sqrt(squares / freedom), freedom);
    }
}
