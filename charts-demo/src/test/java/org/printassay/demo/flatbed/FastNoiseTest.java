package org.printassay.demo.flatbed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FastNoiseTest {
    /** Normal distribution: 68.27 % within one deviation, 95.45 % within two (any table). */
    @Test
    void isNormal() {
        FastNoise noise = new FastNoise(5);
        int n = 1_000_000;
        double sum = 0;
        double squares = 0;
        int one = 0;
        int two = 0;
        for (int i = 0; i < n; i++) {
            double x = noise.gaussian();
            sum += x;
            squares += x * x;
            one += Math.abs(x) < 1 ? 1 : 0;
            two += Math.abs(x) < 2 ? 1 : 0;
        }
        // Four standard errors of a million draws.
        assertEquals(0, sum / n, 0.004);
        assertEquals(1, squares / n, 0.006);
        assertEquals(0.6827, one / (double) n, 0.002);
        assertEquals(0.9545, two / (double) n, 0.001);
    }
}
