package org.printassay.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines, hairs and specks drawn on patches. All simulated. */
class CrossingLinesTest {
    private static final double SIDE = MadePatch.SIDE_MM;

    /** A line through a patch, askew by an angle against the page's rows. */
    private static boolean crossed(double degrees, double turnDegrees, double share) {
        Random random = new Random(4);
        MadePatch patch = new MadePatch(40, 300, 0.3, random);
        double x = Math.cos(Math.toRadians(degrees)) * 2 * SIDE * share;
        double y = Math.sin(Math.toRadians(degrees)) * 2 * SIDE * share;
        patch.line(SIDE / 2 - x, SIDE / 2 - y, SIDE / 2 + x, SIDE / 2 + y, 0.12, 0.5);
        return patch.reads(16, true, Math.toRadians(turnDegrees)).robust().crossed();
    }

    /** Whatever the sheet is turned by, along either side of it. */
    @ParameterizedTest
    @CsvSource({"0, 0", "90, 0", "1.5, 1.5", "91.5, 1.5", "30, 30", "120, 30", "0, 180", "90, 270"})
    void linesAlongThePageAreTold(double line, double turn) {
        assertEquals(true, crossed(line, turn, 1));
    }

    @ParameterizedTest
    @CsvSource({"20, 0", "45, 0", "75, 0", "0, 20", "90, 45"})
    void linesAskewAreHairsOrScratches(double line, double turn) {
        assertEquals(false, crossed(line, turn, 1));
    }

    @Test
    void aLineThatEndsIsNone() {
        assertEquals(true, crossed(0, 0, 1));
        assertEquals(false, crossed(0, 0, 0.1));
    }

    /** Several at once, as of a head with more than one nozzle out. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void severalLinesAreTold(int lines) {
        MadePatch patch = new MadePatch(40, 300, 0.3, new Random(4));
        for (int i = 1; i <= lines; i++) {
            double y = i * SIDE / (lines + 1);
            patch.line(-1, y, SIDE + 1, y, 0.12, 0.5);
        }
        assertEquals(true, patch.reads(16, true).robust().crossed());
    }

    @Test
    void specksAreNone() {
        Random random = new Random(9);
        List<Boolean> crossed = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            MadePatch patch = new MadePatch(40, 300, 0.3, random);
            for (int n = 0; n < 6; n++) {
                double x = SIDE * random.nextDouble();
                double y = SIDE * random.nextDouble();
                patch.line(x, y, x, y, 0.2 + 0.4 * random.nextDouble(), 0.3);
            }
            crossed.add(patch.reads(16, true).robust().crossed());
        }
        assertEquals(0, crossed.stream().filter(c -> c).count());
    }
}
