package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparison;
import org.printassay.compare.Question;
import org.printassay.compare.Side;
import org.printassay.compare.Subject;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Finding;
import org.printassay.evaluation.SourceFile;
import org.printassay.report.plot.RangeStrip;

/** A comparison on one page: one file, no network, no scripts. */
public final class ComparisonPage {
    private ComparisonPage() {}

    /**
     * How a comparison is shown.
     *
     * @param first the question to show first; empty for the usual order
     * @param hrefs relative address of a report for names of sides that have one
     * @param simulated whether the prints are not real, to be said at the top
     */
    public record Showing(Optional<Question> first, Map<String, String> hrefs, boolean simulated) {
        /** Nothing special. */
        public static final Showing USUAL = new Showing(Optional.empty(), Map.of(), false);

        public Showing {
            hrefs = Map.copyOf(hrefs);
        }
    }

    /** The page. */
    public static String write(Comparison comparison, Showing showing) {
        return write(view(comparison, showing));
    }

    static String write(ComparisonView view) {
        StringOutput out = new StringOutput(1 << 17);
        ReportPage.engine().render("comparison.jte", view, out);
        return HarmlessText.inPage(out.toString());
    }

    static ComparisonView view(Comparison c, Showing showing) {
        ComparisonPlots plots = new ComparisonPlots(c);
        return new ComparisonView(
                PageStyle.load(),
                showing.simulated(),
                title(c),
                lead(c),
                c.comparability().cautions().stream()
                        .map(caution -> Words.typeset(caution.text()))
                        .toList(),
                c.findings().stream().map(ComparisonPage::typeset).toList(),
                columns(c, showing),
                common(c).isEmpty() ? "" : "All: " + String.join(" \u00b7 ", common(c)) + ".",
                order(showing).stream().map(q -> ComparisonWords.places(c, c.ranking(q))).toList(),
                order(showing).stream().map(q -> ComparisonRanks.of(c, c.ranking(q))).toList(),
                ComparisonText.allLead(c.sides().size() == 2, c.shortName(c.against())),
                new ComparisonTable(c).topics(),
                c.sides().size() == 2,
                plots.tone().orElse(null),
                plots.gamut().orElse(null),
                plots.keys(),
                ComparisonWords.method(c),
                identity(c));
    }

    /** From what was read and said, the same in every run. */
    private static long identity(Comparison c) {
        long number = 31L * c.against();
        for (Side side : c.sides()) {
            number = 1_000_003 * number + side.name().hashCode();
            for (Evaluation print : side.prints()) {
                for (SourceFile file : print.files()) {
                    number = 1_000_003 * number + file.sha256().hashCode();
                }
            }
        }
        return number;
    }

    private static Finding typeset(Finding f) {
        return new Finding(
                f.topic(),
                together(Words.typeset(f.text())),
                together(Words.typeset(f.sureness())),
                Words.typeset(f.advice()));
    }

    /** A unit stays on the line of its number. */
    private static String together(String text) {
        return text.replaceAll("(\\*|dE00|dCh|level) (?=[\u2212\\d])", "$1\u00a0")
                .replace(" \u00b1 ", "\u00a0\u00b1\u00a0");
    }

    private static String title(Comparison c) {
        String these = c.these().substring("these ".length());
        return these.substring(0, 1).toUpperCase(Locale.ROOT)
                + these.substring(1)
                + " side by side";
    }

    private static String lead(Comparison c) {
        boolean several = c.sides().size() > 2;
        String against =
                several ? " Differences are against " + c.shortName(c.against()) + "." : "";
        boolean single = c.sides().stream().noneMatch(Side::repeated);
        return (c.subject() == Subject.PRINTS
                        ? (single ? "One print each: what" : "What")
                                + " follows is said of these prints alone."
                        : "Differences hold for the "
                                + c.subject().many()
                                + ", by how their prints differ among themselves.")
                + against;
    }

    private static List<ComparisonView.Column> columns(Comparison c, Showing showing) {
        List<ComparisonView.Column> columns = new ArrayList<>();
        for (int i = 0; i < c.sides().size(); i++) {
            Side side = c.sides().get(i);
            columns.add(
                    new ComparisonView.Column(
                            i + 1,
                            side.name(),
                            c.shortName(i),
                            showing.hrefs().get(side.name()),
                            about(c, side),
                            strip(side.prints().get(0), i + 1),
                            i == c.against()));
        }
        return columns;
    }

    /** What is said of a side's prints beyond what is said of all. */
    private static String about(Comparison c, Side side) {
        List<String> common = common(c);
        List<String> parts = new ArrayList<>();
        int prints = side.prints().size();
        parts.add(prints == 1 ? "one print" : prints + " prints");
        said(side).stream().filter(said -> !common.contains(said)).forEach(parts::add);
        return String.join(" \u00b7 ", parts);
    }

    /** What is the same on all sides. */
    static List<String> common(Comparison c) {
        List<String> common = new ArrayList<>(said(c.sides().get(0)));
        c.sides().forEach(side -> common.retainAll(said(side)));
        return common;
    }

    private static List<String> said(Side side) {
        Evaluation first = side.prints().get(0);
        List<String> parts = new ArrayList<>();
        parts.add(Words.trust(first.trust()));
        if (first.details().printer() != null) {
            parts.add(first.details().printer());
        }
        if (first.details().route() != null) {
            parts.add(first.details().route());
        }
        if (first.chartId() != null) {
            parts.add("chart " + first.chartId());
        }
        return parts;
    }

    private static @Nullable Plot strip(Evaluation e, int number) {
        return RangeStrip.draw(e, Plot.WIDE) == null
                ? null
                : new Plot(
                        "strip-" + number,
                        width -> Objects.requireNonNull(RangeStrip.draw(e, width)),
                        Plot.WIDE);
    }

    private static List<Question> order(Showing showing) {
        List<Question> order = new ArrayList<>(Arrays.asList(Question.values()));
        showing.first()
                .ifPresent(
                        first -> {
                            order.remove(first);
                            order.add(0, first);
                        });
        return order;
    }
}
