package org.printassay.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.printassay.compare.Figure;
import org.printassay.report.TrendWords;
import org.printassay.trend.ControlLimits;
import org.printassay.trend.Point;
import org.printassay.trend.Trend;

/** Values are made by hand. */
class SeriesTrendTest {
    private static Trend trend(Figure figure, double value) {
        return trend(figure, value, 20);
    }

    private static Trend trend(Figure figure, double value, int prints) {
        List<Point> points =
                LongStream.rangeClosed(1, prints)
                        .mapToObj(
                                i -> new Point(i, Instant.ofEpochSecond(86_400 * i), value, false))
                        .toList();
        return Trend.of(SeriesTrend.quantity(figure), points);
    }

    /** Rounding alone is no change, however alike the prints before were. */
    @Test
    void oneStepOfTheFileIsWithinTheLimits() {
        for (Figure figure : Figure.values()) {
            ControlLimits limits = Objects.requireNonNull(trend(figure, 50_000).limits());
            double step = figure == Figure.GAMUT_VOLUME || figure.whole() ? 1 : 0.001;
            assertFalse(limits.beyond(50_000 + 0.99 * step), figure.key());
        }
    }

    /** One digit more than in reports, which tell it in thousands. */
    @Test
    void gamutVolumesAreToldInHundreds() {
        Trend trend = trend(Figure.GAMUT_VOLUME, 812_345);
        assertEquals("812300", TrendWords.value(trend, 812_345));
        assertEquals("812400", TrendWords.value(trend, 812_351.5));
    }

    @Test
    void countsAreWholeAndTheirMeansAreNot() {
        Trend trend = trend(Figure.LINES, 3);
        assertEquals("3", TrendWords.value(trend, 3));
        assertEquals("3.3", TrendWords.value(trend, 3.25 + 0.01));
        assertEquals("0.0", TrendWords.value(trend, -0.01));
    }

    /**
     * The rate of chance alarms is known for limits from 20 prints; others are named as they are.
     */
    @Test
    void limitsAreSaidToComeFromThePrintsTheyComeFrom() {
        Trend full = trend(Figure.WHITE_L, 90, 25);
        Trend young = trend(Figure.BLACK_L, 9, 11);
        String usual = TrendWords.chance(List.of(full));
        assertTrue(usual.endsWith("(limits from 20 prints, normal spread)."), usual);
        String few = TrendWords.chance(List.of(young));
        assertTrue(
                few.endsWith(
                        "(roughly: this is for limits from 20 prints, and these are from 11,"
                                + " normal spread)."),
                few);
        String both = TrendWords.chance(List.of(full, young, trend(Figure.LINES, 3, 5)));
        assertTrue(both.contains("these are from 11 to 20, normal"), both);
    }
}
