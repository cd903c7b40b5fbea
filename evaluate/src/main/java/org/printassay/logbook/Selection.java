package org.printassay.logbook;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.PrintDetails;

/**
 * Which entries; what is null does not matter. An empty name selects prints where it was not said.
 *
 * @param since prints read at this time or later
 * @param manner begins like this
 * @param newest at most so many, the newest; 0 for all
 */
public record Selection(
        @Nullable String printer,
        @Nullable String paper,
        @Nullable String route,
        @Nullable Instant since,
        @Nullable String manner,
        int newest) {
    /** Every entry. */
    public static final Selection ALL = new Selection(null, null, null, null, null, 0);

    public Selection {
        printer = printer == null ? null : PrintDetails.plain(printer);
        paper = paper == null ? null : PrintDetails.plain(paper);
        route = route == null ? null : PrintDetails.plain(route);
        if (newest < 0) {
            throw new IllegalArgumentException("at most " + newest + " entries");
        }
    }

    /** Whether a series is among the selected. */
    boolean fits(Series series) {
        return fits(printer, series.printer())
                && fits(paper, series.paper())
                && fits(route, series.route());
    }

    private static boolean fits(@Nullable String wanted, String name) {
        return wanted == null || PrintDetails.same(wanted, name);
    }

    /** The same, with old ones too. */
    Selection ofAnyTime() {
        return new Selection(printer, paper, route, null, manner, 0);
    }

    /** Exactly one series. */
    public static Selection of(Series series) {
        return new Selection(series.printer(), series.paper(), series.route(), null, null, 0);
    }
}
