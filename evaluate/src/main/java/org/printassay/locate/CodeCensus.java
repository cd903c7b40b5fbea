package org.printassay.locate;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;

/**
 * How often each code occurs in a scan, from every eighth row: what an edit in 8 bits leaves
 * behind.
 */
public final class CodeCensus {
    static final int EVERY = 8;
    private static final int CODES = 256;

    /** Codes between these shares of all pixels are the range that a scan uses. */
    private static final double TAIL = 0.002;

    /**
     * Rarer than this share of the rarer of its neighbours, a code is missing: edges of patches
     * fill more by themselves.
     */
    private static final double NEVER = 0.02;

    private static final int AROUND = 3;

    /** Codes to both sides that tell how far apart codes lie. */
    private static final int NEAR = 8;

    /**
     * Codes further apart are those of patches, with none between: an edit that pulls neighbours so
     * far apart leaves hardly a picture (common practice, no source).
     */
    private static final int WIDEST = 16;

    /**
     * Where both neighbours of a code hold so many pixels it occurs too: edges of patches run down
     * the sheet, so that some twenty pixels are one chance, and e^-10 is left for none (Poisson).
     */
    private static final int COMMON = 200;

    /**
     * Edges of patches fill nearly all codes of a range: where fewer than this share of it occurs,
     * tones were merged into few (common practice, no source).
     */
    private static final double SPARSE = 1 / 7.0;

    /** Fewer missing codes in a third of the range are chance. */
    private static final int FEWEST_MISSING = 3;

    /** So few codes between those of 8 bits are damage, not depth. */
    private static final double FEW = 0.001;

    private final int channels;
    private final long[][] counts;

    /** Codes of 16 bits that occur, by channel. */
    private final BitSet[] used;

    private final RangeEnds ends = new RangeEnds();
    private long fine;

