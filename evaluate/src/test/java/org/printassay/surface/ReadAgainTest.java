package org.printassay.surface;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;

/**
 * How far lines and bands of simulated tints scatter that are read again, against what checks take
 * for it: strength to twice 1/z and 5 %, modulation to a quarter of what is just visible. A longer
 * run with {@code -DsurfaceTrials=400}.
 */
class ReadAgainTest {
    private static final int TRIALS = Math.max(12, Integer.getInteger("surfaceTrials", 12));

    /** A standard deviation of so few is known to three of its own standard errors. */
    private static final double KNOWN = 1 + 3 / Math.sqrt(2.0 * (TRIALS - 1));

    private static List<TintTrace> tints(int seed, MadeTint.Line line, MadeTint.Band band) {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            MadeTint tint =
                    new MadeTint(1000L * seed + k, 100, 40 + 15 * k, 1.5, 0.05).withDust(20);
            tints.add(tint.with(line).with(band).trace("T" + k, Rgb8.grey(90 + 40 * k), Along.Y));
        }
        return tints;
    }

    @ParameterizedTest
    @CsvSource({"0.085, 0.2", "0.085, 0.5", "0.17, 0.2", "0.4, 0.06", "0.4, 0.5"})
    void strengthScattersNoMoreThanIsTaken(double width, double contrast) {
        SummaryStatistics strength = new SummaryStatistics();
        SummaryStatistics z = new SummaryStatistics();
        for (int seed = 0; seed < TRIALS; seed++) {
            double at = 40 + 0.013 * seed;
            MadeTint.Line line = new MadeTint.Line(at, width, contrast);
            for (FoundLine found :
                    LineDetector.find(
                            tints(seed, line, new MadeTint.Band(5, 0, 0)), MadeTint.SIGMA_MM)) {
                if (Math.abs(found.positionMm() - at) < 0.3) {
                    strength.addValue(found.strength());
                    z.addValue(found.z());
                }
            }
        }
        assertTrue(strength.getN() >= 0.9 * TRIALS, strength.getN() + " found");
        double share = strength.getStandardDeviation() / strength.getMean();
        assertTrue(share <= KNOWN * Math.hypot(2 / z.getMean(), 0.05), "scatters by " + share);
    }

    @ParameterizedTest
    @CsvSource({"2, 0.15", "6, 0.3", "6, 1.2"})
    void modulationScattersNoMoreThanIsTaken(double period, double amplitude) {
        SummaryStatistics over = new SummaryStatistics();
        for (int seed = 0; seed < TRIALS; seed++) {
            MadeTint.Band band = new MadeTint.Band(period, amplitude, 0.1 * seed);
            for (FoundBand found :
                    BandDetector.find(
                            tints(seed, new MadeTint.Line(50, 0.1, 0), band),
                            ContrastSensitivity.USUAL)) {
                if (Math.abs(found.periodMm() / period - 1) < 0.03) {
                    over.addValue(found.overThreshold());
                }
            }
        }
        assertTrue(over.getN() >= 0.9 * TRIALS, over.getN() + " found");
        double taken = Math.hypot(0.25, 0.05 * over.getMean());
        assertTrue(
                over.getStandardDeviation() <= KNOWN * taken,
                "scatters by " + over.getStandardDeviation());
    }
}
