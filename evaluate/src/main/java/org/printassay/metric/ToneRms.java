package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;

/**
 * Root mean square departure of tone from its aim, without what the scatter of patches adds to it,
 * and how far it scatters itself (propagation to second order: ISO/IEC Guide 98-3, 5.1.2 and its
 * note). Every level is an error of its own; paper and black move the aim of all levels besides.
 *
 * @param value L*
 * @param halfWidth 95 % half-width by scatter, L*
 */
record ToneRms(double value, double halfWidth) {
    private static final int BLACK = 0;
    private static final int PAPER = 255;

    /** By how much an end is moved to see what that does to the aim, L*. */
    private static final double STEP = 0.01;

    /**
     * One reading that scatters.
     *
     * @param error its standard error, L*
     * @param moves what a change of it by one does to each departure
     */
    private record Source(double error, List<Double> moves) {}

    static ToneRms of(
            Neutrals neutrals,
            List<LevelData> curve,
            ToneAim aim,
            List<Double> shares,
            List<Double> departures,
            TwinSpread spread) {
        List<Source> sources = sources(neutrals, curve, aim, spread);
        double squares = weighted(shares, departures, departures);
        double noise = 0;
        double variance = 0;
        for (Source one : sources) {
            noise += one.error * one.error * weighted(shares, one.moves, one.moves);
            variance += 4 * Math.pow(one.error * weighted(shares, departures, one.moves), 2);
            for (Source other : sources) {
                double both = one.error * other.error * weighted(shares, one.moves, other.moves);
                variance += 2 * both * both;
            }
        }
        double rms = Math.sqrt(Math.max(0, squares - noise));
        double half = Coverage.NORMAL_95 * Math.sqrt(variance);
        // Near none at all a root spreads without bound: there it is the root of the square's own.
        return new ToneRms(
                rms, rms > 0 ? Math.min(half / (2 * rms), Math.sqrt(half)) : Math.sqrt(half));
    }

    private static List<Source> sources(
            Neutrals neutrals, List<LevelData> curve, ToneAim aim, TwinSpread spread) {
        List<Source> sources = new ArrayList<>();
        for (LevelData data : curve) {
            if (data.level() != BLACK && data.level() != PAPER) {
                List<Double> own =
                        curve.stream()
                                .map(other -> other.level() == data.level() ? 1.0 : 0.0)
                                .toList();
                sources.add(new Source(spread.errorOf(data.count()), own));
            }
        }
        LevelData paper = neutrals.level(PAPER).orElseThrow();
        LevelData black = neutrals.level(BLACK).orElseThrow();
        PaperAim as = PaperAim.relativeColorimetric(paper.mean(), black.mean());
        for (LevelData end : List.of(paper, black)) {
            boolean isPaper = end.level() == PAPER;
            PaperAim moved =
                    PaperAim.relativeColorimetric(
                            isPaper ? lighter(paper.mean()) : paper.mean(),
                            isPaper ? black.mean() : lighter(black.mean()));
            List<Double> moves =
                    curve.stream()
                            .map(
                                    data -> {
                                        double before = aim.l(neutrals.set(), as, data.level());
                                        double after = aim.l(neutrals.set(), moved, data.level());
                                        double own = data.level() == end.level() ? 1 : 0;
                                        return own - (after - before) / STEP;
                                    })
                            .toList();
            TwinSpread ofEnd = isPaper ? neutrals.spreads().paper(Lab::l) : spread;
            sources.add(new Source(ofEnd.errorOf(end.count()), moves));
        }
        return sources;
    }

    private static Lab lighter(Lab lab) {
        return new Lab(lab.l() + STEP, lab.a(), lab.b());
    }

    private static double weighted(List<Double> shares, List<Double> one, List<Double> other) {
        return IntStream.range(0, shares.size())
                .mapToDouble(i -> shares.get(i) * one.get(i) * other.get(i))
                .sum();
    }
}
