package org.printassay.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.StatUtils;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/**
 * How far all codes that two prints, or means of prints, have in common lie apart.
 *
 * @param meanDeltaE00 mean dE00 between the means of each code
 * @param expected mean dE00 that reading two equal prints gives: noise makes every distance
 *     positive
 * @param drift what is left of the mean when that is taken off as squares
 * @param squareError standard uncertainty of the square of drift: scatter of the mean, and how well
 *     the twins of both prints tell the noise that was taken off
 * @param light standard uncertainty that all codes share, dE00
 * @param noiseKnown whether both prints have twins that tell how they were read; else a usual noise
 *     is taken off
 * @param meanDeltaL mean dL*, second minus first
 * @param meanDeltaA mean da*
 * @param meanDeltaB mean db*
 * @param relative whether colours were taken relative to each paper
 * @param codes every common code, furthest apart first
 */
public record PatchDrift(
        double meanDeltaE00,
        double expected,
        double drift,
        double squareError,
        double light,
        boolean noiseKnown,
        double meanDeltaL,
        double meanDeltaA,
        double meanDeltaB,
        boolean relative,
        List<Code> codes) {
    private static final int FEWEST = 10;

    /** Without twins: what reading the same print twice differs by (common practice, no source). */
    private static final double USUAL_NOISE = 0.3;

    public PatchDrift {
        codes = List.copyOf(codes);
    }

    /**
     * Half-width of drift from reading, so wide as a factor on standard uncertainties says. Drift
     * is the root of a square that may be next to nothing, so its error is that of the square:
     * where the square may be nothing at all, the largest drift that may hide there; else how far
     * down drift may reach. What all codes share is a drift of its own.
     */
    public double halfWidth(double factor) {
        double reach = factor * squareError;
        double below = drift * drift - reach;
        double noise = below > 0 ? drift - Math.sqrt(below) : Math.sqrt(reach);
        return Math.hypot(noise, factor * light);
    }

    /** One code in both prints. */
    public record Code(Rgb8 rgb, Lab one, Lab other, double deltaE00) {}

    /** Compares; empty when fewer than ten codes are common. */
    public static Optional<PatchDrift> between(Side one, Side other) {
        boolean relative = !one.absolute() || !other.absolute();
        CodeMeans first = CodeMeans.of(one.prints(), relative);
        CodeMeans second = CodeMeans.of(other.prints(), relative);
        Lab ofOne = deviations(first);
        Lab ofOther = deviations(second);
        List<Code> codes = new ArrayList<>();
        double noise = 0;
        for (Rgb8 code : first.codes()) {
            if (second.count(code) > 0) {
                Lab before = first.mean(code);
                Lab after = second.mean(code);
                codes.add(new Code(code, before, after, DeltaE.ciede2000(before, after)));
                noise +=
                        expected(
                                before,
                                share(ofOne, first.count(code)),
                                share(ofOther, second.count(code)));
            }
        }
        if (codes.size() < FEWEST) {
            return Optional.empty();
        }
        double light = Math.hypot(light(one), light(other));
        double mean = mean(codes, Code::deltaE00);
        double random = noise / codes.size();
        double expected = Math.hypot(random, light);
        double scatter = StatUtils.variance(codes.stream().mapToDouble(Code::deltaE00).toArray());
        double ofMean = 2 * mean * Math.sqrt(scatter / codes.size());
        int freedom = first.freedom(-1, 200) + second.freedom(-1, 200);
        double ofNoise = random * random * Math.sqrt(2.0 / Math.max(1, freedom));
        codes.sort(Comparator.comparingDouble(Code::deltaE00).reversed());
        return Optional.of(
                new PatchDrift(
                        mean,
                        expected,
                        Math.sqrt(Math.max(0, mean * mean - expected * expected)),
                        Math.hypot(ofMean, ofNoise),
                        light,
                        known(first) && known(second),
                        mean(codes, c -> c.other().l() - c.one().l()),
                        mean(codes, c -> c.other().a() - c.one().a()),
                        mean(codes, c -> c.other().b() - c.one().b()),
                        relative,
                        codes));
    }

    private static boolean known(CodeMeans means) {
        return !Double.isNaN(means.deviation(Lab::l, -1, 200));
    }

    private static double light(Side side) {
        return Uncertainties.quadraticMean(
                Lights.of(side.prints(), "white.lab.l"), Lights.of(side.prints(), "black.lab.l"));
    }

    /** Standard deviations of one reading in L*, a* and b*. */
    private static Lab deviations(CodeMeans means) {
        return new Lab(
                usual(means.deviation(Lab::l, -1, 200)),
                usual(means.deviation(Lab::a, -1, 200)),
                usual(means.deviation(Lab::b, -1, 200)));
    }

    private static Lab share(Lab deviations, int readings) {
        double root = Math.sqrt(readings);
        return new Lab(deviations.l() / root, deviations.a() / root, deviations.b() / root);
    }

    private static double usual(double deviation) {
        return Double.isNaN(deviation) ? USUAL_NOISE : deviation;
    }

    /**
     * Mean length of a difference that has normal errors: the square root of 8/(3 pi) times that of
     * its mean square, as for three equal errors (mean of Maxwell's distribution).
     */
    private static double expected(Lab at, Lab one, Lab other) {
        double l = moved(at, Math.hypot(one.l(), other.l()), 0, 0);
        double a = moved(at, 0, Math.hypot(one.a(), other.a()), 0);
        double b = moved(at, 0, 0, Math.hypot(one.b(), other.b()));
        return Math.sqrt(8 / (3 * Math.PI) * (l * l + a * a + b * b));
    }

    private static double moved(Lab at, double l, double a, double b) {
        return DeltaE.ciede2000(at, new Lab(at.l() + l, at.a() + a, at.b() + b));
    }

    private static double mean(List<Code> codes, ToDoubleFunction<Code> value) {
        return codes.stream().mapToDouble(value).average().orElseThrow();
    }
}
