package org.printassay.logbook;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import org.printassay.problem.Problem;

/**
 * Takes an export into a logbook. The whole file is checked first, so that a damaged one changes
 * nothing; what is there already stays as it is, so that an import can be repeated, also one that
 * was cut off.
 */
public final class LogbookImport {
    private final ExportLines lines;
    private final int entries;

    private LogbookImport(ExportLines lines, int entries) {
        this.lines = lines;
        this.entries = entries;
    }

    /**
     * Checks that a file is a whole and valid export, before a logbook is begun for it.
     *
     * @throws Problem input, when it is not
     */
    public static LogbookImport of(Path from) throws Problem {
        ExportLines lines = new ExportLines(from);
        return new LogbookImport(lines, lines.each(line -> {}));
    }

    /**
     * Imports it. Baselines come along for printers, papers, routes, charts and ways of reading
     * that have none here.
     *
     * @param progress told the share that is done
     * @return how many entries had which outcome
     * @throws Problem input, when the file was changed meanwhile
     */
    public Map<Added.Outcome, Integer> into(Logbook logbook, DoubleConsumer progress)
            throws Problem {
        Set<BaselineKey> settled =
                logbook.entries(Selection.ALL).stream()
                        .filter(Entry::baseline)
                        .map(BaselineKey::of)
                        .collect(Collectors.toSet());
        Map<Added.Outcome, Integer> outcomes = new EnumMap<>(Added.Outcome.class);
        List<Long> baseline = new ArrayList<>();
        List<ExportLines.Line> some = new ArrayList<>();
        int[] done = new int[1];
        lines.each(
                line -> {
                    some.add(line);
                    done[0]++;
                    if (some.size() < Addition.AT_ONCE && done[0] < entries) {
                        return;
                    }
                    List<Added> added = add(logbook, some);
                    for (int i = 0; i < added.size(); i++) {
                        Added one = added.get(i);
                        outcomes.merge(one.outcome(), 1, Integer::sum);
                        boolean ours = one.outcome() != Added.Outcome.OTHER_RESULTS;
                        boolean open = !settled.contains(BaselineKey.of(one.entry()));
                        if (ours && open && some.get(i).baseline()) {
                            baseline.add(one.entry().id());
                        }
                    }
                    some.clear();
                    progress.accept((double) done[0] / entries);
                });
        // Together and last: an import that was cut off leaves no half of a baseline.
        logbook.addToBaselines(baseline);
        return outcomes;
    }

    private static List<Added> add(Logbook logbook, List<ExportLines.Line> lines) throws Problem {
        return logbook.addAll(
                lines.stream()
                        .map(one -> new Addition(one.evaluation(), one.readAt(), one.note()))
                        .toList(),
                false);
    }
}
