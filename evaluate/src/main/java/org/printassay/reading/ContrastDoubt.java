package org.printassay.reading;

/**
 * How far differences of lightness in a print may be from those read, where the tones of a scan
 * were edited and the edit is not known. A factor to each side, that holds for greys near black and
 * near paper.
 *
 * @param stretched so many times larger than in the print they may have been made, from 1
 * @param squeezed so many times smaller
 */
public record ContrastDoubt(double stretched, double squeezed) {
    /** Tones are as they were read. */
    public static final ContrastDoubt NONE = new ContrastDoubt(1, 1);

    /**
     * Tones were edited. Curves of the exponents 0.7 to 1.4 multiply the differences of L* beside
     * blacks of L* 4 to 16 by 2.4 to 0.29, by the encoding of sRGB (IEC 61966-2-1); that edits are
     * not stronger is an assumption (common practice, no source).
     */
    public static final ContrastDoubt EDITED = new ContrastDoubt(2.5, 3.5);

    /**
     * Black was put at the end of the range. Blacks of L* 4 to 16 put at L* 1.5 to 6, in codes of
     * sRGB or in light, multiply the differences beside them by 0.59 to 2.2; that corrections are
     * not stronger is an assumption (common practice, no source).
     */
    public static final ContrastDoubt BLACK_MOVED = new ContrastDoubt(2.2, 1.7);

    public ContrastDoubt {
        if (!(stretched >= 1 && squeezed >= 1)) {
            throw new IllegalArgumentException(stretched + " or " + squeezed + " is less than 1");
        }
    }

    /** Whether there is none. */
    public boolean isNone() {
        return stretched == 1 && squeezed == 1;
    }

    /** The least that a difference may be in the print whose lower bound was read. */
    public double low(double read) {
        return read > 0 ? read / stretched : read * squeezed;
    }

    /** The most that a difference may be in the print whose upper bound was read. */
    public double high(double read) {
        return read > 0 ? read * squeezed : read / stretched;
    }

    /** Reverses {@link #low}. */
    public double readLow(double low) {
        return low > 0 ? low * stretched : low / squeezed;
    }

    /** Reverses {@link #high}. */
    public double readHigh(double high) {
        return high > 0 ? high / squeezed : high * stretched;
    }
}
