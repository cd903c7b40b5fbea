package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.sheet.PointMm;

/** Simulated sheets with a known slope of lightness. */
class GradientTest {
    @Test
    void slopeIsMeasuredWithItsDirection() {
        int inside = 0;
        for (int seed = 0; seed < 40; seed++) {
            Gradient found =
                    Gradient.of(
                                    Prints.print(
                                            (code, at, aim) ->
                                                    new Lab(
                                                            aim.l()
                                                                    - 0.010 * at.x()
                                                                    - 0.002 * at.y(),
                                                            aim.a(),
                                                            aim.b()),
                                            0.3,
                                            seed))
                            .orElseThrow()
                            .gradient();
            assertTrue(found.significant());
            assertEquals("darker towards the right", found.words());
            // The patches lie somewhere in 190 by 270 mm: the slope, not the span, is known.
            inside += Math.abs(found.acrossPerMetre() + 10) < 3 ? 1 : 0;
        }
        assertTrue(inside >= 36, inside + " of 40");
    }

    @Test
    void evenSheetsHaveNoneInNineteenOfTwenty() {
        int significant = 0;
        for (int seed = 0; seed < 200; seed++) {
            Gradient found =
                    Gradient.of(Prints.print(Prints.fault(aim -> aim), 0.3, seed))
                            .orElseThrow()
                            .gradient();
            significant += found.significant() ? 1 : 0;
        }
        // Binomial, 200 at 5 %: more than 19 or fewer than 2 happens once in a hundred.
        assertTrue(significant >= 2 && significant <= 19, significant + " of 200");
    }

    /**
     * Few twins tell their spread badly. Student's factor of ten degrees of freedom is 2.23
     * (ISO/IEC Guide 98-3, table G.2); the share of alarms follows from the distribution of F.
     */
    @Test
    void fewTwinsRaiseNoMoreAlarmsThanMany() {
        Random random = new Random(41);
        int sheets = 4000;
        int significant = 0;
        for (int sheet = 0; sheet < sheets; sheet++) {
            Gradient.Fit found = Gradient.of(evenSheet(random)).orElseThrow();
            assertEquals(10, found.freedom());
            assertEquals(2.23, found.gradient().uncertainty() / found.standard(), 0.005);
            significant += found.gradient().significant() ? 1 : 0;
        }
        // Binomial, 4000 at 5 %: three standard deviations are 1 %.
        assertEquals(0.05, (double) significant / sheets, 0.01);
    }

    /** Six greys three times each, anywhere, with nothing but noise. */
    private static ReadingSet evenSheet(Random random) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 18; i++) {
            int level = i / 3 * 51;
            Lab lab = new Lab(20 + level * 0.3 + 0.2 * random.nextGaussian(), 0, 0);
            readings.add(
                    new Reading(
                            "p" + i,
                            Optional.empty(),
                            Rgb8.grey(level),
                            lab,
                            lab,
                            null,
                            null,
                            Set.of(),
                            new PointMm(190 * random.nextDouble(), 270 * random.nextDouble()),
                            1));
        }
        return new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true);
    }

    @Test
    void aSlopeThatNobodySeesHasNoDirection() {
        Gradient found =
                Gradient.of(
                                Prints.print(
                                        (code, at, aim) ->
                                                new Lab(
                                                        aim.l() - 0.0008 * at.x(),
                                                        aim.a(),
                                                        aim.b()),
                                        0.01,
                                        1))
                        .orElseThrow()
                        .gradient();
        assertTrue(found.significant());
        assertEquals("less than would show", found.words());
    }

    @Test
    void wordsNameSidesAndCorners() {
        assertEquals("darker towards the bottom left", Gradient.words(1, -1));
        assertEquals("darker towards the top", Gradient.words(0.1, 2));
    }
}
