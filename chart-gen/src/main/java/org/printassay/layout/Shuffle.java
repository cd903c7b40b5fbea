package org.printassay.layout;

/**
 * A small pseudo-random sequence that is part of the frozen layout: SplitMix64 (Steele, Lea, Flood,
 * "Fast splittable pseudorandom number generators", 2014), so that no library can change it.
 */
final class Shuffle {
    private long state;

    Shuffle(long seed) {
        state = seed;
    }

    /** A number from 0 to bound - 1. */
    int next(int bound) {
        state += 0x9E3779B97F4A7C15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        z ^= z >>> 31;
        return (int) Long.remainderUnsigned(z, bound);
    }
}
