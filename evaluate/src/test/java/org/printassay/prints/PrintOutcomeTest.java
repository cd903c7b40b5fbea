package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PrintOutcomeTest {
    /** The order of the design: the first of 70, 5, 3, 4, 6, 1, 0 that occurred. */
    @Test
    void theGravestExitCodeStands() {
        assertEquals(0, PrintOutcome.exitCode(IntStream.of(0, 0)));
        assertEquals(0, PrintOutcome.exitCode(IntStream.empty()));
        assertEquals(1, PrintOutcome.exitCode(IntStream.of(0, 1)));
        assertEquals(6, PrintOutcome.exitCode(IntStream.of(1, 6)));
        assertEquals(4, PrintOutcome.exitCode(IntStream.of(6, 4, 1)));
        assertEquals(3, PrintOutcome.exitCode(IntStream.of(4, 3)));
        assertEquals(5, PrintOutcome.exitCode(IntStream.of(3, 5, 4)));
        assertEquals(70, PrintOutcome.exitCode(IntStream.of(5, 70, 0)));
    }
}
