package org.printassay.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

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
        List<Point> points =
                LongStream.rangeClosed(1, 20)
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
}
