package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.compare.SimplePrints.print;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;
import org.printassay.metric.Tone;

/** Figures of a print with the two halves of their uncertainty. */
class PrintFiguresTest {
    private static FigureValue of(Evaluation evaluation, Figure figure) {
        return PrintFigures.of(evaluation).get(figure).orElseThrow();
    }

    private static double random(FigureValue value) {
        Double random = value.random();
        assertNotNull(random);
        return random;
    }

    @Test
    void aBudgetIsSplitIntoWhatPrintsShareAndWhatTheyDoNot() {
        FigureValue white = of(print("A").white(95.5).evaluation(), Figure.WHITE_L);
        assertEquals(95.5, white.value());
        // Widened for 30 degrees of freedom: the variance of Student's distribution is 30 / 28.
        assertEquals(0.1 * Math.sqrt(30 / 28.0), random(white), 1e-12);
        assertEquals(0.4, white.systematic(), 1e-12);
    }

    @Test
    void whatWasNotJudgedIsNotThere() {
        PrintFigures figures = PrintFigures.of(print("A").evaluation());
        assertTrue(figures.get(Figure.GAMUT_VOLUME).isEmpty());
        assertTrue(figures.get(Figure.LINES).isEmpty());
        assertFalse(figures.all().stream().anyMatch(f -> f.figure() == Figure.TONE_RMS));
    }

    @Test
    void withoutRepeatsTheRandomPartIsUnknown() {
        Evaluation e = print("A").evaluation();
        Budget once =
                new Budget(
                        "white.lab.l",
                        "L*",
                        95,
                        List.of(new Budget.Part(Budget.Kind.SYSTEMATIC, 0.4, null)));
        FigureValue white = of(with(e, null, List.of(once)), Figure.WHITE_L);
        assertNull(white.random());
        assertNull(white.standard());
    }

    /** Four greys, own errors 0.2, white and black 0.1 each: worked by hand. */
    @Test
    void aZonesMeanHoldsTheErrorOfItsAim() {
        List<Tone.Point> points =
                List.of(point(40), point(50), point(60), point(50), point(10), point(90));
        Tone tone = new Tone("aim", 1, 0.2, 2, 5, -1, -2, -3, true, List.of(), points, List.of());
        Evaluation e = print("A").evaluation();
        List<Budget> budgets =
                List.of(budget("white.lab.l"), budget("black.lab.l"), budget("tone.rmsDeltaL"));
        FigureValue midtones = of(with(e, tone, budgets), Figure.TONE_MIDTONES);
        assertEquals(-2, midtones.value());
        assertEquals(Math.sqrt(0.01 + 2 * 0.05 * 0.05), random(midtones), 1e-12);
        FigureValue shadows = of(with(e, tone, budgets), Figure.TONE_SHADOWS);
        assertEquals(Math.sqrt(0.04 + 0.09 * 0.09 + 0.01 * 0.01), random(shadows), 1e-12);
    }

    private static Budget budget(String figure) {
        return new Budget(figure, "L*", 1, List.of(new Budget.Part(Budget.Kind.RANDOM, 0.1, null)));
    }

    private static Tone.Point point(double fileL) {
        return new Tone.Point((int) (2.55 * fileL), fileL, fileL, fileL, 0.2, 1);
    }

    private static Evaluation with(Evaluation e, @Nullable Tone tone, List<Budget> budgets) {
        return e.toBuilder().tone(tone).uncertainty(budgets).build();
    }
}
