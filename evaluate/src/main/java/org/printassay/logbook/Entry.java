package org.printassay.logbook;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One evaluation in the logbook, without its contents.
 *
 * @param id its number; never used again
 * @param series printer, paper and route
 * @param readAt when the print was read, as far as known
 * @param addedAt when it came into this logbook
 * @param chart id of the chart; null when unknown
 * @param print print number from the sheet code; null when unknown
 * @param manner how it was read: only prints read alike make a trend
 * @param calibration checksum of the scanner's calibration; null when there is none
 * @param note what the user wrote; null for nothing
 * @param baseline whether it is part of the baseline of its series
 */
public record Entry(
        long id,
        Series series,
        Instant readAt,
        Instant addedAt,
        @Nullable String chart,
        @Nullable Integer print,
        String manner,
        @Nullable String calibration,
        @Nullable String note,
        boolean baseline) {
    /** Whether figures of both may stand in one trend, and both in one baseline. */
    boolean belongsWith(Entry other) {
        return BaselineKey.of(this).equals(BaselineKey.of(other));
    }
}
