package org.printassay.report;

import java.util.List;

/**
 * What the page of several prints side by side shows.
 *
 * @param style style sheet and policy
 * @param simulated whether to say that nothing real was printed
 * @param columns prints, in order
 * @param rows one result for every print
 * @param curves tone curves; empty when fewer than two were judged
 * @param keys what the lines of the curves mean
 */
public record CompareView(
        PageStyle style,
        boolean simulated,
        List<Column> columns,
        List<Row> rows,
        List<Html> curves,
        List<Key> keys) {
    /** One print. */
    public record Column(
            String title,
            String description,
            String href,
            String trust,
            String finding,
            Html strip) {}

    /** One result, a fact for every print. */
    public record Row(String label, List<Fact> facts) {}

    /** A line of the curves. */
    public record Key(Html sample, String name) {}

    /** How many columns the table has, for the style sheet. */
    public String columnsClass() {
        return "columns-" + Math.min(4, columns.size());
    }
}
