package org.printassay.sample;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.printassay.reading.ReadingFlag;
import org.printassay.robust.Median;

/**
 * Tells what lies on patches from what the print or its paper is like, by patches that are alike in
 * tone. Gaps in solids, drops, the relief of a paper or what shines through it are in all of them,
 * and by much the same share; specks and hairs fall where they fall, on some patches several and on
 * others none (their number in an area is Poisson's; M. G. Kendall and A. Stuart, The Advanced
 * Theory of Statistics, volume 1, 1958, from memory), on paper as on ink. What all have is read as
 * the print: left out, a black with gaps would read darker than it is.
 */
final class OwnSurface {
    /** So many patches, the nearest in light, show what is usual at a tone. */
    private static final int NEAR = 24;

    /** Fewer patches on the whole sheet show nothing. */
    private static final int FEWEST = 8;

    /**
     * Share of far cells from which it matters; clean noise has 0.2 %. Dust that covers as much of
     * the middle patch is some thousand specks a page.
     */
    private static final double LEAST = 0.02;

    /**
     * The middle half of patches lies within this part of their median. Specks of all sizes would
     * have to be some fifteen a patch to be as even.
     */
    private static final double EVEN = 0.35;

    /**
     * Where half of all patches have so much and three quarters of them {@link #LEAST}, it is no
     * dust, however even: a dozen specks a patch cover less.
     */
    private static final double MUCH = 0.08;

    /**
     * What far cells do to a tone, L*, from which it matters whose they are. Dirt lies on paper as
     * on everything: there paper has at least half of their share, and they are not the print's.
     */
    private static final double MATTERS_L = 0.3;

    private static final double ON_PAPER = 0.5;

    /** Where far cells do so many times more than they usually differ by, something lies there. */
    private static final double BEYOND = 3;

    /** Such differences are at least this, L*. */
    private static final double LEAST_L = 0.1;

    /** Blocks that lie farther apart than in other patches by this factor are uneven. */
    private static final double UNEVEN = 2;

    private final List<PatchReads> near;
    private final boolean own;

    /**
     * Patches of a tone.
     *
     * @param onPaper share of far cells of the lightest patches
     */
    private OwnSurface(List<PatchReads> near, double onPaper) {
        this.near = near;
        double[] shares = sorted(PatchReads::shareFar);
        boolean everywhere =
                (Median.upper(shares) >= MUCH && quarter(shares) >= LEAST)
                        || (Median.upper(shares) >= LEAST
                                && range(shares) <= EVEN * Median.upper(shares));
        boolean harmless = Math.abs(Median.upper(sorted(PatchReads::farL))) < MATTERS_L;
        this.own = everywhere && (harmless || onPaper < ON_PAPER * Median.upper(shares));
    }

    private double[] sorted(ToDoubleFunction<PatchReads> value) {
        return near.stream().mapToDouble(value).sorted().toArray();
    }

    private static double quarter(double[] sorted) {
        return sorted[sorted.length / 4];
    }

    private static double range(double[] sorted) {
        return sorted[3 * sorted.length / 4] - quarter(sorted);
    }

    /** Each patch as it counts, in the order given. */
    static List<PatchSample> settled(List<PatchReads> reads) {
        if (reads.size() < FEWEST) {
            return reads.stream().map(PatchReads::robust).toList();
        }
        int n = reads.size();
        List<Integer> byLight =
                IntStream.range(0, n)
                        .boxed()
                        .sorted(Comparator.comparingDouble(i -> reads.get(i).light()))
                        .toList();
        List<PatchReads> sorted = byLight.stream().map(reads::get).toList();
        int window = Math.min(NEAR, n);
        OwnSurface lightest = new OwnSurface(sorted.subList(n - window, n), 0);
        double onPaper = Median.upper(lightest.sorted(PatchReads::shareFar));
        PatchSample[] settled = new PatchSample[n];
        for (int at = 0; at < n; at++) {
            int from = Math.max(0, Math.min(at - window / 2, n - window));
            OwnSurface near = new OwnSurface(sorted.subList(from, from + window), onPaper);
            settled[byLight.get(at)] = near.of(sorted.get(at));
        }
        return List.of(settled);
    }

    private PatchSample of(PatchReads read) {
        if (!own) {
            return read.robust();
        }
        double[] does = sorted(PatchReads::farL);
        double usual = Math.max(range(does), LEAST_L);
        if (Math.abs(read.farL() - Median.upper(does)) > BEYOND * usual) {
            return read.inDoubt();
        }
        if (read.spanL() > UNEVEN * Median.upper(sorted(PatchReads::spanL))) {
            return read.whole();
        }
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        flags.addAll(read.whole().flags());
        flags.remove(ReadingFlag.UNEVEN);
        return read.whole().withFlags(flags);
    }
}
