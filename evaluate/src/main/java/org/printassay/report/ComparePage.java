package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Tone;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.SvgWriter;
import org.printassay.report.plot.CurvesPlot;
import org.printassay.report.plot.RangeStrip;

/**
 * Several prints side by side on one page. Shows figures and their uncertainties; says nothing
 * about which is better.
 */
public final class ComparePage {
    private static final double HALF = 500;

    private ComparePage() {}

    /**
     * One print.
     *
     * @param title name of the paper
     * @param description what it is, in a sentence; may be empty
     * @param evaluation its results
     * @param reportHref relative address of its report
     */
    public record Entry(
            String title, String description, Evaluation evaluation, String reportHref) {}

    /**
     * The page: one file, no network, no scripts.
     *
     * @param entries two to four prints
     * @param simulated whether the prints are not real, to be said at the top
     */
    public static String write(List<Entry> entries, boolean simulated) {
        StringOutput out = new StringOutput(1 << 17);
        ReportPage.engine().render("compare.jte", view(entries, simulated), out);
        return HarmlessText.inPage(out.toString());
    }

    private static CompareView view(List<Entry> entries, boolean simulated) {
        List<CompareView.Column> columns = new ArrayList<>();
        List<CurvesPlot.Curve> curves = new ArrayList<>();
        for (Entry entry : entries) {
            Evaluation e = entry.evaluation();
            columns.add(
                    new CompareView.Column(
                            entry.title(),
                            entry.description(),
                            entry.reportHref(),
                            Words.trust(e.trust()),
                            e.findings().isEmpty() ? "" : Words.typeset(e.findings().get(0).text()),
                            strip(e, columns.size())));
            Tone tone = e.tone();
            if (tone != null && !tone.points().isEmpty() && curves.size() < CurvesPlot.MOST) {
                curves.add(new CurvesPlot.Curve(entry.title(), tone));
            }
        }
        List<CompareView.Row> rows = new ArrayList<>();
        rows.add(row("Paper white", entries, Facts::white));
        rows.add(row("Deepest black", entries, Facts::black));
        rows.add(
                row(
                        "Range",
                        entries,
                        e -> {
                            Fact range = Facts.contrast(e);
                            return range == null ? Fact.of("Range", "not judged", "") : range;
                        }));
        rows.add(row("Shadows", entries, e -> Facts.shadows(e.shadows())));
        rows.add(row("Highlights", entries, e -> Facts.highlights(e.highlights())));
        rows.add(row("Greys", entries, e -> Facts.neutrality(e.neutrality())));
        rows.add(row("Tone", entries, e -> Facts.tone(e.tone())));
        return new CompareView(
                PageStyle.load(), simulated, columns, rows, plots(curves), keys(curves));
    }

    private static CompareView.Row row(
            String label, List<Entry> entries, Function<Evaluation, Fact> fact) {
        return new CompareView.Row(
                label, entries.stream().map(entry -> fact.apply(entry.evaluation())).toList());
    }

    private static Html strip(Evaluation e, int index) {
        Drawing wide = RangeStrip.draw(e, Plot.WIDE);
        Drawing narrow = RangeStrip.draw(e, Plot.NARROW);
        return wide == null || narrow == null
                ? new Html("")
                : Html.of(wide, narrow, "strip-" + index);
    }

    private static List<Html> plots(List<CurvesPlot.Curve> curves) {
        if (curves.size() < 2) {
            return List.of();
        }
        return List.of(
                Html.of(
                        CurvesPlot.lightness(curves, HALF),
                        CurvesPlot.lightness(curves, Plot.NARROW),
                        "curves"),
                Html.of(
                        CurvesPlot.difference(curves, HALF),
                        CurvesPlot.difference(curves, Plot.NARROW),
                        "differences"));
    }

    private static List<CompareView.Key> keys(List<CurvesPlot.Curve> curves) {
        List<CompareView.Key> out = new ArrayList<>();
        for (CurvesPlot.Curve curve : curves) {
            int index = out.size();
            Drawing sample = CurvesPlot.key(index, curve.name());
            String svg = SvgWriter.write(sample, "key-" + index, "key");
            out.add(new CompareView.Key(new Html(svg), curve.name()));
        }
        return out;
    }
}
