package org.printassay.logbook;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleConsumer;
import org.printassay.problem.Problem;

/**
 * Takes an export into a logbook. The whole file is checked first, so that a damaged one changes
 * nothing; what is there already stays as it is, so that an import can be repeated.
 */
public final class LogbookImport {
    private LogbookImport() {}

    /**
     * Whether a file is a whole and valid export, before a logbook is begun for it.
     *
     * @throws Problem input, when it is not
     */
    public static void check(Path from) throws Problem {
        new ExportLines(from).each(line -> {});
    }

    /**
     * Imports a file. Baselines come along for printers, papers and routes that have none here.
     *
     * @param progress told the share that is done
     * @return how many entries had which outcome
     * @throws Problem input, when the file is not a whole and valid export
     */
    public static Map<Added.Outcome, Integer> read(
            Logbook logbook, Path from, DoubleConsumer progress) throws Problem {
        ExportLines lines = new ExportLines(from);
        int all = lines.each(line -> {});
        Set<Series> settled = new HashSet<>();
        for (Entry entry : logbook.entries(Selection.ALL)) {
            if (entry.baseline()) {
                settled.add(entry.series());
            }
        }
        Map<Added.Outcome, Integer> outcomes = new EnumMap<>(Added.Outcome.class);
        List<ExportLines.Line> some = new ArrayList<>();
        int[] done = new int[1];
        lines.each(
                line -> {
                    some.add(line);
                    done[0]++;
                    if (some.size() < Addition.AT_ONCE && done[0] < all) {
                        return;
                    }
                    add(logbook, some, settled, outcomes);
                    some.clear();
                    progress.accept((double) done[0] / all);
                });
        return outcomes;
    }

    private static void add(
            Logbook logbook,
            List<ExportLines.Line> lines,
            Set<Series> settled,
            Map<Added.Outcome, Integer> outcomes)
            throws Problem {
        List<Addition> additions =
                lines.stream()
                        .map(one -> new Addition(one.evaluation(), one.readAt(), one.note()))
                        .toList();
        List<Added> all = logbook.addAll(additions, false);
        for (int i = 0; i < all.size(); i++) {
            Added added = all.get(i);
            outcomes.merge(added.outcome(), 1, Integer::sum);
            boolean ours = added.outcome() != Added.Outcome.OTHER_RESULTS;
            if (ours && lines.get(i).baseline() && !settled.contains(added.entry().series())) {
                logbook.addToBaseline(added.entry().id());
            }
        }
    }
}
