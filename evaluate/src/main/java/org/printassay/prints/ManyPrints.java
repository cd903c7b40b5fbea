package org.printassay.prints;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Progress;
import org.printassay.problem.Problem;

/**
 * The same work on many prints, as many at once as there are processors and memory for. A print
 * that fails does not stop the others.
 */
public final class ManyPrints {
    private static final int OUR_FAULT = 70;

    private ManyPrints() {}

    /** Work on one print. */
    @FunctionalInterface
    public interface Work<R> {
        /**
         * Does it.
         *
         * @param progress to be told how far this print has come
         * @return what is to be kept of it: small, for there may be many
         */
        R of(OnePrint print, Progress progress) throws Problem;
    }

    /**
     * Does the work on all prints.
     *
     * @param progress told how far all of it has come
     * @return one outcome a print, in their order; where the files of a print turn out to be of
     *     several ({@link OnePrint#apart}), one for each of these
     */
    public static <R> List<PrintOutcome<R>> run(
            List<OnePrint> prints, Work<R> work, Progress progress) {
        MemoryBound memory = MemoryBound.ofThisProcess();
        SharedProgress shared = new SharedProgress(prints, progress);
        int workers =
                Math.max(1, Math.min(prints.size(), Runtime.getRuntime().availableProcessors()));
        List<Future<@Nullable List<PrintOutcome<R>>>> begun = new ArrayList<>();
        List<PrintOutcome<R>> all = new ArrayList<>();
        // Not daemons: the program waits for them in any case.
        ExecutorService pool = Executors.newFixedThreadPool(workers);
        try {
            for (int i = 0; i < prints.size(); i++) {
                OnePrint print = prints.get(i);
                Progress own = shared.of(i);
                begun.add(pool.submit(() -> memory.within(print, () -> roomy(print, work, own))));
            }
            for (int i = 0; i < prints.size(); i++) {
                List<PrintOutcome<R>> outcomes = begun.get(i).get();
                if (outcomes == null) {
                    // Beside others there was too little memory: once more, alone.
                    OnePrint print = prints.get(i);
                    Progress own = shared.of(i);
                    outcomes = memory.alone(() -> attempt(print, work, own));
                }
                all.addAll(outcomes);
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while prints were read", e);
        } finally {
            pool.shutdownNow();
        }
        return all;
    }

    /** Null when the memory did not suffice. */
    private static <R> @Nullable List<PrintOutcome<R>> roomy(
            OnePrint print, Work<R> work, Progress progress) {
        try {
            return outcomes(print, work, progress);
        } catch (OutOfMemoryError e) {
            return null;
        }
    }

    private static <R> List<PrintOutcome<R>> attempt(
            OnePrint print, Work<R> work, Progress progress) {
        try {
            return outcomes(print, work, progress);
        } catch (OutOfMemoryError e) {
            return List.of(
                    PrintOutcome.failed(
                            print,
                            Problem.Kind.INPUT.exitCode,
                            "needs more memory than the program is given. Scan at a lower"
                                    + " resolution, or as TIFF or PNG."));
        }
    }

    private static <R> List<PrintOutcome<R>> outcomes(
            OnePrint print, Work<R> work, Progress progress) {
        PrintOutcome<R> together = outcome(print, work, progress);
        progress.reached(1);
        if (print.apart().isEmpty() || together.exitCode() != Problem.Kind.CHART.exitCode) {
            return List.of(together);
        }
        List<PrintOutcome<R>> apart = new ArrayList<>();
        for (OnePrint one : print.apart()) {
            apart.add(
                    outcome(one, work, Progress.NONE)
                            .noting("its name is like others', but it is a print of its own"));
        }
        boolean helped = apart.stream().anyMatch(outcome -> outcome.failure() == null);
        return helped ? apart : List.of(together);
    }

    private static <R> PrintOutcome<R> outcome(OnePrint print, Work<R> work, Progress progress) {
        try {
            return PrintOutcome.of(print, work.of(print, progress));
        } catch (Problem problem) {
            // Beside others a print that was named wrongly is an input that cannot be used.
            boolean usage = problem.kind() == Problem.Kind.USAGE;
            return PrintOutcome.failed(
                    print,
                    (usage ? Problem.Kind.INPUT : problem.kind()).exitCode,
                    problem.getMessage());
        } catch (StackOverflowError e) {
            return PrintOutcome.failed(
                    print,
                    Problem.Kind.INPUT.exitCode,
                    "is nested deeper than any real input. Save it anew.");
        } catch (RuntimeException e) {
            if (e.getCause() instanceof OutOfMemoryError error) {
                throw error; // of a thread beside this one
            }
            return PrintOutcome.failed(
                    print,
                    OUR_FAULT,
                    "printassay has a fault of its own ("
                            + e
                            + "). Please report it with the command and its files.");
        }
    }
}
