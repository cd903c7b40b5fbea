package org.printassay.measurement;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.sheet.Patch;

/**
 * Whether readings without names can have been taken in a chart's reading order. The lightness and
 * colour that were read are compared with what the codes stand for, by any rising curve in L* and a
 * straight line in a* and b*; then with what other orders would give, such as a turned sheet.
 */
final class OrderCheck {
    /** Share of variance that a right order explains at least, on dull papers too. */
    private static final double FITS = 0.7;

    /** Another order is the true one when it leaves less than this of the unexplained variance. */
    private static final double BETTER = 0.6;

    /** Less chroma than this is meant to be neutral. */
    private static final double NEUTRAL = 3;

    /**
     * Weight of coloured patches against neutral ones: no straight line foretells how a printer
     * renders colours, while greys follow one curve.
     */
    private static final double COLOURED = 0.05;

    /** As {@link #BETTER}, of the squares of L* of greys about one rising curve. */
    private static final double GREYS_BETTER = 0.3;

    /** How far, L*, greys in a wrong order stand apart on average; less does no harm. */
    private static final double GREYS_SHOW = 0.3;

    /** Less than this apart on average, colour difference of CIE 1976, is the same row again. */
    private static final double SAME = 2;

    private static final int MOST_NAMED = 3;

    private final List<List<Lab>> rows;
    private final List<Lab> read;

    private record Guess(String words, List<Lab> expected) {}

    private OrderCheck(List<List<Lab>> rows, List<Lab> read) {
        this.rows = rows;
        this.read = read;
    }

    /**
     * What is wrong with the order, a sentence with what to do; empty when it fits.
     *
     * @param certain whether the order was also stated by names, so that a poor fit alone is no
     *     reason to doubt it
     */
    static Optional<String> doubt(ChartPatches chart, List<Lab> read, boolean certain) {
        List<List<Lab>> rows = new ArrayList<>();
        for (List<Patch> row : chart.rows()) {
            rows.add(row.stream().map(chart::expected).toList());
        }
        return new OrderCheck(rows, read).doubt(certain);
    }

    private Optional<String> doubt(boolean certain) {
        List<Lab> straight = flat(rows);
        List<Guess> guesses = guesses();
        boolean counts = straight.size() == read.size();
        double left = counts ? unexplained(straight) : 1;
        double least = Double.POSITIVE_INFINITY;
        Map<Guess, Double> tried = new LinkedHashMap<>();
        for (Guess guess : guesses) {
            if (guess.expected.size() == read.size()) {
                double other = unexplained(guess.expected);
                tried.put(guess, other);
                least = Math.min(least, other);
            }
        }
        if (least < 1 - FITS && least < BETTER * left) {
            double near = least / BETTER;
            List<String> likely =
                    tried.entrySet().stream()
                            .filter(entry -> entry.getValue() <= near)
                            .sorted(Map.Entry.comparingByValue())
                            .limit(MOST_NAMED)
                            .map(entry -> entry.getKey().words)
                            .toList();
            return Optional.of(
                    (likely.size() == 1 ? "" : "most likely one of these: ")
                            + String.join(" Or: ", likely));
        }
        Optional<String> greys = counts ? greys(straight, tried.keySet()) : Optional.empty();
        if (greys.isPresent()) {
            return greys;
        }
        if (!counts) {
            return Optional.of(
                    read.size()
                            + " readings, but the chart has "
                            + straight.size()
                            + " patches in "
                            + rows.size()
                            + " rows. Measure every patch of the reading order once.");
        }
        Optional<String> slip =
                certain ? Optional.empty() : SlipCheck.of(straight, read).map(OrderCheck::words);
        if (slip.isPresent()) {
            return slip;
        }
        if (!certain && left > 1 - FITS) {
            return Optional.of(
                    "the readings do not fit the chart's reading order: light and dark stand at"
                            + " other places. Is it another chart, or were rows measured in"
                            + " another order? Measure again by the reading order.");
        }
        return Optional.empty();
    }

    private static String words(SlipCheck.Slip slip) {
        return "readings "
                + (slip.from() + 1)
                + " to "
                + (slip.to() + 1)
                + " fit the patch "
                + (slip.off() > 0 ? "after" : "before")
                + " their own: one patch seems to have been left out "
                + (slip.off() > 0 ? "at or before the first" : "at or after the last")
                + " of them and another read twice. Compare the list with the reading order,"
                + " measure again, or give the patches' names.";
    }

    /**
     * Dark rows differ too little to show in all of the variance, and shadows are what they are
     * for: so L* of greys alone, where the other order changes places of greys only. Tone that
     * really runs backwards does not become smooth by another order.
     */
    private Optional<String> greys(List<Lab> straight, Collection<Guess> guesses) {
        double left = greySquares(straight);
        double least = GREYS_BETTER * left;
        Optional<String> found = Optional.empty();
        for (Guess guess : guesses) {
            int changed = 0;
            boolean alike = true;
            for (int i = 0; i < straight.size(); i++) {
                Lab one = straight.get(i);
                Lab other = guess.expected.get(i);
                alike &= isGrey(one) == isGrey(other) && (isGrey(one) || one.equals(other));
                changed += one.l() == other.l() ? 0 : 1;
            }
            if (alike && changed > 0) {
                double squares = greySquares(guess.expected);
                boolean shows = left - squares > changed * GREYS_SHOW * GREYS_SHOW;
                if (shows && squares < least) {
                    least = squares;
                    found = Optional.of(guess.words);
                }
            }
        }
        return found;
    }

    private static boolean isGrey(Lab expected) {
        return expected.chroma() < NEUTRAL;
    }

