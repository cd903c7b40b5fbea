package org.printassay.report.plot;

import java.util.List;
import org.printassay.metric.Verdict;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;

/** What the signs and lines of a {@link WedgePlot} mean. */
public final class WedgeKey {
    private static final double SIDE = 14;

    private WedgeKey() {}

    /**
     * Signs, each titled with its meaning; one that needs no sign has no width.
     *
     * @param from what differences are from: black or paper
     */
    public static List<Drawing> of(String from) {
        return List.of(
                verdict(Verdict.SEPARATED, "separated from " + from),
                verdict(Verdict.UNCERTAIN, "uncertain"),
                verdict(Verdict.MERGED, "merged with " + from),
                line(Ink.THRESHOLD, "threshold"),
                line(Ink.AIM, "aim"),
                new Drawing("heights on a square-root scale", "", 0, SIDE));
    }

    private static Drawing verdict(Verdict verdict, String words) {
        Drawing d = new Drawing(words, "", SIDE, SIDE);
        WedgePlot.sign(d, verdict, SIDE / 2, SIDE / 2);
        return d;
    }

    private static Drawing line(Ink ink, String words) {
        Drawing d = new Drawing(words, "", 2 * SIDE, SIDE);
        d.line(1, SIDE / 2, 2 * SIDE - 1, SIDE / 2, ink);
        return d;
    }
}
