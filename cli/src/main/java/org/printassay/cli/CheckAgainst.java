package org.printassay.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.check.Baseline;
import org.printassay.check.Check;
import org.printassay.check.Checker;
import org.printassay.check.ToleranceSet;
import org.printassay.compare.KnownSpread;
import org.printassay.evaluation.Evaluation;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.SteadyPrints;
import org.printassay.problem.Problem;

/** What prints are checked against: a print that the user named, or what the logbook knows. */
final class CheckAgainst implements AutoCloseable {
    private final ToleranceSet tolerances;
    private final boolean spread;
    private final @Nullable Baseline named;
    private final @Nullable Logbook logbook;
    private final @Nullable SteadyPrints steady;

    /**
     * Against a print or a logbook.
     *
     * @param named baseline that the user named; empty to take the logbook's
     * @param logbook to be closed with this; empty when nothing is taken from it
     * @param spread whether it also tells how far unchanged prints lie apart
     */
    CheckAgainst(
            ToleranceSet tolerances,
            Optional<Evaluation> named,
            Optional<Logbook> logbook,
            boolean spread) {
        this.tolerances = tolerances;
        this.named = named.map(Baseline::of).orElse(null);
        this.logbook = logbook.orElse(null);
        this.steady = logbook.map(SteadyPrints::new).orElse(null);
        this.spread = spread;
    }

    /** Checks a print. May be called from several threads. */
    Check check(Evaluation print) throws Problem {
        Baseline baseline = named;
        KnownSpread seen = KnownSpread.NONE;
        if (steady != null) {
            synchronized (this) {
                baseline = baseline == null ? steady.baseline(print) : baseline;
                seen = spread ? steady.spread(List.of(print)) : seen;
            }
        }
        if (baseline == null) {
            throw new IllegalStateException("neither a baseline nor a logbook");
        }
        return Checker.check(baseline, print, tolerances, seen);
    }

    String tolerances() {
        return tolerances.name();
    }

    @Override
    public void close() throws Problem {
        if (logbook != null) {
            logbook.close();
        }
    }
}
