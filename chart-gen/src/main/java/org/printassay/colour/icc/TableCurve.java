package org.printassay.colour.icc;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Linear interpolation in a table of evenly spaced points. */
final class TableCurve implements IccCurve {
    /** Points of a curve turned round. */
    static final int TURNED_POINTS = 4096;

    private final char[] points;

    /**
     * A table.
     *
     * @param points words, at least two; kept, not copied
     */
    TableCurve(char[] points) {
        this.points = points;
    }

    @Override
    public double at(double x) {
        int last = points.length - 1;
        double place = IccCurve.clamp(x) * last;
        int i = Math.min((int) place, last - 1);
        return (points[i] + (place - i) * (points[i + 1] - points[i])) / Words.ONE;
    }

    @Override
    public double inWords(double x) {
        int word = Words.of(x);
        int last = points.length - 1;
        if (word == Words.ONE) {
            return Words.fraction(points[last]);
        }
        long place = Words.place(word, last);
        int i = (int) (place >> 16);
        return Words.fraction(Words.between(points[i], points[i + 1], (int) place & 0xFFFF));
    }

    /**
     * The table turned round into one of 4096 words, as LittleCMS does. Each point lies on the line
     * through the stretch of the curve that holds its value: the one furthest along when several do
     * (the first one in curves that fall), its upper end where it is flat. Values that no stretch
     * holds go on along the line before; below the first of all they give 0.
     */
    @Override
    public IccCurve turned() {
        int last = points.length - 1;
        int[] stretch = stretches();
        char[] turned = new char[TURNED_POINTS];
        double slope = 0;
        double start = 0;
        for (int i = 0; i < TURNED_POINTS; i++) {
            int s = stretch[i];
            double from = s * (double) Words.ONE / last;
            double to = (s + 1) * (double) Words.ONE / last;
            if (s >= 0 && points[s] == points[s + 1]) {
                turned[i] = (char) Words.nearest(points[0] > points[last] ? from : to);
                continue;
            }
            if (s >= 0) {
                slope = (to - from) / (points[s + 1] - points[s]);
                start = to - slope * points[s + 1];
            }
            double value = i * (double) Words.ONE / (TURNED_POINTS - 1);
            turned[i] = (char) Words.nearest(slope * value + start);
        }
        return new TableCurve(turned);
    }

    /** Which stretch between two points holds each value of the turned table; -1 for none. */
    private int[] stretches() {
        int[] holds = new int[TURNED_POINTS];
        Arrays.fill(holds, -1);
        int last = points.length - 1;
        boolean rises = points[0] < points[last];
        for (int i = 0; i < last; i++) {
            int s = rises ? i : last - 1 - i; // later ones win
            int low = Math.min(points[s], points[s + 1]) * (TURNED_POINTS - 1);
            int high = Math.max(points[s], points[s + 1]) * (TURNED_POINTS - 1);
            Arrays.fill(holds, (low + Words.ONE - 1) / Words.ONE, high / Words.ONE + 1, s);
        }
        return holds;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof TableCurve curve && Arrays.equals(points, curve.points);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(points);
    }
}
