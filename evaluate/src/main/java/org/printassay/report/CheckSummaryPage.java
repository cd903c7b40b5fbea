package org.printassay.report;

import gg.jte.output.StringOutput;
import java.util.List;
import org.printassay.check.Outcome;
import org.printassay.report.plot.ChangesPlot;

/** The page of many prints that were checked together: one line each, with its check behind it. */
public final class CheckSummaryPage {
    private CheckSummaryPage() {}

    /**
     * The page: one file, no network, no scripts.
     *
     * @param checked in words, what became of how many prints
     * @param tolerances name of the tolerances
     */
    public static String write(
            String checked,
            String tolerances,
            List<CheckSummaryView.Print> prints,
            List<SummaryView.Left> failed,
            List<SummaryView.Left> skipped) {
        StringOutput out = new StringOutput(1 << 16);
        CheckSummaryView view =
                new CheckSummaryView(
                        PageStyle.load(), checked, tolerances, prints, failed, skipped);
        ReportPage.engine().render("checks.jte", view, out);
        return HarmlessText.inPage(out.toString());
    }

    /**
     * The line of one print.
     *
     * @param name what it is called; also the folder of its check
     */
    public static CheckSummaryView.Print line(
            String name, Outcome outcome, String first, String baseline) {
        return new CheckSummaryView.Print(
                name,
                SummaryPage.folder(name) + "/" + CheckReports.PAGE,
                new Sign(ChangesPlot.key(outcome)),
                Words.typeset(first),
                baseline);
    }
}
