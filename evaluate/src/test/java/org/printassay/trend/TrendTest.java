package org.printassay.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Random series are simulated: normal values, fixed seeds. */
class TrendTest {
    private static final Followed L = new Followed("white.lab.l", "Paper white", "L*", 1, 0.001);
    private static final Followed LEVEL = new Followed("shadows.firstVisible", "", "", 0, 1);

    private static Trend trend(Followed quantity, int count, IntToDoubleFunction value) {
        return Trend.of(quantity, points(count, value, -1, -1));
    }

    private static List<Point> points(int count, IntToDoubleFunction value, int from, int to) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Instant at = Instant.parse("2026-01-01T00:00:00Z").plusSeconds(86_400L * i);
            points.add(new Point(i + 1, at, value.applyAsDouble(i), i >= from && i <= to));
        }
        return points;
    }

    private static ControlLimits limits(Trend trend) {
        return Objects.requireNonNull(trend.limits());
    }

    private static IntToDoubleFunction noise(long seed) {
        Random random = new Random(seed);
        return i -> 95 + 0.3 * random.nextGaussian();
    }

    /**
     * NIST/SEMATECH e-Handbook, 6.3.2.2: flow rate of ten batches; data and results from memory.
     */
    @Test
    void individualsChartOfTheHandbook() {
        List<Double> flow = List.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        ControlLimits limits = ControlLimits.of(flow, 0.001);
        double printed = 0.5e-4;
        assertEquals(50.81, limits.centre(), printed);
        assertEquals(1.8778, ControlLimits.meanMovingRange(flow), printed);
        assertEquals(55.8041, limits.upper(), printed);
        assertEquals(45.8159, limits.lower(), printed);
        assertTrue(flow.stream().noneMatch(limits::beyond), "in control, says the handbook");
        // The factor that other books print for 3 / d2.
        assertEquals(2.66, ControlLimits.WIDTH / ControlLimits.RANGE_OF_TWO, 0.5e-2);
    }

    /** d2 is the mean range of two normal values, 2 / sqrt(pi): here by its integral. */
    @Test
    void constantFollowsFromTheNormalDistribution() {
        NormalDistribution normal = new NormalDistribution();
        double sum = 0;
        double h = 0.001;
        for (double x = -8; x < 8; x += h) {
            double below = normal.cumulativeProbability(x);
            sum += h * 2 * below * (1 - below);
        }
        assertEquals(ControlLimits.RANGE_OF_TWO, sum, 0.5e-3);
    }

    /** NIST/SEMATECH e-Handbook, 6.3.2.4: start 50, s 2.0539, weight 0.3; from memory. */
    @Test
    void runningMeanOfTheHandbook() {
        List<Double> data =
                List.of(
                        52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6,
                        49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        double[] printed = {
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36,
            49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99
        };
        List<Double> means = RunningMean.over(data, 50, 0.3);
        for (int i = 0; i < printed.length; i++) {
            // The handbook carries rounded values on: a unit of its last place may be lost.
            assertEquals(printed[i], means.get(i), 0.011, "value " + (i + 1));
        }
        assertEquals(52.5884, 50 + RunningMean.reach(2.0539, 0.3), 0.5e-3);
    }

    @Test
    void tooFewPrintsSayNothing() {
        Trend trend = trend(L, 7, noise(1));
        assertNull(trend.limits());
        assertEquals(Trend.State.UNKNOWN, trend.state());
        assertEquals(List.of(), trend.changes());
    }

    @Test
    void unchangedPrinterIsSteady() {
        Trend trend = trend(L, 40, noise(2));
        assertEquals(Trend.State.STEADY, trend.state());
        assertEquals(95, limits(trend).centre(), 0.2);
        assertEquals(0.3, limits(trend).sigma(), 0.1);
        assertFalse(limits(trend).provisional());
        assertTrue(limits(trend(L, 12, noise(2))).provisional());
    }

    @Test
    void oneOddPrintIsAJumpAndNoDrift() {
        Trend trend = trend(L, 40, i -> 95 + 0.3 * Math.sin(2.4 * i) + (i == 30 ? 6 : 0));
        assertEquals(1, trend.changes().size(), trend.changes().toString());
        Shift jump = trend.changes().get(0);
        assertEquals(Shift.Kind.JUMP, jump.kind());
        assertEquals(30, jump.first());
        assertEquals(30, jump.last());
        assertEquals(6, jump.extent(), 1);
        assertEquals(Trend.State.STEADY, trend.state());
    }

    @Test
    void slowChangeIsADriftLongBeforeSingleValuesTell() {
        IntToDoubleFunction noise = noise(4);
        Trend trend = trend(L, 45, i -> noise.applyAsDouble(i) + (i >= 25 ? 0.45 : 0));
        assertEquals(Trend.State.DRIFTED, trend.state());
        Shift drift =
                trend.changes().stream()
                        .filter(change -> change.kind() == Shift.Kind.DRIFT)
                        .findFirst()
                        .orElseThrow();
        assertTrue(drift.first() > 25 && drift.first() < 38, drift.toString());
        assertEquals(0.45, drift.extent(), 0.25);
    }

    @Test
    void levelsThatFlickerByOneAreSteadyAndTwoAreAJump() {
        assertEquals(List.of(), trend(LEVEL, 30, i -> i == 25 ? 13 : 12).changes());
        assertEquals(1, trend(LEVEL, 30, i -> i == 25 ? 14 : 12).changes().size());
    }

    @Test
    void namedBaselineIsTheCentreAndWhatCameBeforeIsNotJudged() {
        IntToDoubleFunction noise = noise(5);
        List<Point> points = points(60, i -> noise.applyAsDouble(i) + (i < 20 ? 5 : 0), 25, 44);
        Trend trend = Trend.of(L, points);
        assertEquals(25, trend.judgedFrom());
        assertEquals(95, limits(trend).centre(), 0.2);
        assertEquals(35, trend.running().size());
        assertEquals(Trend.State.STEADY, trend.state());
    }

    @Test
    void oneNamedPrintIsTheCentreWithTheSpreadOfTheSeries() {
        List<Point> points = points(30, noise(6), 3, 3);
        Trend trend = Trend.of(L, points);
        assertEquals(points.get(3).value(), limits(trend).centre());
        assertEquals(0.3, limits(trend).sigma(), 0.1);
    }

    /** The rates that {@link Trend} and the pages state. */
    @Test
    void falseAlarmsAreAsRareAsStated() {
        assertRates(ControlLimits.ENOUGH, 11, 3.5);
        assertRates(100, 4, 2);
        Random random = new Random(9);
        ControlLimits known = new ControlLimits(0, 1, 0, 0, ControlLimits.WIDTH);
        long beyond =
                random.doubles(200_000)
                        .map(new NormalDistribution()::inverseCumulativeProbability)
                        .filter(known::beyond)
                        .count();
        assertEquals(2.7, beyond / 200.0, 0.35);
    }

    private static void assertRates(int baseline, double jumps, double drifts) {
        int series = 1000;
        int after = 50;
        Random random = new Random(8);
        int[] begun = new int[2];
        for (int s = 0; s < series; s++) {
            List<Point> points =
                    points(baseline + after, i -> random.nextGaussian(), 0, baseline - 1);
            for (Shift change : Trend.of(L, points).changes()) {
                begun[change.kind() == Shift.Kind.JUMP ? 0 : 1] +=
                        change.first() >= baseline ? 1 : 0;
            }
        }
        double per1000 = 1000.0 / (series * (double) after);
        assertEquals(jumps, begun[0] * per1000, 1.2, "jumps");
        assertEquals(drifts, begun[1] * per1000, 0.8, "drifts");
    }
}