    CodeCensus(int channels) {
        this.channels = channels;
        this.counts = new long[channels][CODES];
        this.used = new BitSet[channels];
        Arrays.setAll(used, c -> new BitSet(CODES * CODES));
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
                used[c].set(code);
                fine += high == (code & 0xff) ? 0 : 1;
            }
        }
    }

    /** Of a coloured scan, looks at the ends of the range in a row; every row counts. */
    void addEnds(char[] row, int samples) {
        if (channels == 3) {
            ends.add(row, samples);
        }
    }

    /** Whether each channel was stretched to the full range of codes by itself. */
    public boolean stretched() {
        return ends.stretched(finerThanEightBits());
    }

    /** Whether any code needs more than 8 bits. */
    public boolean finerThanEightBits() {
        long all = 0;
        for (long count : counts[0]) {
            all += count * channels;
        }
        return fine > FEW * all;
    }

    /**
     * Whether there are codes between those of 8 bits, but no more of them than 8 bits have: tones
     * were changed after the scan had been brought to 8 bits. Noise of a scan that has more leaves
     * hardly any code out.
     */
    public boolean editedFromEightBits() {
        return finerThanEightBits()
                && Arrays.stream(used).allMatch(codes -> codes.cardinality() <= CODES);
    }

    /** Share of codes that never occur between codes that do, the largest of the channels. */
    public double gaps() {
        double most = 0;
        for (long[] channel : counts) {
            most = Math.max(most, gaps(channel));
        }
        return most;
    }

    /**
     * Share of codes that never occur, of those that should, in the third of its range where most
     * are missing; the largest of the channels. An edit that brightens or darkens pulls codes apart
     * in one part only. A code counts as missing here where both its neighbours are common: between
     * patches of few tones whole runs of codes are rare, and that is no edit. 0 for fewer than
     * {@link #FEWEST_MISSING}.
     */
    public double gapsInAThird() {
        double most = 0;
        for (long[] channel : counts) {
            long all = Arrays.stream(channel).sum();
            int low = at(channel, TAIL * all);
            int high = at(channel, (1 - TAIL) * all);
            for (int third = 0; third < 3; third++) {
                most =
                        Math.max(
                                most,
                                combed(
                                        channel,
                                        Math.max(low + 1, low + (high - low) * third / 3),
                                        low + (high - low) * (third + 1) / 3));
            }
        }
        return most;
    }

    private static double combed(long[] channel, int from, int to) {
        int missing = 0;
        int seen = 0;
        for (int i = from; i < to; i++) {
            long rarer = Math.min(channel[i - 1], channel[i + 1]);
            if (rarer > COMMON) {
                seen++;
                missing += channel[i] < NEVER * rarer ? 1 : 0;
            }
        }
        return missing < FEWEST_MISSING ? 0 : (double) missing / seen;
    }

    private static double gaps(long[] channel) {
        long all = 0;
        for (long count : channel) {
            all += count;
        }
        int low = at(channel, TAIL * all);
        int high = at(channel, (1 - TAIL) * all);
        if (isSparse(channel)) {
            return 1 - shareUsed(channel, low, high);
        }
        int missing = 0;
        for (int i = low + 1; i < high; i++) {
            long rarer = Math.min(occurring(channel, i, -1), occurring(channel, i, 1));
            missing += rarer > COMMON && channel[i] < NEVER * rarer ? 1 : 0;
        }
        return high - low < 2 ? 0 : (double) missing / (high - low - 1);
    }

    /** Whether the tones of any channel were merged into few, far apart. */
    public boolean merged() {
        return Arrays.stream(counts).anyMatch(CodeCensus::isSparse);
    }

    private static boolean isSparse(long[] channel) {
        int low = at(channel, 1);
        int high = at(channel, (double) Arrays.stream(channel).sum());
        return high - low > CODES / 2 && shareUsed(channel, low, high) < SPARSE;
    }

    /** Share of the codes of a range that occur. */
    private static double shareUsed(long[] channel, int low, int high) {
        return IntStream.rangeClosed(low, high).filter(i -> channel[i] > 0).count()
                / (high - low + 1.0);
    }

    /**
     * Pixels of the nearest code to one side that occurs; 0 where none near does. Patches of few
     * tones stand out from what their edges fill: their counts tell nothing of codes further on.
     */
    private static long occurring(long[] channel, int at, int towards) {
        for (int k = 1; k <= AROUND; k++) {
            int i = at + towards * k;
            if (i < 0 || i >= CODES || channel[i] > 0) {
                return i < 0 || i >= CODES ? 0 : channel[i];
            }
        }
        return 0;
    }

    /**
     * How far the codes lie apart that occur near a code, 1 where none is missing. Larger gaps hold
     * more tones and count for more: steps s keep the mean of what falls evenly into them as one
     * step of the root of sum s^3 / sum s does. A code counts as missing that is rare between two
     * common ones.
     *
     * @param channel from 0
     * @param code 0-255
     */
    public double stepNear(int channel, int code) {
        long[] all = counts[Math.min(channel, channels - 1)];
        // From the code that lies before what is near to the one behind it: a wide gap would
        // otherwise have an end outside and not be seen.
        int widest = isSparse(all) ? CODES : WIDEST;
        int low = Math.max(0, code - NEAR);
        while (low > 0 && low > code - widest && isMissing(all, low)) {
            low--;
        }
        int high = Math.min(CODES - 1, code + NEAR);
        while (high < CODES - 1 && high < code + widest && isMissing(all, high)) {
            high++;
        }
        double cubes = 0;
        double sum = 0;
        int last = -1;
        for (int i = low; i <= high; i++) {
            if (isMissing(all, i)) {
                continue;
            }
            int step = i - last;
            if (last >= 0 && step <= widest) {
                cubes += Math.pow(step, 3);
                sum += step;
            }
            last = i;
        }
        return sum == 0 ? 1 : Math.sqrt(cubes / sum);
    }

    private static boolean isMissing(long[] channel, int at) {
        return channel[at] == 0 || isRareBetweenCommon(channel, at);
    }

    private static boolean isRareBetweenCommon(long[] channel, int at) {
        long below = 0;
        long above = 0;
        for (int k = 1; k <= AROUND; k++) {
            below = Math.max(below, at - k < 0 ? 0 : channel[at - k]);
            above = Math.max(above, at + k >= CODES ? 0 : channel[at + k]);
        }
        return channel[at] < NEVER * Math.min(below, above);
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
