package org.printassay.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.printassay.evaluation.Evaluation;

/** Whether prints dried long enough, or at least for the same time, to be compared. */
final class DryingTimes {
    /** Prints dry for a day before colours settle (common practice, no source). */
    private static final double DRY_HOURS = 24;

    /** Before that, times that differ by less than this share count as the same. */
    private static final double ALIKE = 0.25;

    private DryingTimes() {}

    /** What is to be said of them; empty when they are dry, or dried alike, or none is known. */
    static Optional<Comparability.Caution> caution(List<Evaluation> prints) {
        List<Double> said =
                prints.stream()
                        .map(e -> e.details().driedHours())
                        .filter(Objects::nonNull)
                        .map(Double::valueOf)
                        .toList();
        double least = said.stream().mapToDouble(h -> h).min().orElse(DRY_HOURS);
        double most = said.stream().mapToDouble(h -> h).max().orElse(DRY_HOURS);
        boolean wet = least < DRY_HOURS && least < (1 - ALIKE) * most;
        if (wet) {
            return caution(
                    "They dried for different times ("
                            + hours(least)
                            + " to "
                            + hours(most)
                            + " hours): prints change until they are dry. Let all dry for a day.");
        }
        return said.isEmpty() || said.size() == prints.size()
                ? Optional.empty()
                : caution(
                        "How long some of them dried is not said: prints change until they are"
                                + " dry.");
    }

    private static Optional<Comparability.Caution> caution(String text) {
        return Optional.of(new Comparability.Caution(Comparability.Reason.DRYING, text));
    }

    private static String hours(double hours) {
        return hours == Math.rint(hours) ? String.valueOf((long) hours) : String.valueOf(hours);
    }
}
