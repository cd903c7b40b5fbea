package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;
import org.printassay.evaluation.Evaluation;
import org.printassay.reading.MadeReadings;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.Trust;

/** Simulated readings of one code, some of them flagged. */
class CodeMeansTest {
    private static final Rgb8 CODE = Rgb8.grey(8);

    private static Reading reading(int number, double l, ReadingFlag... flags) {
        return MadeReadings.neutral("N" + number, CODE.r(), l, flags);
    }

    private static CodeMeans of(List<Reading> readings) {
        return CodeMeans.of(
                List.of(Evaluation.builder(Trust.PROFILED_SCAN, "srgb").patches(readings).build()),
                false);
    }

    /**
     * Up to a quarter a clipped reading is one of the others; beyond that neither they nor the rest
     * of their code are of use, for those that are left are the lightest.
     */
    @ParameterizedTest
    @CsvSource({"4, 1", "8, 2", "5, 1", "4, 2", "3, 1", "8, 3", "1, 1"})
    void codesOfWhichMoreThanAQuarterIsClippedAreLeftOut(int patches, int clipped) {
        CodeMeans means =
                of(
                        IntStream.range(0, patches)
                                .mapToObj(
                                        i ->
                                                i < clipped
                                                        ? reading(i, 12, ReadingFlag.CLIPPED)
                                                        : reading(i, 10))
                                .toList());
        boolean compared = 4 * clipped <= patches;
        assertEquals(compared ? patches : 0, means.count(CODE));
        assertEquals(compared ? Set.of(CODE) : Set.of(), means.codes());
    }

    @Test
    void doubtfulReadingsAreTakenWhereThereAreNoOthers() {
        ReadingFlag dust = ReadingFlag.DUSTY;
        assertEquals(10, of(List.of(reading(0, 10), reading(1, 14, dust))).mean(CODE).l());
        assertEquals(
                13, of(List.of(reading(0, 12, dust), reading(1, 14, dust))).mean(CODE).l(), 1e-12);
    }
}
