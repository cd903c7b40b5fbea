package org.printassay.logbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Baseline;
import org.printassay.compare.ChartIdentity;
import org.printassay.compare.Figure;
import org.printassay.compare.KnownSpread;
import org.printassay.compare.PrintLabel;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.problem.Problem;
import org.printassay.trend.ControlLimits;

/**
 * What a logbook knows of unchanged prints: the baseline that a print is to be held against, and
 * how far prints of its printer, paper and route lie apart. What nobody said of a print fits
 * anything, so long as it fits one series alone. Evaluations that were read are kept. Not for use
 * by several threads.
 */
public final class SteadyPrints {
    private static final int MOST_NAMED = 5;

    private final Logbook logbook;
    private final String name;
    private final Map<Long, Evaluation> read = new LinkedHashMap<>();
    private final Map<String, KnownSpread> spreads = new LinkedHashMap<>();
    private @Nullable List<Entry> entries;

    /** Of a logbook, which the caller closes. */
    public SteadyPrints(Logbook logbook) {
        this.logbook = logbook;
        this.name = "the logbook " + logbook.place().name();
    }

    /**
     * The baseline of a print's printer, paper and route; of several charts, that of the print's,
     * and of several ways of reading likewise. A print that is part of it is held against the
     * others.
     *
     * @throws Problem input, when none is named or none fits; usage, when several fit; chart, when
     *     it is of another chart
     */
    public Baseline baseline(Evaluation print) throws Problem {
        List<Entry> all = entries().stream().filter(Entry::baseline).toList();
        if (all.isEmpty()) {
            throw Problem.input(
                    logbook.place().shown(),
                    "no baseline is named there. Name the prints that show the printer as it should"
                            + " be: printassay log baseline NUMBER...");
        }
        Series series = fitting(all, print, "baseline");
        List<Entry> own = all.stream().filter(e -> e.series().equals(series)).toList();
        List<Entry> ofChart = ofChart(own, print);
        if (ofChart.isEmpty()) {
            throw Problem.chart(
                    PrintLabel.byFile(print),
                    "was printed from another chart than the baseline of "
                            + series.shown()
                            + " in the logbook. Print the baseline's chart again, or name prints of"
                            + " this one as a baseline: printassay log baseline NUMBER...");
        }
        String manner = Identity.manner(print);
        List<Entry> readAlike = preferred(ofChart, e -> PrintDetails.same(e.manner(), manner));
        Optional<Long> itself = logbook.idOf(print);
        List<Entry> fit = preferred(readAlike, e -> itself.isEmpty() || e.id() != itself.get());
        List<Evaluation> prints = new ArrayList<>();
        for (Entry entry : fit) {
            prints.add(evaluation(entry.id()));
        }
        return new Baseline(prints, name, fit.stream().map(Entry::id).toList());
    }

    /** Those that are wanted, or all where none is. */
    private static List<Entry> preferred(List<Entry> all, Predicate<Entry> wanted) {
        List<Entry> some = all.stream().filter(wanted).toList();
        return some.isEmpty() ? all : some;
    }

    /**
     * Those of a print's chart; what stands in an evaluation is asked where its id does not tell.
     */
    private List<Entry> ofChart(List<Entry> all, Evaluation print) throws Problem {
        List<Entry> same = new ArrayList<>();
        for (Entry entry : all) {
            boolean other =
                    ChartIdentity.known(entry.chart(), print.chartId())
                            ? ChartIdentity.differ(entry.chart(), print.chartId())
                            : ChartIdentity.differ(evaluation(entry.id()), print);
            if (!other) {
                same.add(entry);
            }
        }
        return same;
    }

    private Evaluation evaluation(long id) throws Problem {
        Evaluation there = read.get(id);
        if (there == null) {
            there = logbook.evaluation(id);
            read.put(id, there);
        }
        return there;
    }

