package org.printassay.robust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;

/** Witness: Apache Commons Math. */
class MedianTest {
    private static double[] drawn(Random random, int count) {
        return random.doubles(count, -5, 5).map(v -> Math.rint(4 * v) / 4).toArray();
    }

    @Test
    void isThatOfTheLibrary() {
        Random random = new Random(1);
        for (int n = 1; n < 60; n++) {
            double[] values = drawn(random, n);
            double[] before = values.clone();
            assertEquals(StatUtils.percentile(values, 50), Median.of(values), 1e-12);
            assertEquals(Arrays.toString(before), Arrays.toString(values));
        }
        assertTrue(Double.isNaN(Median.of()));
        assertTrue(Double.isNaN(Median.upper()));
    }

    @Test
    void theUpperOneIsAValueWithAsManyAboveAsBelowOrOneLess() {
        Random random = new Random(2);
        for (int n = 1; n < 60; n++) {
            double[] values = random.doubles(n).toArray();
            double upper = Median.upper(values);
            assertEquals(n / 2, Arrays.stream(values).filter(v -> v < upper).count());
            assertEquals(n - 1 - n / 2, Arrays.stream(values).filter(v -> v > upper).count());
        }
    }

    @Test
    void withoutSortingItIsTheSame() {
        Random random = new Random(3);
        for (int n = 1; n < 60; n++) {
            double[] values = drawn(random, n);
            float[] more = new float[n + 3];
            for (int i = 0; i < n; i++) {
                more[i] = (float) values[i];
            }
            Arrays.fill(more, n, more.length, Float.MAX_VALUE);
            assertEquals(Median.upper(values), FastMedian.upper(more, n), 0);
        }
    }

    @Test
    void deviationsAreThoseOfTheNormalDistribution() {
        NormalDistribution normal = new NormalDistribution();
        assertEquals(1 / normal.inverseCumulativeProbability(0.75), Mad.TO_SIGMA, 1e-4);
        double[] quantiles = new double[9999];
        for (int i = 0; i < quantiles.length; i++) {
            quantiles[i] = 3 * normal.inverseCumulativeProbability((i + 0.5) / quantiles.length);
        }
        assertEquals(3, Mad.sigma(quantiles), 1e-3);
    }
}
