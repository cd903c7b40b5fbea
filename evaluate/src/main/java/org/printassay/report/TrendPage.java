package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.ArrayList;
import java.util.List;
import org.printassay.report.draw.Drawing;
import org.printassay.report.plot.ControlPlot;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/** The page of a printer's figures over time: one file, no network, no scripts. */
public final class TrendPage {
    private static final double WIDE = 640;
    private static final int MOST_CHANGES = 6;

    private TrendPage() {}

    /**
     * The page.
     *
     * @param title printer, paper and route
     * @param about how the prints were read
     * @param notes what a reader must know
     * @param newest plots show at most so many prints
     */
    public static String write(
            String title, String about, List<String> notes, List<Trend> trends, int newest) {
        List<TrendView.Line> changed = new ArrayList<>();
        List<TrendView.Figure> figures = new ArrayList<>();
        for (Trend trend : trends) {
            String state = Words.typeset(TrendWords.state(trend));
            String label = trend.quantity().label();
            if (trend.state() == Trend.State.JUMPED || trend.state() == Trend.State.DRIFTED) {
                changed.add(new TrendView.Line(label, state));
            }
            String id = "trend-" + figures.size();
            figures.add(
                    new TrendView.Figure(
                            id, label, state, changes(trend), plot(trend, newest, id, state)));
        }
        TrendView view =
                new TrendView(
                        PageStyle.load(),
                        title,
                        about,
                        changed,
                        notes,
                        figures,
                        TrendWords.METHOD,
                        TrendWords.chance(trends));
        StringOutput out = new StringOutput(1 << 17);
        ReportPage.engine().render("trend.jte", view, out);
        return HarmlessText.inPage(out.toString());
    }

    private static List<String> changes(Trend trend) {
        List<Shift> changes = trend.changes();
        return changes.subList(Math.max(0, changes.size() - MOST_CHANGES), changes.size()).stream()
                .map(change -> Words.typeset(TrendWords.change(trend, change)))
                .toList();
    }

    private static Html plot(Trend trend, int newest, String id, String state) {
        Drawing wide = ControlPlot.draw(trend, newest, state, WIDE, TrendWords::day);
        Drawing narrow = ControlPlot.draw(trend, newest, state, Plot.NARROW, TrendWords::day);
        return Html.of(wide, narrow, id + "-plot");
    }
}
