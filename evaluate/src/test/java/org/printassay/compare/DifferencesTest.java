package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.stat.inference.OneWayAnova;
import org.apache.commons.math3.stat.inference.TTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Intervals of differences, against a handbook's example and a general library. */
class DifferencesTest {
    private static final Figure FIGURE = Figure.WHITE_L;

    /** Half a unit of the last printed digit. */
    private static final double PRINTED = 0.5e-5;

    private static List<FigureValue> values(double... values) {
        return Arrays.stream(values).mapToObj(v -> new FigureValue(FIGURE, v, null, 0)).toList();
    }

    private static FigureValue value(double value, @Nullable Double random, double systematic) {
        return new FigureValue(FIGURE, value, random, systematic);
    }

    private static Difference of(List<FigureValue> one, List<FigureValue> other) {
        return of(one, other, PrintSpread.UNKNOWN, true);
    }

    private static Difference of(
            List<FigureValue> one, List<FigureValue> other, PrintSpread spread, boolean alike) {
        return Differences.of(FIGURE, one, other, spread, alike).orElseThrow();
    }

    private static double number(@Nullable Double value) {
        assertNotNull(value);
        return value;
    }

    /** So many values of exactly this mean and standard deviation. */
    private static double[] sample(int n, double mean, double deviation) {
        double[] out = new double[n];
        double squares = 0;
        for (int i = 0; i < n; i++) {
            out[i] = i - (n - 1) / 2.0;
            squares += out[i] * out[i];
        }
        double scale = deviation / Math.sqrt(squares / (n - 1));
        return Arrays.stream(out).map(x -> mean + scale * x).toArray();
    }

    /**
     * NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3 and 7.3.1, two-sample t for equal
     * means (miles per gallon of cars): sizes, means and deviations of both samples, the pooled
     * deviation 6.34260, the difference -10.33643, T = -12.62059 and the standard error 0.81903
     * (from memory). The error it prints is off by one in its last digit: 10.33643 / 12.62059 is
     * 0.81901.
     */
    @Test
    void agreesWithTheHandbooksExample() {
        List<FigureValue> one = values(sample(249, 20.14458, 6.41470));
        List<FigureValue> other = values(sample(79, 30.48101, 6.10771));
        double pooled = PrintSpread.pooled(FIGURE, List.of(one, other)).orElseThrow().deviation();
        assertEquals(6.34260, pooled, PRINTED);
        Difference d = of(one, other);
        assertEquals(10.33643, d.value(), PRINTED);
        assertEquals(12.62059, d.value() / number(d.standard()), 2 * PRINTED);
        assertEquals(0.81903, number(d.standard()), 2e-5);
        assertEquals(326, number(d.freedom()), 1e-9);
        // Its critical value of t for 326 degrees of freedom, printed with four decimals.
        assertEquals(1.9673, number(d.halfWidth()) / number(d.standard()), 0.5e-4);
        assertTrue(d.measurable());
        assertEquals(Difference.Basis.REPEATS, d.basis());
    }

    /** Commons Math's two-sample t test with equal variances is the witness. */
    @Test
    void chanceAgreesWithAGeneralLibrary() {
        Random random = new Random(11);
        for (int trial = 0; trial < 50; trial++) {
            double[] one = random.doubles(2 + trial % 5).toArray();
            double[] other = random.doubles(2 + trial % 3).map(x -> x + 0.4).toArray();
            double p = new TTest().homoscedasticTTest(one, other);
            Difference d = of(values(one), values(other));
            assertEquals(p, d.chance(), 1e-9);
            assertEquals(p < 0.05, d.measurable());
        }
    }

    /** Commons Math's analysis of variance is the witness for repeats on more than two sides. */
    @Test
    void spreadOfManySidesIsThatOfAnalysisOfVariance() {
        Random random = new Random(12);
        List<double[]> groups = new ArrayList<>();
        List<List<FigureValue>> sides = new ArrayList<>();
        for (int n : new int[] {2, 4, 3}) {
            double[] values = random.doubles(n).toArray();
            groups.add(values);
            sides.add(values(values));
        }
        PrintSpread.Pooled pooled = PrintSpread.pooled(FIGURE, sides).orElseThrow();
        double f = new OneWayAnova().anovaFValue(groups);
        double grand = groups.stream().flatMapToDouble(Arrays::stream).average().orElseThrow();
        double between = 0;
        for (double[] g : groups) {
            between += g.length * Math.pow(Arrays.stream(g).average().orElseThrow() - grand, 2);
        }
        assertEquals(f, between / 2 / (pooled.deviation() * pooled.deviation()), 1e-9 * f);
        assertEquals(6, pooled.freedom());
    }

    @Test
    void onePrintEachIsJudgedByItsReadingAlone() {
        Difference d = of(List.of(value(90, 0.3, 1)), List.of(value(91, 0.4, 1)));
        assertEquals(Difference.Basis.THESE_PRINTS, d.basis());
        assertEquals(0.5, number(d.standard()), 1e-12);
        assertEquals(1.959964 * 0.5, number(d.halfWidth()), 1e-6);
        assertNull(d.freedom());
    }

    /** ISO/IEC Guide 98-3, 5.2: what both share cancels; what they do not share adds twice. */
    @Test
    void systematicPartsCancelOnlyWherePrintsWereReadAlike() {
        List<FigureValue> one = List.of(value(90, 0.3, 1));
        List<FigureValue> other = List.of(value(91, 0.4, 1));
        Difference d = of(one, other, PrintSpread.UNKNOWN, false);
        assertEquals(Math.sqrt(0.25 + 2), number(d.standard()), 1e-12);
        assertFalse(d.measurable());
    }

