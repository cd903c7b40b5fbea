package org.printassay.reading;

/**
 * How far differences of lightness in a print may be from those read, where the tones of a scan
 * were edited and the edit is not known. Curves bend most near black, so each end has factors of
 * its own.
 *
 * @param nearBlack for greys near black
 * @param nearPaper for greys near paper
 */
public record ContrastDoubt(End nearBlack, End nearPaper) {
    /** Tones are as they were read. */
    public static final ContrastDoubt NONE = new ContrastDoubt(End.NONE, End.NONE);

    /**
     * Tones were edited. Curves of the exponents 0.7 to 1.4, and S-shaped ones from half of 3x²-2x³
     * turned over to all of it, multiply the differences of L* beside blacks of L* 4 to 16 by 2.4
     * to 0.25, and those below papers of L* 88 to 97 by 1.41 to 0.196, by the encoding of sRGB (IEC
     * 61966-2-1); that edits are not stronger is an assumption (common practice, no source).
     */
    public static final ContrastDoubt EDITED =
            new ContrastDoubt(new End(2.5, 4), new End(1.45, 5.2));

    /**
     * Black was put at the end of the range. Blacks of L* 4 to 16 put at L* 1.5 to 6, in codes of
     * sRGB or in light, with a paper of L* 96 put at the other end or left alone, multiply the
     * differences beside them by 0.57 to 2.2, and those below papers by 0.97 to 1.22; that
     * corrections are not stronger is an assumption (common practice, no source).
     */
    public static final ContrastDoubt BLACK_MOVED =
            new ContrastDoubt(new End(2.2, 1.8), new End(1.25, 1.05));

    /** At the end that a wedge starts from. */
    public End at(boolean paper) {
        return paper ? nearPaper : nearBlack;
    }

    /**
     * Factors at one end.
     *
     * @param stretched so many times larger than in the print differences may have been made, from
     *     1
     * @param squeezed so many times smaller
     */
    public record End(double stretched, double squeezed) {
        static final End NONE = new End(1, 1);

        public End {
            if (!(stretched >= 1 && squeezed >= 1)) {
                throw new IllegalArgumentException(
                        stretched + " or " + squeezed + " is less than 1");
            }
        }

        /** Whether there is no doubt. */
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
}
