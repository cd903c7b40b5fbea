package org.printassay.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which readings of a code count; all are simulated. */
class UndoubtedTest {
    private static final ReadingFlag UNEVEN = ReadingFlag.UNEVEN;
    private static final ReadingFlag DUSTY = ReadingFlag.DUSTY;

    private static Reading black(double l, ReadingFlag... flags) {
        return MadeReadings.neutral("N0", 0, l, flags);
    }

    private static List<Double> kept(Reading... readings) {
        return Undoubted.of(Arrays.asList(readings)).stream()
                .map(r -> r.best().l())
                .sorted()
                .toList();
    }

    @Test
    void doubtfulReadingsAreLeftOutWhereThereAreOthers() {
        assertEquals(List.of(9.0), kept(black(9), black(14, UNEVEN), black(15, DUSTY)));
        assertEquals(List.of(14.0, 15.0), kept(black(14, UNEVEN), black(15, DUSTY)));
        assertEquals(List.of(9.0), kept(black(9, ReadingFlag.UNSURE), black(14, UNEVEN)));
    }

    /** One black that looks even, of four, read 4 L* lighter than the others, which all did not. */
    @Test
    void whatIsUnevenInMostIsNoFaultOfOnePlace() {
        assertEquals(
                List.of(13.7, 14.2, 14.2, 18.3),
                kept(
                        black(18.3),
                        black(14.2, UNEVEN),
                        black(13.7, UNEVEN, ReadingFlag.UNSURE),
                        black(14.2, UNEVEN)));
        assertEquals(
                List.of(18.3, 18.4),
                kept(black(18.3), black(18.4), black(14.2, UNEVEN), black(13.7, UNEVEN)));
        assertEquals(
                List.of(18.3),
                kept(black(18.3), black(14, UNEVEN, DUSTY), black(13, UNEVEN, DUSTY)));
    }
}
