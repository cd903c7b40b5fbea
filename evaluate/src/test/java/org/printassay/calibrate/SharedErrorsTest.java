package org.printassay.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.SharedError;
import org.printassay.sheet.Patch;

/** Invented colours of real patches. */
class SharedErrorsTest {
    private final List<Patch> patches;

    SharedErrorsTest() throws Exception {
        patches = new SimulatedScan().sheet.patches();
    }

    private List<PatchColour> scan(double darker) {
        return patches.stream()
                .map(
                        patch ->
                                PressRoutes.colour(
                                        patch,
                                        new Lab(50 - darker, 0.1 * darker, 0),
                                        new Lab(95, 0, 0)))
                .toList();
    }

    /**
     * By the standard error of a mean (ISO/IEC Guide 98-3, 4.2.3): s over the root of their number.
     */
    private static void assertMeans(List<Double> darker, List<List<PatchColour>> scans) {
        List<Reading> readings =
                new Merging(true, true, true)
                        .readings(scans.stream().flatMap(List::stream).toList());
        List<SharedError> causes = SharedErrors.disagreement(readings, scans, true);
        double mean = darker.stream().mapToDouble(d -> d).average().orElseThrow();
        double squares = darker.stream().mapToDouble(d -> Math.pow(d - mean, 2)).sum();
        double expected = Math.sqrt(squares / (darker.size() - 1) / darker.size());
        IntStream.range(0, readings.size())
                .forEach(
                        i -> {
                            double l =
                                    causes.stream()
                                            .mapToDouble(c -> Math.pow(c.shifts().get(i).l(), 2))
                                            .sum();
                            assertEquals(expected, Math.sqrt(l), 1e-6);
                        });
    }

    @Test
    void whatRepeatsDisagreeByIsTheErrorOfTheirMean() {
        assertMeans(List.of(0.0, 1.0), List.of(scan(0), scan(1)));
        assertMeans(List.of(0.0, 0.2, 1.1), List.of(scan(0), scan(0.2), scan(1.1)));
    }

    @Test
    void oneScanDisagreesWithNothing() {
        List<PatchColour> one = scan(0);
        List<Reading> readings = new Merging(true, true, true).readings(one);
        assertEquals(List.of(), SharedErrors.disagreement(readings, List.of(one), true));
    }
}
