package org.printassay.reading;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which readings of one code count. */
public final class Undoubted {
    private Undoubted() {}

    /**
     * Readings of one code without doubtful flags; all of them where there are no others. Where
     * more are uneven than not, that is of their tone in this scan and no fault of a place: they
     * count too, lest a few that look even stand for all.
     */
    public static List<Reading> of(List<Reading> readings) {
        Map<Set<ReadingFlag>, List<Reading>> byDoubts =
                readings.stream().collect(Collectors.groupingBy(Undoubted::doubts));
        List<Reading> good = byDoubts.getOrDefault(Set.of(), List.of());
        List<Reading> uneven = byDoubts.getOrDefault(Set.of(ReadingFlag.UNEVEN), List.of());
        if (good.isEmpty()) {
            return readings;
        }
        return uneven.size() > good.size()
                ? Stream.concat(good.stream(), uneven.stream()).toList()
                : good;
    }

    private static Set<ReadingFlag> doubts(Reading reading) {
        return reading.flags().stream()
                .filter(ReadingFlag.DOUBTFUL::contains)
                .collect(Collectors.toSet());
    }
}
