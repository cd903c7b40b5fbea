package org.printassay.locate;

/**
 * How often each code occurs in a scan, from every eighth row: what an edit in 8 bits leaves
 * behind.
 */
public final class CodeCensus {
    static final int EVERY = 8;
    private static final int CODES = 256;

    /** Codes between these shares of all pixels are the range that a scan uses. */
    private static final double TAIL = 0.002;

    /** Rarer than this share of what is usual around it, a code is missing. */
    private static final double MISSING = 0.05;

    private static final int AROUND = 3;

    /** So few codes between those of 8 bits are damage, not depth. */
    private static final double FEW = 0.001;

    private final int channels;
    private final long[][] counts;
    private long fine;

    CodeCensus(int channels) {
        this.channels = channels;
        this.counts = new long[channels][CODES];
    }

    /** Nothing counted. */
    public static CodeCensus empty() {
        return new CodeCensus(1);
    }

    void add(char[] row, int samples) {
        for (int i = 0; i < samples; i += channels) {
            for (int c = 0; c < channels; c++) {
                int code = row[i + c];
                int high = code >> 8;
                counts[c][high]++;
                fine += high == (code & 0xff) ? 0 : 1;
            }
        }
    }

    /** Whether any code needs more than 8 bits. */
    public boolean finerThanEightBits() {
        long all = 0;
        for (long count : counts[0]) {
            all += count * channels;
        }
        return fine > FEW * all;
    }

    /** Share of codes that never occur between codes that do, the largest of the channels. */
    public double gaps() {
        double most = 0;
        for (long[] channel : counts) {
            most = Math.max(most, gaps(channel));
        }
        return most;
    }

    private static double gaps(long[] channel) {
        long all = 0;
        for (long count : channel) {
            all += count;
        }
        int low = at(channel, TAIL * all);
        int high = at(channel, (1 - TAIL) * all);
        int missing = 0;
        for (int i = low + 1; i < high; i++) {
            double around = 0;
            int n = 0;
            for (int k = Math.max(low, i - AROUND); k <= Math.min(high, i + AROUND); k++) {
                around += k == i ? 0 : channel[k];
                n += k == i ? 0 : 1;
            }
            // Too few pixels around tell nothing: a code may be missing by chance.
            if (around / n > 200 && channel[i] < MISSING * around / n) {
                missing++;
            }
        }
        return high - low < 2 ? 0 : (double) missing / (high - low - 1);
    }

    private static int at(long[] channel, double wanted) {
        long sum = 0;
        for (int i = 0; i < channel.length; i++) {
            sum += channel[i];
            if (sum >= wanted) {
                return i;
            }
        }
        return channel.length - 1;
    }
}
