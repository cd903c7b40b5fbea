package org.printassay.report;

import java.util.List;

/**
 * What the page of a check shows.
 *
 * @param style style sheet and policy
 * @param simulated whether to say that nothing real was printed
 * @param title the outcome of everything, and of what
 * @param about baseline and tolerances
 * @param prints every print that was checked
 * @param rule how outcomes are decided
 * @param tolerances what the tolerances say of themselves
 * @param keys signs of outcomes
 */
public record CheckView(
        PageStyle style,
        boolean simulated,
        String title,
        String about,
        List<Print> prints,
        String rule,
        String tolerances,
        List<Key> keys) {
    /**
     * One print.
     *
     * @param id for anchors, unique in the page
     * @param name what it was read from
     * @param headline its outcome
     * @param sentences what follows, most consequential first
     * @param cautions what to keep in mind of this comparison
     * @param changes plot of every change against its tolerance
     * @param rows the same in numbers
     * @param decision how sure intervals are
     * @param curves tone and wedges before and now
     * @param surface lines and bands, one by one
     * @param patches patches furthest apart
     * @param patchesLead what is listed
     */
    public record Print(
            String id,
            String name,
            String headline,
            List<String> sentences,
            List<String> cautions,
            List<Html> changes,
            List<Row> rows,
            String decision,
            List<Html> curves,
            List<Fact> surface,
            List<Patch> patches,
            String patchesLead) {}

    /** One quantity in numbers. */
    public record Row(
            String label,
            String before,
            String after,
            String change,
            String half,
            String limit,
            String outcome) {}

    /** One patch. */
    public record Patch(
            String rgb,
            Swatch beforeSwatch,
            String before,
            Swatch afterSwatch,
            String after,
            String off) {}

    /** A sign and what it means. */
    public record Key(Html sample, String name) {}

    /** Whether there is one print alone. */
    public boolean single() {
        return prints.size() == 1;
    }
}