    /**
     * How prints lie apart of the printers, papers and routes of some prints, read as these were;
     * pooled where there are several. Those that the logbook has too few prints of are passed over.
     * The prints themselves tell nothing of it: what they depart by is what is asked.
     *
     * @throws Problem input, when there are too few prints of all of them
     */
    public KnownSpread spread(List<Evaluation> prints) throws Problem {
        KnownSpread known = KnownSpread.NONE;
        Set<String> seen = new LinkedHashSet<>();
        List<String> few = new ArrayList<>();
        Set<Long> themselves = new TreeSet<>();
        for (Evaluation print : prints) {
            logbook.idOf(print).ifPresent(themselves::add);
        }
        for (Evaluation print : prints) {
            String manner = Identity.manner(print);
            List<Entry> read =
                    entries().stream()
                            .filter(e -> PrintDetails.same(e.manner(), manner))
                            .filter(e -> !ChartIdentity.differ(e.chart(), print.chartId()))
                            .filter(e -> !themselves.contains(e.id()))
                            .toList();
            List<Entry> alike = ofChart(read, print);
            if (candidates(alike, print).size() > 1) {
                fitting(alike, print, "series"); // says which
            }
            Series series =
                    candidates(alike, print).stream()
                            .findFirst()
                            .orElse(Series.of(print.details()));
            List<Entry> own = alike.stream().filter(e -> e.series().equals(series)).toList();
            String key =
                    series
                            + "\n"
                            + PrintDetails.key(manner)
                            + "\n"
                            + own.stream().map(Entry::id).toList();
            if (!seen.add(key)) {
                continue;
            }
            KnownSpread one = spread(key, series, own);
            if (one.known()) {
                known = known.known() ? known.and(one) : one;
            } else {
                few.add(own.size() + " of " + series.shown() + " (" + manner + ")");
            }
        }
        if (!known.known()) {
            throw Problem.input(
                    logbook.place().shown(),
                    "too few prints to tell how far unchanged ones lie apart: "
                            + String.join("; ", few)
                            + "; "
                            + ControlLimits.FEWEST
                            + " are needed. Add more, or leave the spread of the logbook out.");
        }
        return known;
    }

    private KnownSpread spread(String key, Series series, List<Entry> own) throws Problem {
        KnownSpread there = spreads.get(key);
        if (there == null) {
            there =
                    own.isEmpty()
                            ? KnownSpread.NONE
                            : SeriesTrend.of(
                                            logbook,
                                            series,
                                            own,
                                            List.of(Figure.values()),
                                            List.of())
                                    .spread(name);
            spreads.put(key, there);
        }
        return there;
    }

    /** Read once, so that all prints are held against the same state. */
    private List<Entry> entries() throws Problem {
        List<Entry> there = entries;
        if (there == null) {
            there = logbook.entries(Selection.ALL);
            entries = there;
        }
        return there;
    }

    /** The one series that what is said of a print fits. */
    private Series fitting(List<Entry> entries, Evaluation print, String what) throws Problem {
        Set<Series> fit = candidates(entries, print);
        if (fit.size() == 1) {
            return fit.iterator().next();
        }
        String said = Series.of(print.details()).shown();
        if (fit.isEmpty()) {
            throw Problem.input(
                    logbook.place().shown(),
                    "there is no "
                            + what
                            + " for "
                            + PrintLabel.byFile(print)
                            + " ("
                            + said
                            + "). There are: "
                            + names(
                                    entries.stream()
                                            .map(Entry::series)
                                            .collect(Collectors.toCollection(LinkedHashSet::new)))
                            + ". Say --printer, --paper and --route as they are there, or name a"
                            + " baseline: printassay log baseline NUMBER...");
        }
        throw Problem.usage(
                PrintLabel.byFile(print)
                        + " ("
                        + said
                        + ") fits more than one "
                        + what
                        + " of the logbook: "
                        + names(fit)
                        + ". Evaluate it with --printer, --paper and --route.");
    }

    /** The very series of a print where it is there, else those that contradict nothing. */
    private static Set<Series> candidates(List<Entry> entries, Evaluation print) {
        PrintDetails said = print.details();
        Series own = Series.of(said);
        Set<Series> fit = new LinkedHashSet<>();
        for (Entry entry : entries) {
            Series there = entry.series();
            if (there.key().equals(own.key())) {
                return Set.of(there);
            }
            if (fits(own.printer(), there.printer())
                    && fits(own.paper(), there.paper())
                    && fits(own.route(), there.route())) {
                fit.add(there);
            }
        }
        return fit;
    }

    private static boolean fits(String said, String there) {
        return said.isEmpty() || PrintDetails.same(said, there);
    }

    private static String names(Set<Series> series) {
        return series.stream()
                        .limit(MOST_NAMED)
                        .map(Series::shown)
                        .collect(Collectors.joining("; "))
                + (series.size() > MOST_NAMED ? "; ..." : "");
    }
}
