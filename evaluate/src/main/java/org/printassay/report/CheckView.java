package org.printassay.report;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a check shows, ready to be written.
 *
 * @param style style sheet and policy
 * @param simulated whether to say that nothing real was printed
 * @param title the outcome, and of what
 * @param about baseline and tolerances
 * @param headline the outcome in a sentence
 * @param sentences what follows, most consequential first
 * @param cautions what to keep in mind of this comparison
 * @param changes every change against its tolerance; null when nothing was compared
 * @param keys signs of outcomes
 * @param rows the same in numbers
 * @param decision how sure intervals are
 * @param spread where it is known from how unchanged prints lie apart
 * @param curvesLead what lines mean
 * @param curves tone and wedges before and now
 * @param surface lines and bands, one by one
 * @param patchesLead what is listed
 * @param patches patches furthest apart
 * @param rule how outcomes are decided
 * @param tolerances what the tolerances say of themselves
 * @param identity number that checks of other prints do not have
 */
public record CheckView(
        PageStyle style,
        boolean simulated,
        String title,
        String about,
        String headline,
        List<String> sentences,
        List<String> cautions,
        @Nullable Plot changes,
        List<Sign> keys,
        List<Row> rows,
        String decision,
        String spread,
        String curvesLead,
        List<Plot> curves,
        List<Fact> surface,
        String patchesLead,
        List<Patch> patches,
        String rule,
        String tolerances,
        long identity) {
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
}
