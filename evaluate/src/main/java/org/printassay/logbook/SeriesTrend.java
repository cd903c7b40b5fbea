package org.printassay.logbook;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PrintSpread;
import org.printassay.problem.Problem;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Followed;
import org.printassay.trend.Point;
import org.printassay.trend.Trend;

/**
 * The figures of one printer, paper and route over time. Prints that were read in another way than
 * the newest are left out: their figures would differ though nothing changed.
 *
 * @param series which
 * @param manner how the prints were read
 * @param entries prints in the order of time
 * @param trends figures that were judged at all
 * @param notes what a reader must know
 */
public record SeriesTrend(
        Series series, String manner, List<Entry> entries, List<Trend> trends, List<String> notes) {
    /** What is followed unless figures are named. */
    public static final List<Figure> USUAL =
            List.of(
                    Figure.WHITE_L,
                    Figure.WHITE_A,
                    Figure.WHITE_B,
                    Figure.BLACK_L,
                    Figure.TONE_SHADOWS,
                    Figure.TONE_MIDTONES,
                    Figure.TONE_HIGHLIGHTS,
                    Figure.SHADOWS_VISIBLE,
                    Figure.HIGHLIGHTS_VISIBLE,
                    Figure.CAST_A,
                    Figure.CAST_B,
                    Figure.COLOURS_MEAN,
                    Figure.LINES);

    private static final int MOST_NAMED = 5;

    public SeriesTrend {
        entries = List.copyOf(entries);
        trends = List.copyOf(trends);
        notes = List.copyOf(notes);
    }

    /**
     * Reads and judges a series, from its beginning: limits must not depend on what is shown.
     *
     * @throws Problem usage, when entries of several series are selected; input, when none is
     */
    public static SeriesTrend of(Logbook logbook, Selection selection, List<Figure> figures)
            throws Problem {
        List<Entry> selected = logbook.entries(selection.ofAnyTime());
        Series series = only(logbook, selected);
        Entry newest = selected.get(selected.size() - 1);
        List<Entry> alike = selected.stream().filter(newest::belongsWith).toList();
        return of(logbook, series, alike, figures, notes(selected, alike));
    }

    /** Judges entries of a series that were read in one manner. */
    static SeriesTrend of(
            Logbook logbook,
            Series series,
            List<Entry> alike,
            List<Figure> figures,
            List<String> notes)
            throws Problem {
        Map<Figure, Map<Long, Double>> values = logbook.values(series, figures);
        List<Trend> trends = new ArrayList<>();
        for (Figure figure : figures) {
            List<Point> points = points(alike, values.getOrDefault(figure, Map.of()));
            if (!points.isEmpty()) {
                trends.add(Trend.of(quantity(figure), points));
            }
        }
        return new SeriesTrend(series, alike.get(0).manner(), alike, trends, notes);
    }

    private static Series only(Logbook logbook, List<Entry> selected) throws Problem {
        Map<Series, String> names = new LinkedHashMap<>();
        selected.forEach(e -> names.putIfAbsent(e.series().key(), e.series().labelled()));
        if (names.isEmpty()) {
            throw Problem.input(
                    logbook.place().shown(),
                    "no entry fits. See printassay log list for what is there.");
        }
        if (names.size() > 1) {
            throw Problem.usage(
                    "A trend is of one printer, paper and route. There are "
                            + names.size()
                            + ": "
                            + names.values().stream()
                                    .sorted()
                                    .limit(MOST_NAMED)
                                    .collect(Collectors.joining("; "))
                            + (names.size() > MOST_NAMED ? "; ..." : "")
                            + ". Choose with --printer, --paper, --route.");
        }
        return selected.get(0).series();
    }

    private static List<Point> points(List<Entry> entries, Map<Long, Double> values) {
        List<Point> points = new ArrayList<>();
        for (Entry entry : entries) {
            Double value = values.get(entry.id());
            if (value != null) {
                points.add(new Point(entry.id(), entry.readAt(), value, entry.baseline()));
            }
        }
        return points;
    }

    private static List<String> notes(List<Entry> selected, List<Entry> alike) {
        List<String> notes = new ArrayList<>();
        int others = selected.size() - alike.size();
        if (others > 0) {
            notes.add(
                    others
                            + (others == 1 ? " print was" : " prints were")
                            + " read in another way than the newest ("
                            + alike.get(0).manner()
                            + "), or printed from another chart, and left out.");
        }
        @Nullable String before = alike.get(0).calibration();
        for (Entry entry : alike) {
            if (!Objects.equals(before, entry.calibration())) {
                notes.add(
                        "The scanner's calibration changed at no. "
                                + entry.id()
                                + ": a jump there may be the scanner's, not the printer's.");
            }
            before = entry.calibration();
        }
        return notes;
    }

    static Followed quantity(Figure figure) {
        return new Followed(
                figure.key(), figure.label(), figure.unit(), figure.decimals(), figure.step());
    }

    /**
     * How prints differ though nothing changed, for those who check and compare: standard
     * deviations of the prints that the limits stand on, of every figure with enough of them. Not
     * from differences between neighbours as the limits are: prints may lie far apart in time, and
     * slow wander is part of how they differ.
     *
     * @param from what the logbook is called
     */
    public KnownSpread spread(String from) {
        Map<Figure, Double> deviations = new EnumMap<>(Figure.class);
        Map<Figure, Integer> freedoms = new EnumMap<>(Figure.class);
        IntSummaryStatistics prints = new IntSummaryStatistics();
        for (Trend trend : trends) {
            List<Point> usual = trend.usual();
            Figure figure = Figure.ofKey(trend.quantity().key()).orElse(null);
            if (figure != null && usual.size() >= ControlLimits.FEWEST) {
                double[] values = usual.stream().mapToDouble(Point::value).toArray();
                double rounding = trend.quantity().step() / Math.sqrt(12);
                deviations.put(
                        figure, Math.max(new StandardDeviation().evaluate(values), rounding));
                freedoms.put(figure, usual.size() - 1);
                prints.accept(usual.size());
            }
        }
        return deviations.isEmpty()
                ? KnownSpread.NONE
                : new KnownSpread(
                        new PrintSpread(deviations, freedoms),
                        from,
                        List.of(
                                new KnownSpread.Told(
                                        series.shown(), prints.getMin(), prints.getMax())));
    }

    /** Numbers of the entries that are the baseline; empty when the user named none. */
    public Set<Long> baseline() {
        Set<Long> ids = new HashSet<>();
        entries.stream().filter(Entry::baseline).forEach(entry -> ids.add(entry.id()));
        return ids;
    }
}
