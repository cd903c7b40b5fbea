package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;

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
                            .orElseThrow();
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
                    Gradient.of(Prints.print(Prints.fault(aim -> aim), 0.3, seed)).orElseThrow();
            significant += found.significant() ? 1 : 0;
        }
        // Binomial, 200 at 5 %: more than 19 or fewer than 2 happens once in a hundred.
        assertTrue(significant >= 2 && significant <= 19, significant + " of 200");
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
                        .orElseThrow();
        assertTrue(found.significant());
        assertEquals("less than would show", found.words());
    }

    @Test
    void wordsNameSidesAndCorners() {
        assertEquals("darker towards the bottom left", Gradient.words(1, -1));
        assertEquals("darker towards the top", Gradient.words(0.1, 2));
    }
}
