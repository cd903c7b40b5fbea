package org.printassay.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;

/**
 * How prints were read and judged, where it decides what their figures mean.
 *
 * @param trust name of how colour was obtained; null when not known
 * @param space RGB encoding that codes are judged in; null when not known
 * @param threshold of visible steps, L*; null when none was judged
 * @param aim of tone; null when none was judged
 */
public record Manner(
        @Nullable String trust,
        @Nullable String space,
        @Nullable Double threshold,
        @Nullable String aim) {
    /** What holds for prints that may be compared. */
    public static Manner of(List<Evaluation> prints) {
        Evaluation first = prints.get(0);
        return new Manner(
                first.trust().key(),
                first.spaceKey(),
                prints.stream()
                        .map(Manner::threshold)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null),
                prints.stream()
                        .map(Evaluation::tone)
                        .filter(Objects::nonNull)
                        .map(Tone::aim)
                        .findFirst()
                        .orElse(null));
    }

    static @Nullable Double threshold(Evaluation print) {
        Wedge wedge = print.shadows() != null ? print.shadows() : print.highlights();
        return wedge == null ? null : Double.valueOf(wedge.threshold());
    }

    /**
     * In what another one differs, in words; empty where both say the same, or one says nothing.
     */
    Optional<String> against(Manner other) {
        return differs("colours obtained as", trust, other.trust)
                .or(() -> differs("RGB encoding", space, other.space))
                .or(() -> differs("threshold", threshold, other.threshold))
                .or(() -> differs("aim", aim, other.aim));
    }

    private static Optional<String> differs(
            String what, @Nullable Object mine, @Nullable Object its) {
        return mine == null || its == null || mine.equals(its)
                ? Optional.empty()
                : Optional.of(what + " " + mine + " there, " + its + " here");
    }
}
