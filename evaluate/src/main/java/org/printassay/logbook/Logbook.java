package org.printassay.logbook;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Figure;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;
import org.printassay.report.EvaluationJson;

/**
 * Evaluations over time. Every change is whole or not made at all, whatever happens to the program;
 * any number of programs may use one logbook at once. Not for use by several threads.
 *
 * <p>All methods throw a {@link Problem} in words when the database cannot do what is asked: input
 * when it cannot be read, is damaged or was written by a newer version, output when it cannot be
 * written.
 */
public final class Logbook implements AutoCloseable {
    private final LogbookPlace place;
    private final Connection connection;
    private final Handle handle;
    private final EntryRows entries;
    private final FigureRows figures;
    private final BaselineRows baselines;

    private Logbook(LogbookPlace place, Connection connection, Handle handle) {
        this.place = place;
        this.connection = connection;
        this.handle = handle;
        this.entries = new EntryRows(handle);
        this.figures = new FigureRows(handle);
        this.baselines = new BaselineRows(handle, entries);
    }

    /** Opens a logbook; begins it where there is none. */
    public static Logbook open(LogbookPlace place) throws Problem {
        return open(place, Opening.BEGIN);
    }

    /** Opens a logbook for a purpose. */
    public static Logbook open(LogbookPlace place, Opening opening) throws Problem {
        Database database = Database.of(place, opening);
        try {
            Connection connection = database.connect();
            try {
                Migrations.apply(database, connection);
                return new Logbook(place, connection, Jdbi.create(connection).open());
            } catch (SQLException | Problem | RuntimeException e) {
                connection.close();
                throw e;
            }
        } catch (SQLException e) {
            throw Failures.problem(place, e);
        } catch (JdbiException | FlywayException e) {
            throw translated(place, e);
        }
    }

    /** Where it is. */
    public LogbookPlace place() {
        return place;
    }

    /**
     * Adds an evaluation. The same print is never there twice: see {@link Added.Outcome}.
     *
     * @param readAt when the print was read
     * @param note null for nothing
     * @param replace whether other results of the same print give way to these; the entry gets a
     *     new number and keeps its place in a baseline
     */
    public Added add(Evaluation evaluation, Instant readAt, @Nullable String note, boolean replace)
            throws Problem {
        return addAll(List.of(new Addition(evaluation, readAt, note)), replace).get(0);
    }

    /**
     * Adds evaluations as {@link #add} does: all or, where one fails, none. Much faster than one by
     * one, since every change waits for the disk. Others that write wait meanwhile: not for
     * hundreds at once.
     *
     * @return what became of each, in their order
     */
    public List<Added> addAll(List<Addition> additions, boolean replace) throws Problem {
        // Packed before others have to wait.
        List<NewEntry> packed = additions.stream().map(NewEntry::of).toList();
        return change(
                h -> {
                    List<Added> out = new ArrayList<>();
                    for (NewEntry one : packed) {
                        out.add(insert(one, replace));
                    }
                    return out;
                });
    }

    private Added insert(NewEntry wanted, boolean replace) {
        EntryRows.Draft draft = wanted.draft();
        Added.Outcome outcome = Added.Outcome.ADDED;
        boolean baseline = false;
        Optional<Long> made = entries.insert(draft);
        // More than once only where another removes or replaces it at the same time.
        while (made.isEmpty()) {
            Entry there = entries.ofContent(draft.contentId()).orElse(null);
            if (there != null) {
                if (holds(there, draft.text())) {
                    return new Added(Added.Outcome.ALREADY_THERE, there);
                }
                if (!replace) {
                    return new Added(Added.Outcome.OTHER_RESULTS, there);
                }
                entries.remove(there.id());
                outcome = Added.Outcome.REPLACED;
                baseline |= there.baseline();
            }
            made = entries.insert(draft);
        }
        long id = made.get();
        if (baseline) {
            baselines.mark(id);
        }
        figures.insert(id, wanted.values().all());
        return new Added(outcome, entries.find(id).orElseThrow());
    }

    /** Whether an entry's results are these; an older version may have written them otherwise. */
    private boolean holds(Entry there, PackedText text) {
        PackedText kept = entries.text(there.id()).orElse(null);
        if (kept == null || kept.sha256().equals(text.sha256())) {
            return kept != null;
        }
        try {
            Evaluation old = EvaluationJson.parse("entry", kept.text());
            return PackedText.sha256(EvaluationJson.write(old)).equals(text.sha256());
        } catch (IOException | Problem e) {
            return false;
        }
    }

    /** Selected entries, oldest first. */
    public List<Entry> entries(Selection selection) throws Problem {
        return read(h -> entries.select(selection));
    }