    /** G.4, Welch and Satterthwaite, worked by hand: u 3 with freedom 2 and u 4 exact. */
    @Test
    void freedomOfASumIsThatOfItsParts() {
        List<FigureValue> one =
                Arrays.stream(sample(2, 90, 3)).mapToObj(v -> value(v, null, 4)).toList();
        List<FigureValue> other =
                Arrays.stream(sample(2, 95, 3)).mapToObj(v -> value(v, null, 0)).toList();
        Difference d = of(one, other, PrintSpread.UNKNOWN, false);
        assertEquals(5, number(d.standard()), 1e-9);
        assertEquals(625 / (81 / 2.0), number(d.freedom()), 1e-9);
    }

    @Test
    void aKnownSpreadIsNeverLessThanReadingAdds() {
        PrintSpread small = new PrintSpread(Map.of(FIGURE, 0.1));
        List<FigureValue> one = List.of(value(90, 0.3, 0));
        List<FigureValue> other = List.of(value(91, 0.4, 0));
        assertEquals(0.5, number(of(one, other, small, true).standard()), 1e-12);
        PrintSpread large = new PrintSpread(Map.of(FIGURE, 1.0), Map.of(FIGURE, 4));
        Difference d = of(one, other, large, true);
        assertEquals(Math.sqrt(2), number(d.standard()), 1e-12);
        assertEquals(Difference.Basis.KNOWN_SPREAD, d.basis());
        // Student's t for 4 degrees of freedom (common tables): 2.776.
        assertEquals(2.776, number(d.halfWidth()) / number(d.standard()), 0.5e-3);
    }

    @Test
    void repeatsAndAKnownSpreadArePooledByTheirFreedom() {
        PrintSpread seen = new PrintSpread(Map.of(FIGURE, 1.0), Map.of(FIGURE, 2));
        PrintSpread known = new PrintSpread(Map.of(FIGURE, 2.0), Map.of(FIGURE, 6));
        PrintSpread both = seen.and(known);
        assertEquals(Math.sqrt((2 * 1 + 6 * 4) / 8.0), both.of(FIGURE).orElseThrow(), 1e-12);
        assertEquals(8, both.freedom(FIGURE).orElseThrow());
        PrintSpread exact = new PrintSpread(Map.of(FIGURE, 0.5));
        assertEquals(0.5, seen.and(exact).of(FIGURE).orElseThrow());
        assertTrue(exact.and(seen).freedom(FIGURE).isEmpty());
    }

    @Test
    void withoutRepeatsOrReadingNothingIsTold() {
        Difference d = of(List.of(value(2, null, 0)), List.of(value(5, 0.1, 0)));
        assertNull(d.halfWidth());
        assertFalse(d.measurable());
        assertTrue(Double.isNaN(d.chance()));
    }

    @Test
    void countsThatAgreeByChanceAreNotExact() {
        List<FigureValue> three =
                List.of(
                        new FigureValue(Figure.SHADOWS_VISIBLE, 3, null, 0),
                        new FigureValue(Figure.SHADOWS_VISIBLE, 3, null, 0));
        List<FigureValue> four =
                List.of(
                        new FigureValue(Figure.SHADOWS_VISIBLE, 4, null, 0),
                        new FigureValue(Figure.SHADOWS_VISIBLE, 4, null, 0));
        Difference d =
                Differences.of(Figure.SHADOWS_VISIBLE, three, four, PrintSpread.UNKNOWN, true)
                        .orElseThrow();
        assertFalse(d.measurable());
    }

    /**
     * Repeats that agree to the last digit leave the systematic part, which is known exactly: 1.96
     * standard deviations (handbook tables), not Student's factor for one repeat, and not nothing.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-9, 1e-6, 1e-4, 1e-3})
    void repeatsThatAgreeLeaveTheSystematicPart(double spread) {
        List<FigureValue> one = List.of(value(90, null, 0.5), value(90 + spread, null, 0.5));
        List<FigureValue> other = List.of(value(91, null, 0.5), value(91 + spread, null, 0.5));
        Difference d = of(one, other, PrintSpread.UNKNOWN, false);
        assertEquals(1.95996 * 0.5 * Math.sqrt(2), number(d.halfWidth()), 1e-4);
        assertFalse(d.measurable());
        // Two-sided, of 1.4142 standard deviations: handbook tables.
        assertEquals(0.1573, d.chance(), 0.5e-4);
    }

    /** A file holds three decimals: repeats that agree in them are no nearer than that. */
    @Test
    void repeatsAreNoNearerThanAFileRounds() {
        List<FigureValue> one = values(90.123, 90.123);
        List<FigureValue> other = values(90.124, 90.124);
        double pooled = PrintSpread.pooled(FIGURE, List.of(one, other)).orElseThrow().deviation();
        assertEquals(0.001 / Math.sqrt(12), pooled, 1e-12);
        assertFalse(of(one, other).measurable());
    }

    /** 95 of 100 intervals hold the truth, with few repeats and an unknown spread. */
    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        Random random = new Random(13);
        int held = 0;
        int trials = 4000;
        for (int i = 0; i < trials; i++) {
            double[] one = random.doubles(2).map(x -> random.nextGaussian()).toArray();
            double[] other = random.doubles(3).map(x -> 1 + random.nextGaussian()).toArray();
            Difference d = of(values(one), values(other));
            held += Math.abs(d.value() - 1) <= number(d.halfWidth()) ? 1 : 0;
        }
        // Three standard deviations of the share.
        assertEquals(0.95, held / (double) trials, 3 * Math.sqrt(0.95 * 0.05 / trials));
    }
}
