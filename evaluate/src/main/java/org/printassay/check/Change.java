package org.printassay.check;

import org.jspecify.annotations.Nullable;

/**
 * What became of one quantity.
 *
 * @param place where on the sheet or in the tones it is, in words; empty for all of it
 * @param before the baseline's figure; null where a change is told by both prints together
 * @param after the print's figure; null likewise
 * @param change after minus before
 * @param standard standard uncertainty of the change: reading both prints, and how unchanged prints
 *     lie apart; null when it cannot be told
 * @param halfWidth U of the {@link DecisionRule}; null likewise
 * @param limit largest change that is allowed
 * @param spread standard deviation between unchanged prints that was used
 * @param spreadSeen whether that spread was seen among prints ({@link Check#seen}), not stated by
 *     the tolerances
 * @param outcome what follows
 */
public record Change(
        Quantity quantity,
        String place,
        @Nullable Double before,
        @Nullable Double after,
        double change,
        @Nullable Double standard,
        @Nullable Double halfWidth,
        double limit,
        double spread,
        boolean spreadSeen,
        Outcome outcome) {
    /** The same where the scans may have made it: then no change is sure. */
    Change inDoubt() {
        return outcome == Outcome.WITHIN
                ? this
                : new Change(
                        quantity,
                        place,
                        before,
                        after,
                        change,
                        standard,
                        halfWidth,
                        limit,
                        spread,
                        spreadSeen,
                        Outcome.CANNOT_TELL);
    }

    /** Whether it is in doubt by the scans alone. */
    boolean isByScans() {
        return outcome == Outcome.CANNOT_TELL
                && DecisionRule.decide(change, halfWidth, limit) != Outcome.CANNOT_TELL;
    }

    /** How far the change goes into its tolerance; 1 is at the limit. */
    public double share() {
        return change / limit;
    }
}
