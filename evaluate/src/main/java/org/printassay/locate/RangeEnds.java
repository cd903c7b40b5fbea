package org.printassay.locate;

/**
 * How many pixels of a coloured scan lie at the ends of the range of codes, in each channel: what a
 * driver leaves there that stretched every channel to the full range.
 *
 * <p>Scans reach the ends by themselves too: a white lid, glints and a dark frame do so in all
 * channels at the same pixels, colours that the space of the scan does not hold in one channel or
 * two, and by shares that have nothing to do with one another. A stretch ends every channel where
 * its own tail of the counts begins, so that all reach both ends, by other pixels each, and either
 * by shares that were chosen to be alike, or by so few that only the outermost codes of the scan
 * can have been meant.
 */
final class RangeEnds {
    private static final int CHANNELS = 3;
    private static final int TOP = 0xffff;

    /** Codes of 16 bits that are beside an end. */
    private static final int NEAR = 256;

    /** Of the pixels at an end in one channel, fewer are so in all when each was stretched. */
    private static final double TOGETHER = 0.1;

    /** Shares cut off are less (2 % is usual at most; common practice, no source). */
    private static final double MOST_CUT = 0.03;

    /** So many pixels tell a share to 5 %. */
    private static final long COUNTED = 400;

    /**
     * Shares meant to be one, of a preview of the scan or of a part of its pixels, differ by less.
     */
    private static final double ALIKE = 1.4;

    /** The same within one end, where another share is cut off at the other. */
    private static final double ALIKE_AT_AN_END = 1.1;

    /**
     * Where the ends are those of a preview of one in thirty pixels, some thirty pixels of the scan
     * lie beyond: of a scan of a million pixels, this share.
     */
    private static final double MOST_BEYOND = 3e-5;

    /** So few pixels at an end tell nothing of what lies beside. */
    private static final long LONE = 3;

    private final long[][] at = new long[2][CHANNELS];
    private final long[][] beside = new long[2][CHANNELS];
    private final long[] together = new long[2];
    private long pixels;

    void add(char[] row, int samples) {
        pixels += samples / CHANNELS;
        for (int i = 0; i < samples; i += CHANNELS) {
            if (isNear(row[i]) || isNear(row[i + 1]) || isNear(row[i + 2])) {
                count(row, i);
            }
        }
    }

    private static boolean isNear(int code) {
        return ((code + NEAR) & TOP) < 2 * NEAR;
    }

    private void count(char[] row, int from) {
        int dark = 0;
        int light = 0;
        for (int c = 0; c < CHANNELS; c++) {
            int code = row[from + c];
            if (code == 0) {
                at[0][c]++;
                dark++;
            } else if (code == TOP) {
                at[1][c]++;
                light++;
            } else if (isNear(code)) {
                beside[code < NEAR ? 0 : 1][c]++;
            }
        }
        together[0] += dark == CHANNELS ? 1 : 0;
        together[1] += light == CHANNELS ? 1 : 0;
    }

    /**
     * Whether every channel was stretched until its own tails reached both ends.
     *
     * @param fine whether the scan has codes between those of 8 bits; else noise reaches the ends
     *     with a few pixels easily
     */
    boolean stretched(boolean fine) {
        for (int end = 0; end < 2; end++) {
            if (least(end) == 0 || together[end] > TOGETHER * least(end)) {
                return false;
            }
        }
        return alikeShares() || (fine && outermostCodes());
    }

    private boolean alikeShares() {
        long least = Math.min(least(0), least(1));
        long most = Math.max(most(0), most(1));
        if (least < COUNTED || most > MOST_CUT * pixels) {
            return false;
        }
        return most <= ALIKE * least
                || (most(0) <= ALIKE_AT_AN_END * least(0) && most(1) <= ALIKE_AT_AN_END * least(1));
    }

    /** No more pixels at any end than beside it, and few. */
    private boolean outermostCodes() {
        long beyond = (long) (MOST_BEYOND * pixels);
        for (int end = 0; end < 2; end++) {
            for (int c = 0; c < CHANNELS; c++) {
                if (at[end][c] > Math.max(LONE, Math.min(beside[end][c], beyond))) {
                    return false;
                }
            }
        }
        return true;
    }

    private long least(int end) {
        return Math.min(at[end][0], Math.min(at[end][1], at[end][2]));
    }

    private long most(int end) {
        return Math.max(at[end][0], Math.max(at[end][1], at[end][2]));
    }
}
