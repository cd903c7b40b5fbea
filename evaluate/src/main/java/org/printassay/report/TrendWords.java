package org.printassay.report;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Followed;
import org.printassay.trend.Point;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/** What a trend says, in sentences for every kind of output. Days are in UTC. */
public final class TrendWords {
    /** How the limits were made, and what they cannot tell. */
    public static final String METHOD =
            "Limits are the baseline's mean and 3 standard deviations, told from the differences of"
                    + " neighbours (individuals chart, NIST/SEMATECH e-Handbook of Statistical"
                    + " Methods, 6.3.2.2). The baseline is what log baseline named, else the first"
                    + " 20 prints. A jump is a print beyond the limits; a drift is a running mean"
                    + " (weight 0.2; 6.3.2.4) beyond its own.";

    /** Jumps and drifts that begin in one figure of one print by chance: see {@link Trend}. */
    private static final double RATE = 0.0145;

    private TrendWords() {}

    /** The newest print in a sentence. */
    public static String state(Trend trend) {
        ControlLimits limits = trend.limits();
        if (limits == null) {
            return "Not judged: limits need "
                    + ControlLimits.FEWEST
                    + " prints, there are "
                    + trend.points().size()
                    + ".";
        }
        String usual =
                "usual "
                        + value(trend, limits.centre())
                        + ", limits "
                        + value(trend, limits.lower())
                        + " to "
                        + value(trend, limits.upper());
        Point newest = trend.newest();
        return switch (trend.state()) {
            case JUMPED ->
                    "No. "
                            + newest.entry()
                            + " is "
                            + value(trend, newest.value())
                            + ", beyond the limits ("
                            + usual
                            + ").";
            case DRIFTED -> drifted(trend) + " (" + usual + ").";
            default ->
                    "Steady: no. "
                            + newest.entry()
                            + " is "
                            + value(trend, newest.value())
                            + " ("
                            + usual
                            + ").";
        };
    }

    private static String drifted(Trend trend) {
        Shift drift = trend.changes().get(trend.changes().size() - 1);
        for (Shift change : trend.changes()) {
            if (change.kind() == Shift.Kind.DRIFT) {
                drift = change;
            }
        }
        return "Drifted "
                + (drift.extent() > 0 ? "up" : "down")
                + " by about "
                + value(trend, Math.abs(drift.extent()))
                + ", seen since no. "
                + trend.points().get(drift.first()).entry();
    }

    /** One change in a sentence. */
    public static String change(Trend trend, Shift change) {
        Point first = trend.points().get(change.first());
        Point last = trend.points().get(change.last());
        String where = "no. " + first.entry() + " (" + day(first) + ")";
        if (change.last() > change.first()) {
            where = "nos. " + first.entry() + " to " + last.entry() + " (from " + day(first) + ")";
        }
        String way = change.extent() > 0 ? "above" : "below";
        return (change.kind() == Shift.Kind.JUMP ? "Jump: " : "Drift: ")
                + where
                + ", "
                + value(trend, Math.abs(change.extent()))
                + " "
                + way
                + " the usual.";
    }

    /**
     * How often chance alone would say something over all these figures; empty if none is judged.
     */
    public static String chance(List<Trend> trends) {
        IntSummaryStatistics prints =
                trends.stream()
                        .map(Trend::limits)
                        .filter(Objects::nonNull)
                        .mapToInt(ControlLimits::values)
                        .summaryStatistics();
        long figures = prints.getCount();
        if (figures == 0) {
            return "";
        }
        return "Chance alone begins an alarm about once in "
                + Math.max(1, Math.round(1 / (RATE * figures)))
                + " prints over "
                + (figures == 1 ? "this figure" : "these " + figures + " figures together")
                + " ("
                + limitsFrom(prints.getMin(), prints.getMax())
                + ", normal spread).";
    }

    /** The rate is that of limits from {@link ControlLimits#ENOUGH} prints. */
    private static String limitsFrom(int least, int most) {
        String usual = "limits from " + ControlLimits.ENOUGH + " prints";
        return least == ControlLimits.ENOUGH && most == ControlLimits.ENOUGH
                ? usual
                : "roughly: this is for "
                        + usual
                        + ", and these are from "
                        + (least == most ? "" : least + " to ")
                        + most;
    }

    /** The day of a point. */
    public static String day(Point point) {
        return LocalDate.ofInstant(point.at(), ZoneOffset.UTC).toString();
    }

    /** A value with the decimals that its figure is worth, one more than in reports. */
    public static String value(Trend trend, double value) {
        Followed quantity = trend.quantity();
        int decimals = quantity.decimals() + 1;
        if (quantity.step() >= 1 && value == Math.rint(value)) {
            decimals = Math.min(0, decimals);
        }
        // Below 0 where the last digits say nothing: 812345 is 812300 with two fewer.
        double rounded =
                decimals < 0
                        ? Math.rint(value * Math.pow(10, decimals)) / Math.pow(10, decimals)
                        : value;
        String text = String.format(Locale.ROOT, "%." + Math.max(0, decimals) + "f", rounded);
        return text.matches("-0[.]?0*") ? text.substring(1) : text;
    }
}