    /** The series of selected entries, each once. */
    public List<Series> series(Selection selection) throws Problem {
        Set<Series> out = new LinkedHashSet<>();
        entries(selection).forEach(entry -> out.add(entry.series()));
        return List.copyOf(out);
    }

    /** The number of a print that is there, with these results or others. */
    Optional<Long> idOf(Evaluation evaluation) throws Problem {
        PackedText text = PackedText.of(EvaluationJson.write(evaluation));
        return read(h -> entries.ofContent(Identity.of(evaluation, text))).map(Entry::id);
    }

    /** An entry by its number. */
    public Entry entry(long id) throws Problem {
        Optional<Entry> entry = read(h -> entries.find(id));
        return entry.orElseThrow(() -> missing(id));
    }

    private Problem missing(long id) {
        return Problem.input(
                place.shown(), "there is no entry " + id + ". See printassay log list.");
    }

    /** The text of an entry's evaluation file. */
    public String text(long id) throws Problem {
        return textIfThere(id).orElseThrow(() -> missing(id));
    }

    Optional<String> textIfThere(long id) throws Problem {
        Optional<PackedText> packed = read(h -> entries.text(id));
        try {
            return packed.isEmpty() ? Optional.empty() : Optional.of(packed.get().text());
        } catch (IOException e) {
            throw Failures.damaged(place, "the evaluation of entry " + id + " is not whole");
        }
    }

    /** An entry's evaluation. */
    public Evaluation evaluation(long id) throws Problem {
        return EvaluationJson.parse("entry " + id, text(id));
    }

    /** Removes entries, all or none; they leave their baselines too. */
    public List<Entry> remove(List<Long> ids) throws Problem {
        return change(
                h -> {
                    List<Entry> gone = found(ids);
                    gone.forEach(entry -> entries.remove(entry.id()));
                    return gone;
                });
    }

    /**
     * Makes entries the baseline of their series, chart and way of reading, instead of what was.
     *
     * @throws Problem usage, when they are not of one series and chart, read in one manner
     */
    public List<Entry> setBaseline(List<Long> ids) throws Problem {
        return change(
                h -> {
                    List<Entry> wanted = found(ids);
                    Entry first = wanted.get(0);
                    for (Entry entry : wanted) {
                        if (!entry.belongsWith(first)) {
                            throw Problem.usage(
                                    "A baseline is of one printer, paper, route and chart, read in"
                                            + " one way: entries "
                                            + first.id()
                                            + " and "
                                            + entry.id()
                                            + " differ in that.");
                        }
                    }
                    baselines.lock(first.series());
                    entries.select(Selection.of(first.series())).stream()
                            .filter(entry -> entry.baseline() && entry.belongsWith(first))
                            .forEach(entry -> baselines.unmark(entry.id()));
                    wanted.forEach(entry -> baselines.mark(entry.id()));
                    return found(ids);
                });
    }

    /** Takes entries out of their baselines; all or none. */
    public List<Entry> clearBaseline(List<Long> ids) throws Problem {
        return change(
                h -> {
                    ids.forEach(baselines::unmark);
                    return found(ids);
                });
    }

    /** Marks entries as parts of their series' baselines, beside what is; all or none. */
    void addToBaselines(List<Long> ids) throws Problem {
        change(
                h -> {
                    ids.forEach(baselines::mark);
                    return ids;
                });
    }

    private List<Entry> found(List<Long> ids) throws Problem {
        List<Entry> out = new ArrayList<>();
        for (long id : new LinkedHashSet<>(ids)) {
            out.add(entries.find(id).orElseThrow(() -> missing(id)));
        }
        return out;
    }

    /** Values of figures by entry, of one series. */
    Map<Figure, Map<Long, Double>> values(Series series, List<Figure> wanted) throws Problem {
        return read(h -> figures.ofSeries(entries.findSeries(series).orElse(-1L), wanted));
    }

    private <T> T read(HandleCallback<T, Problem> work) throws Problem {
        try {
            return work.withHandle(handle);
        } catch (JdbiException e) {
            throw translated(place, e);
        }
    }

    private <T> T change(HandleCallback<T, Problem> work) throws Problem {
        try {
            return handle.inTransaction(work);
        } catch (JdbiException e) {
            throw translated(place, e);
        }
    }

    private static Problem translated(LogbookPlace place, RuntimeException e) {
        SQLException cause = Failures.cause(e);
        if (cause == null) {
            throw e;
        }
        return Failures.problem(place, cause);
    }

    @Override
    public void close() throws Problem {
        try {
            handle.close();
            connection.close();
        } catch (SQLException e) {
            throw Failures.problem(place, e);
        }
    }
}
