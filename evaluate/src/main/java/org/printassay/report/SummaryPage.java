package org.printassay.report;

import gg.jte.output.StringOutput;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Extreme;
import org.printassay.metric.Neutrality;
import org.printassay.metric.Tone;
import org.printassay.metric.Wedge;

/**
 * The page of many prints that were evaluated together: one line each, with its report behind it.
 */
public final class SummaryPage {
    private static final String NOT_JUDGED = "\u2013";

    private SummaryPage() {}

    /**
     * The page: one file, no network, no scripts.
     *
     * @param read in words, how many prints were evaluated
     */
    public static String write(
            String read,
            List<SummaryView.Print> prints,
            List<SummaryView.Left> failed,
            List<SummaryView.Left> skipped) {
        StringOutput out = new StringOutput(1 << 16);
        SummaryView view = new SummaryView(PageStyle.load(), read, prints, failed, skipped);
        ReportPage.engine().render("summary.jte", view, out);
        return HarmlessText.inPage(out.toString());
    }

    /**
     * The line of one print.
     *
     * @param name what it is called; also the folder of its results
     * @param about what is to be known besides its figures
     */
    public static SummaryView.Print line(String name, String about, Evaluation e) {
        return new SummaryView.Print(
                name,
                folder(name) + "/report.html",
                about,
                lightness(e.white(), true),
                lightness(e.black(), e.trust().absolute()),
                level(e.shadows()),
                level(e.highlights()),
                greys(e.neutrality()),
                tone(e.tone()),
                Words.trust(e.trust()));
    }

    /** Relative address of a print's folder. */
    static String folder(String name) {
        return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private static String lightness(@Nullable Extreme x, boolean absoluteOnly) {
        if (x == null) {
            return NOT_JUDGED;
        }
        Lab lab = x.lab() != null || absoluteOnly ? x.lab() : x.labRelative();
        return lab == null ? NOT_JUDGED : Words.within(lab.l(), x.uncertainty().l(), 1);
    }

    private static String level(@Nullable Wedge w) {
        if (w == null) {
            return NOT_JUDGED;
        }
        if (w.best() == null) {
            return "none";
        }
        Wedge.Interval interval = w.interval();
        return w.best()
                + (interval == null
                        ? ""
                        : " (" + interval.low() + "\u2013" + interval.high() + ")");
    }

    private static String greys(@Nullable Neutrality n) {
        return n == null ? NOT_JUDGED : Words.number(n.meanDeltaCh(), 1) + " " + n.cast().words();
    }

    private static String tone(@Nullable Tone t) {
        return t == null ? NOT_JUDGED : Words.within(t.rmsDeltaL(), t.rmsUncertainty(), 1);
    }
}
