package org.printassay.metric;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a shadow or highlight wedge tells; definitions in the design, section 8.
 *
 * <p>Shadows: {@code merged} = blockedThrough, {@code separated} = firstSeparated, {@code best} =
 * firstVisible; interval = [blockedThrough + 1, firstSeparated]. Highlights: {@code merged} =
 * mergedFrom, {@code separated} = lastSeparated, {@code best} = lastVisible; interval =
 * [lastSeparated, mergedFrom - 1].
 *
 * @param threshold visual threshold, dL*
 * @param merged the outermost level of the run that surely merges; null when none does
 * @param separated the innermost level from which all are surely separated; null when none
 * @param best single best estimate; null when not judged
 * @param interval where the truth lies (95 %); null when either end is unknown
 * @param visibleSteps levels found by a greedy chain, each at least the threshold beyond the last
 * @param aimVisibleSteps the same count on the aim
 * @param slopeAgainstAim mean local contrast inside the wedge beyond {@code best}, 1 = as the aim
 * @param reversalLevels levels at which tone significantly runs backwards
 * @param steps every tested level, ascending
 */
public record Wedge(
        double threshold,
        @Nullable Integer merged,
        @Nullable Integer separated,
        @Nullable Integer best,
        @Nullable Interval interval,
        int visibleSteps,
        int aimVisibleSteps,
        @Nullable Double slopeAgainstAim,
        List<Integer> reversalLevels,
        List<LevelStep> steps) {
    /** A best estimate this near to the level that surely shows is worth telling. */
    private static final int CLOSELY = 5;

    /** An interval of more levels than this is told as one. */
    private static final int NARROW = 7;

    public Wedge {
        reversalLevels = List.copyOf(reversalLevels);
        steps = List.copyOf(steps);
    }

    /**
     * Whether the first visible level is known so roughly that its interval must be told instead of
     * the best estimate.
     */
    public boolean isRough() {
        if (interval == null || best == null || separated == null) {
            return false;
        }
        return Math.abs(separated - best) > CLOSELY || interval.high() - interval.low() > NARROW;
    }

    /** Levels from {@code low} to {@code high}, both included. */
    public record Interval(int low, int high) {}
}
