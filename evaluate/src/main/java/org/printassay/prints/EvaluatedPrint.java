package org.printassay.prints;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.evaluation.SourceFile;
import org.printassay.metric.Extreme;
import org.printassay.metric.Wedge;
import org.printassay.report.SummaryPage;
import org.printassay.report.SummaryView;

/**
 * What is kept of one print's evaluation for the summary of many; the whole is in its own file.
 *
 * @param name what the print is called; also the folder of its results
 * @param chartId chart; null when not known
 * @param print print number
 * @param sheets sheets that were read
 * @param details what was said about it
 * @param files what it was read from
 * @param trust how colour was obtained
 * @param white absolute paper white; null when not judged
 * @param black absolute darkest neutral
 * @param density visual density of it
 * @param rmsDeltaL tone against its aim
 * @param shadows level and interval; null when not judged
 * @param highlights level and interval
 * @param meanDeltaCh of greys
 * @param cast their lean in words
 * @param gamutVolume cubic CIELAB units
 * @param evenness largest dE00 between twins
 * @param lines how many; null when not judged
 * @param bands how many; null when not judged
 * @param warnings their codes
 * @param findings what the report opens with
 * @param line for the page
 */
public record EvaluatedPrint(
        String name,
        @Nullable String chartId,
        @Nullable Integer print,
        List<Integer> sheets,
        PrintDetails details,
        List<SourceFile> files,
        String trust,
        @Nullable Lab white,
        @Nullable Lab black,
        @Nullable Double density,
        @Nullable Double rmsDeltaL,
        @Nullable Level shadows,
        @Nullable Level highlights,
        @Nullable Double meanDeltaCh,
        @Nullable String cast,
        @Nullable Double gamutVolume,
        @Nullable Double evenness,
        @Nullable Integer lines,
        @Nullable Integer bands,
        List<String> warnings,
        List<String> findings,
        SummaryView.Print line)
        implements ReadPrint {
    /**
     * A level that stands out, and between which ones the truth lies (95 %).
     *
     * @param best null when no level stands out
     * @param low null when not known
     * @param high null when not known
     */
    public record Level(@Nullable Integer best, @Nullable Integer low, @Nullable Integer high) {}

    /** What an evaluation comes to. */
    public static EvaluatedPrint of(String name, Evaluation e) {
        Extreme white = e.white();
        Extreme black = e.black();
        return new EvaluatedPrint(
                name,
                e.chartId(),
                e.print(),
                e.sheets(),
                e.details(),
                e.files(),
                e.trust().key(),
                white == null ? null : white.lab(),
                black == null ? null : black.lab(),
                black == null ? null : black.density(),
                e.tone() == null ? null : e.tone().rmsDeltaL(),
                level(e.shadows()),
                level(e.highlights()),
                e.neutrality() == null ? null : e.neutrality().meanDeltaCh(),
                e.neutrality() == null ? null : e.neutrality().cast().words(),
                e.colours() == null ? null : e.colours().gamutVolume(),
                e.evenness() == null ? null : e.evenness().maxDeltaE00(),
                e.surface() == null || e.surface().lines() == null
                        ? null
                        : e.surface().lines().size(),
                e.surface() == null || e.surface().bands() == null
                        ? null
                        : e.surface().bands().size(),
                e.warnings().stream().map(warning -> warning.code().key()).distinct().toList(),
                e.findings().stream().map(finding -> finding.text()).toList(),
                SummaryPage.line(name, about(e), e));
    }

    private static String about(Evaluation e) {
        List<String> parts = new ArrayList<>();
        add(parts, e.details().paper());
        add(parts, e.details().printer());
        add(parts, e.details().route());
        e.files().forEach(file -> parts.add(file.name()));
        return String.join(" \u00b7 ", parts);
    }

    private static void add(List<String> parts, @Nullable String part) {
        if (part != null) {
            parts.add(part);
        }
    }

    private static @Nullable Level level(@Nullable Wedge w) {
        if (w == null) {
            return null;
        }
        Wedge.Interval interval = w.interval();
        return new Level(
                w.best(),
                interval == null ? null : interval.low(),
                interval == null ? null : interval.high());
    }
}