    private double greySquares(List<Lab> expected) {
        double[] weights = expected.stream().mapToDouble(lab -> isGrey(lab) ? 1 : 0).toArray();
        return RisingFit.squares(expected, read, weights)[0];
    }

    private List<Guess> guesses() {
        List<Guess> guesses = new ArrayList<>();
        List<Lab> turned = new ArrayList<>(flat(rows));
        Collections.reverse(turned);
        guesses.add(
                new Guess(
                        "the sheet was turned upside down: the readings fit the chart from its last"
                                + " patch to its first. Turn the sheet and measure again.",
                        turned));
        List<List<Lab>> mirrored = new ArrayList<>();
        rows.forEach(row -> mirrored.add(reversed(row)));
        guesses.add(
                new Guess(
                        "every row was read from its right end. Measure again from the left.",
                        flat(mirrored)));
        List<List<Lab>> upwards = new ArrayList<>(rows);
        Collections.reverse(upwards);
        guesses.add(
                new Guess(
                        "rows were read from the bottom row up. Measure again from the top.",
                        flat(upwards)));
        for (int first = 0; first < 2 && rows.size() > 2; first++) {
            List<List<Lab>> toAndFro = new ArrayList<>(rows);
            for (int i = 1 - first; i < rows.size(); i += 2) {
                toAndFro.set(i, reversed(rows.get(i)));
            }
            guesses.add(
                    new Guess(
                            "rows were read to and fro: rows "
                                    + (first == 0 ? "2, 4" : "1, 3")
                                    + " and so on from their right ends. Measure these again from"
                                    + " the left.",
                            flat(toAndFro)));
        }
        for (int i = 0; i < rows.size(); i++) {
            String row = "row " + (i + 1);
            guesses.add(
                    new Guess(
                            row + " was missed. Measure it and put it in its place.",
                            flat(replaced(i, List.of()))));
            guesses.add(
                    new Guess(
                            row + " was read twice. Take one of the two away.",
                            flat(replaced(i, twice(rows.get(i))))));
            guesses.add(
                    new Guess(
                            row + " was read from its right end. Measure it again.",
                            flat(replaced(i, reversed(rows.get(i))))));
            for (int other : new int[] {i - 1, i + 1}) {
                if (other >= 0 && other < rows.size() && isReadTwice(Math.min(i, other), other)) {
                    guesses.add(
                            new Guess(
                                    row
                                            + " was missed and row "
                                            + (other + 1)
                                            + " read twice. Measure "
                                            + row
                                            + " and put it in its place.",
                                    flat(replaced(i, rows.get(other)))));
                }
            }
            if (i + 1 < rows.size()) {
                List<List<Lab>> swapped = new ArrayList<>(rows);
                Collections.swap(swapped, i, i + 1);
                guesses.add(
                        new Guess(
                                "rows "
                                        + (i + 1)
                                        + " and "
                                        + (i + 2)
                                        + " were read in the other order. Measure them again.",
                                flat(swapped)));
            }
        }
        return guesses;
    }

    /** Whether two rows' worth of readings, from where a row begins, are of the same patches. */
    private boolean isReadTwice(int first, int row) {
        int start = flat(rows.subList(0, first)).size();
        int length = rows.get(row).size();
        if (start + 2 * length > read.size()) {
            return false;
        }
        double sum = 0;
        for (int k = start; k < start + length; k++) {
            sum += DeltaE.cie1976(read.get(k), read.get(k + length));
        }
        return sum / length < SAME;
    }

    private List<List<Lab>> replaced(int index, List<Lab> row) {
        List<List<Lab>> all = new ArrayList<>(rows);
        all.set(index, row);
        return all;
    }

    private static List<Lab> twice(List<Lab> row) {
        List<Lab> both = new ArrayList<>(row);
        both.addAll(row);
        return both;
    }

    private static List<Lab> reversed(List<Lab> row) {
        List<Lab> back = new ArrayList<>(row);
        Collections.reverse(back);
        return back;
    }

    private static List<Lab> flat(List<List<Lab>> rows) {
        List<Lab> all = new ArrayList<>();
        rows.forEach(all::addAll);
        return all;
    }

    /** Share of the variance of the readings that an order leaves unexplained, 0 to 1. */
    private double unexplained(List<Lab> expected) {
        double[] weights =
                expected.stream().mapToDouble(lab -> isGrey(lab) ? 1 : COLOURED).toArray();
        double[] l = RisingFit.squares(expected, read, weights);
        double[] a = leftOver(expected, weights, Lab::a);
        double[] b = leftOver(expected, weights, Lab::b);
        double all = l[1] + a[1] + b[1];
        return all == 0 ? 1 : (l[0] + a[0] + b[0]) / all;
    }

    /** Squares about a rising straight line, and about the mean. */
    private double[] leftOver(List<Lab> expected, double[] weights, ToDoubleFunction<Lab> part) {
        double x = mean(expected, weights, part);
        double y = mean(read, weights, part);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < read.size(); i++) {
            double dx = part.applyAsDouble(expected.get(i)) - x;
            double dy = part.applyAsDouble(read.get(i)) - y;
            xx += weights[i] * dx * dx;
            xy += weights[i] * dx * dy;
            yy += weights[i] * dy * dy;
        }
        return new double[] {xx == 0 || xy <= 0 ? yy : yy - xy * xy / xx, yy};
    }

    private static double mean(List<Lab> labs, double[] weights, ToDoubleFunction<Lab> part) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < labs.size(); i++) {
            sum += weights[i] * part.applyAsDouble(labs.get(i));
            all += weights[i];
        }
        return all == 0 ? 0 : sum / all;
    }
}
