package org.printassay.report;

import java.util.List;

/**
 * What the page of many checks shows.
 *
 * @param style style sheet and policy
 * @param checked in words, what became of how many prints
 * @param tolerances name of the tolerances
 * @param prints those that were checked, weightiest outcome first
 * @param failed those that could not be
 * @param skipped files that were passed over
 */
public record CheckSummaryView(
        PageStyle style,
        String checked,
        String tolerances,
        List<Print> prints,
        List<SummaryView.Left> failed,
        List<SummaryView.Left> skipped) {
    public CheckSummaryView {
        prints = List.copyOf(prints);
        failed = List.copyOf(failed);
        skipped = List.copyOf(skipped);
    }

    /**
     * One print in one line.
     *
     * @param href relative address of its check
     * @param sign of its outcome
     * @param first the weightiest sentence
     * @param baseline what it was held against
     */
    public record Print(String name, String href, Sign sign, String first, String baseline) {}
}
