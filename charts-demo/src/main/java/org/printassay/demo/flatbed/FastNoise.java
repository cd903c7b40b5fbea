package org.printassay.demo.flatbed;

import java.util.random.RandomGenerator;

/**
 * Fast Gaussian numbers: a table of the normal distribution's quantiles, drawn from with 16 random
 * bits. Mean 0 exactly, standard deviation 1; nothing beyond 4.2 deviations. Bits by SplitMix64
 * (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators").
 */
final class FastNoise implements RandomGenerator {
    private static final float[] QUANTILES = quantiles();

    private long state;
    private long bits;
    private int left;

    FastNoise(long seed) {
        this.state = seed;
    }

    @Override
    public long nextLong() {
        state += 0x9E3779B97F4A7C15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    float gaussian() {
        if (left == 0) {
            bits = nextLong();
            left = 4;
        }
        float value = QUANTILES[(int) bits & 0xFFFF];
        bits >>>= 16;
        left--;
        return value;
    }

    /** Inverse of the cumulative normal by bisection-free Newton steps on a running integral. */
    private static float[] quantiles() {
        int n = 1 << 16;
        float[] table = new float[n];
        double x = 0;
        double cumulative = 0.5;
        double squares = 0;
        for (int i = n / 2; i < n; i++) {
            double target = (i + 0.5) / n;
            // Steps of the integral small enough for the mid-point rule.
            while (cumulative < target) {
                double density = density(x);
                double step = Math.min(1e-3, (target - cumulative) / density);
                cumulative += step * density(x + step / 2);
                x += step;
                if (target - cumulative < 1e-12) {
                    break;
                }
            }
            table[i] = (float) x;
            table[n - 1 - i] = (float) -x;
            squares += 2 * x * x;
        }
        float scale = (float) (1 / Math.sqrt(squares / n));
        for (int i = 0; i < n; i++) {
            table[i] *= scale;
        }
        return table;
    }

    private static double density(double x) {
        return Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);
    }
}
