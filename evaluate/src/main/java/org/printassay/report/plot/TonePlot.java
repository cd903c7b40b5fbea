package org.printassay.report.plot;

import java.util.ArrayList;
import java.util.List;
import org.printassay.metric.Coverage;
import org.printassay.metric.Tone;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/** The tone curve against its aim, and below it how far it is off. */
public final class TonePlot {
    private static final double LEFT = 40;
    private static final double RIGHT = 12;
    private static final double GAP = 62;
    private static final double MIN_RESIDUAL = 2;

    private TonePlot() {}

    /**
     * The plot; {@code tone} needs at least one point.
     *
     * @param tall how tall, against what is usual
     */
    public static Drawing draw(Tone tone, String lightness, double width, double tall) {
        double plot = width - LEFT - RIGHT;
        double curveHeight = tall * Math.min(plot * 0.78, 400);
        double restHeight = tall * Math.min(plot * 0.32, 150);
        Drawing d =
                new Drawing(
                        "Tone curve and its difference from the aim",
                        description(tone),
                        width,
                        26 + curveHeight + GAP + restHeight + 44);
        Frame curve = new Frame(LEFT, 26, plot, curveHeight, 0, 100, 0, 100);
        curve.yAxis(d, 20, "printed " + lightness);
        curve.xAxis(d, 20, "");
        List<Mark.Point> aim = new ArrayList<>();
        List<Mark.Point> measured = new ArrayList<>();
        for (Tone.Point p : tone.points()) {
            aim.add(curve.point(p.fileL(), p.aimL()));
            measured.add(curve.point(p.fileL(), p.measuredL()));
        }
        d.path(measured, Ink.MEASURED);
        d.path(aim, Ink.AIM);
        for (Mark.Point p : measured) {
            d.disc(p.x(), p.y(), 2.4, Ink.MEASURED_FILL);
        }
        double keyX = curve.x(54);
        double keyY = curve.y(22);
        d.line(keyX, keyY - 4, keyX + 28, keyY - 4, Ink.MEASURED);
        d.disc(keyX + 14, keyY - 4, 2.4, Ink.MEASURED_FILL);
        d.text(keyX + 36, keyY, Mark.Anchor.START, Ink.TEXT, "measured");
        d.line(keyX, keyY + 16, keyX + 28, keyY + 16, Ink.AIM);
        d.text(keyX + 36, keyY + 20, Mark.Anchor.START, Ink.TEXT, "aim");

        double top = 26 + curveHeight + GAP;
        double limit = limit(tone);
        Frame rest = new Frame(LEFT, top, plot, restHeight, 0, 100, -limit, limit);
        rest.yAxis(d, Frame.step(2 * limit, 4), "measured \u2212 aim, dL*");
        rest.xAxis(d, 20, "L* of the file");
        for (Tone.Point p : tone.points()) {
            double delta = p.measuredL() - p.aimL();
            double half = Coverage.NORMAL_95 * p.standardError();
            Mark.Point low = rest.point(p.fileL(), delta - half);
            Mark.Point high = rest.point(p.fileL(), delta + half);
            d.line(low.x(), low.y(), high.x(), high.y(), Ink.WHISKER);
            Mark.Point at = rest.point(p.fileL(), delta);
            d.disc(at.x(), at.y(), 2.8, Ink.MEASURED_FILL);
        }
        return d;
    }

    static double limit(Tone tone) {
        double limit = MIN_RESIDUAL;
        for (Tone.Point p : tone.points()) {
            double half = Coverage.NORMAL_95 * p.standardError();
            limit = Math.max(limit, Math.abs(p.measuredL() - p.aimL()) + half);
        }
        return Math.ceil(limit);
    }

    private static String description(Tone tone) {
        String most = Frame.label(tone.maxDeltaL(), 0.1);
        return "Printed lightness against the lightness of the file, "
                + tone.points().size()
                + " greys. Root mean square difference from the aim "
                + Frame.label(tone.rmsDeltaL(), 0.1)
                + " dL*, largest "
                + most
                + " at level "
                + tone.maxAtLevel()
                + (tone.monotonic() ? "; the curve never runs backwards." : "; it runs backwards.");
    }
}
