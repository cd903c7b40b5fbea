package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Lab;
import org.printassay.reading.MadeReadings;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.SharedError;

/** Simulated readings. Differences by CIEDE2000 (ISO/CIE 11664-6): S_L is 1 at a mean L* of 50. */
class UnsureReadingsTest {
    private static Reading reading(double l, ReadingFlag... flags) {
        return MadeReadings.neutral("N1", 100, l, flags);
    }

    private static Set<ReadingFlag> flags(double l, boolean colour, Lab... shifts) {
        List<SharedError> causes =
                List.of(shifts).stream().map(s -> new SharedError(List.of(s))).toList();
        return UnsureReadings.flagged(List.of(reading(l)), causes, colour).get(0).flags();
    }

    /** Two standard errors of 2 dE00, from 49 to 51: one of 1 L*. */
    @ParameterizedTest
    @CsvSource({"0.99, false", "1.01, true"})
    void twoStandardErrorsOfTwoAreUnsure(double error, boolean unsure) {
        Set<ReadingFlag> wanted = unsure ? Set.of(ReadingFlag.UNSURE) : Set.of();
        assertEquals(wanted, flags(50 - error, true, new Lab(error, 0, 0)));
        // Two causes of 1 / sqrt(2) are as much as one of 1.
        double part = error / Math.sqrt(2);
        Lab shift = new Lab(part, 0, 0);
        assertEquals(wanted, flags(50 - part, true, shift, shift));
    }

    /** Colour that a grey scan does not have cannot be unsure. */
    @Test
    void greyScansAreUnsureInLightnessAlone() {
        Lab green = new Lab(0, -3, 0);
        assertEquals(Set.of(ReadingFlag.UNSURE), flags(50, true, green));
        assertEquals(Set.of(), flags(50, false, green));
    }

    @Test
    void otherFlagsStay() {
        List<SharedError> cause = List.of(new SharedError(List.of(new Lab(5, 0, 0))));
        assertEquals(
                Set.of(ReadingFlag.UNSURE, ReadingFlag.UNEVEN),
                UnsureReadings.flagged(List.of(reading(20, ReadingFlag.UNEVEN)), cause, true)
                        .get(0)
                        .flags());
    }
}
