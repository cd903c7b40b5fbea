package org.printassay.cli;

import java.util.Optional;
import org.printassay.logbook.Logbook;
import org.printassay.logbook.Opening;
import org.printassay.problem.Problem;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What commands that hold prints against each other take from a logbook. */
final class LogbookSpreadOption {
    @Option(
            names = "--logbook-spread",
            description =
                    "Take from the logbook how far unchanged prints of this printer, paper and route"
                            + " lie apart; it needs 8 of them, read in the same way.")
    private boolean spread;

    @Mixin private LogbookOption logbook = new LogbookOption();

    /** Whether the spread is to come from the logbook. */
    boolean spread() {
        return spread;
    }

    /** Whether the user named a logbook. */
    boolean named() {
        return logbook.named();
    }

    /**
     * The logbook, to be closed; empty when nothing of it is wanted.
     *
     * @param more whether more than the spread is wanted of it
     * @throws Problem usage, when one is named for nothing; else when it cannot be read
     */
    Optional<Logbook> open(boolean more) throws Problem {
        if (spread || more) {
            return Optional.of(logbook.open(Opening.READ));
        }
        if (logbook.named()) {
            throw Problem.usage(
                    "nothing is taken from --logbook here. Add --logbook-spread to take how far"
                            + " unchanged prints lie apart.");
        }
        return Optional.empty();
    }
}
