package org.printassay.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Shift;
import org.printassay.trend.Trend;

/** A trend drawn with letters, for terminals. */
public final class TrendText {
    private static final int ROWS = 11;
    private static final int MOST = 64;

    private TrendText() {}

    /** What the signs of the plot mean. */
    public static final String LEGEND =
            "o print, X beyond the limits, # running mean has drifted, = usual, - limits";

    /** The newest prints, one column each; lines without their ends. */
    public static List<String> plot(Trend trend) {
        int from = Math.max(0, trend.points().size() - MOST);
        int columns = trend.points().size() - from;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = from; i < trend.points().size(); i++) {
            low = Math.min(low, trend.points().get(i).value());
            high = Math.max(high, trend.points().get(i).value());
        }
        ControlLimits limits = trend.limits();
        if (limits != null) {
            low = Math.min(low, limits.lower());
            high = Math.max(high, limits.upper());
        }
        double span = Math.max(high - low, trend.quantity().step());
        char[][] grid = new char[ROWS][columns];
        for (char[] row : grid) {
            Arrays.fill(row, ' ');
        }
        if (limits != null) {
            Arrays.fill(grid[row(limits.lower(), low, span)], '-');
            Arrays.fill(grid[row(limits.upper(), low, span)], '-');
            Arrays.fill(grid[row(limits.centre(), low, span)], '=');
        }
        for (int i = 0; i < columns; i++) {
            double value = trend.points().get(from + i).value();
            grid[row(value, low, span)][i] = sign(trend, from + i);
        }
        return labelled(trend, grid, low, span, from);
    }

    private static int row(double value, double low, double span) {
        return ROWS - 1 - (int) Math.round((value - low) / span * (ROWS - 1));
    }

    private static char sign(Trend trend, int index) {
        char sign = 'o';
        for (Shift change : trend.changes()) {
            if (change.first() <= index && index <= change.last()) {
                if (change.kind() == Shift.Kind.JUMP) {
                    return 'X';
                }
                sign = '#';
            }
        }
        return sign;
    }

    private static List<String> labelled(
            Trend trend, char[][] grid, double low, double span, int from) {
        List<String> labels = new ArrayList<>();
        int widest = 0;
        for (int row = 0; row < ROWS; row++) {
            boolean shown = row % ((ROWS - 1) / 2) == 0;
            double value = low + span * (ROWS - 1 - row) / (ROWS - 1);
            labels.add(shown ? TrendWords.value(trend, value) : "");
            widest = Math.max(widest, labels.get(row).length());
        }
        List<String> lines = new ArrayList<>();
        for (int row = 0; row < ROWS; row++) {
            String label = " ".repeat(widest - labels.get(row).length()) + labels.get(row);
            lines.add((label + " | " + new String(grid[row])).stripTrailing());
        }
        lines.add(
                " ".repeat(widest + 3)
                        + TrendWords.day(trend.points().get(from))
                        + " to "
                        + TrendWords.day(trend.newest())
                        + ", oldest first");
        return lines;
    }
}
