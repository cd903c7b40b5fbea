package org.printassay.colour.icc;

/**
 * Arithmetic in words of 16 bits, 65535 for 1. Tables are worked through in it, step for step as
 * the widely used open colour engine (LittleCMS 2.14) does, so that results are the same to the
 * last bit rather than nearly the same: near black one word of linear light is dE76 0.06.
 */
final class Words {
    /** The word for 1. */
    static final int ONE = 65535;

    /** Roundings just below a half count as a half: the engine's floor keeps 16 binary places. */
    private static final double FLOOR_PLACES = 1.0 / (1 << 17);

    private Words() {}

    /** Word of a fraction: the nearest, held within 0-65535; 0 for NaN. */
    static int of(double fraction) {
        return nearest(fraction * ONE);
    }

    /** Nearest word of a value on the words' own scale; else as {@link #of}. */
    static int nearest(double value) {
        double up = value + 0.5;
        return up >= ONE ? ONE : up > 0 ? (int) (up + FLOOR_PLACES) : 0;
    }

    /** Fraction that a word stands for. */
    static double fraction(int word) {
        return word / (double) ONE;
    }

    /**
     * Place of a word among cells of equal size, as cell &lt;&lt; 16 | share of it; the word for 1
     * stands at the start of the cell behind the last.
     *
     * @param word 0-65535
     * @param cells at most 65535
     */
    static long place(int word, int cells) {
        return stretch((long) word * cells);
    }

    /** Between two words. */
    static int between(int low, int high, int share) {
        return (low + (((high - low) * share + 0x8000) >> 16)) & ONE;
    }

    /** From a scale whose whole is 65535 to one whose whole is 65536. */
    static long stretch(long product) {
        return product + (product + 0x7FFF) / ONE;
    }
}
