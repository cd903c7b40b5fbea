package org.printassay.prints;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class OutcomeTest {
    /** The order of the design: the first of 70, 5, 3, 4, 6, 1, 0 that occurred. */
    @Test
    void theGravestExitCodeStands() {
        assertEquals(0, Outcome.exitCode(IntStream.of(0, 0)));
        assertEquals(0, Outcome.exitCode(IntStream.empty()));
        assertEquals(1, Outcome.exitCode(IntStream.of(0, 1)));
        assertEquals(6, Outcome.exitCode(IntStream.of(1, 6)));
        assertEquals(4, Outcome.exitCode(IntStream.of(6, 4, 1)));
        assertEquals(3, Outcome.exitCode(IntStream.of(4, 3)));
        assertEquals(5, Outcome.exitCode(IntStream.of(3, 5, 4)));
        assertEquals(70, Outcome.exitCode(IntStream.of(5, 70, 0)));
    }
}
