package org.printassay.surface;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One tint, ready to be asked for lines: matched-filter responses and their robust spread. */
final class LineTrace {
    /** Widths looked for; what lies between answers to a neighbour. */
    private static final double[] WIDTHS_MM = {0.05, 0.1, 0.2, 0.4, 0.8, 1.4, 2.2};

    /** As even as this no tint is taken to be. */
    private static final double LEAST_NOISE = 0.003;

    /** Width of a Gaussian at half its height, standard deviations. */
    private static final double HALF_HEIGHT = 2.355;

    /** A line crosses the tint: this share of strips must show it. */
    private static final double CROSSING = 0.74;

    /** A strip shows a line that has this share of the contrast of all strips together. */
    private static final double SHOWN = 0.3;

    /** A strip lacks a line surely when so many standard deviations are missing. */
    private static final double SURELY = 4;

    /** One of so many parts of the strips is a side of the tint. */
    private static final int SIDE = 4;

    /** A line is seen whole from so far, in standard deviations of the blur, beside its own end. */
    private static final double CLEAR_SIGMAS = 2;

    private final TintTrace tint;
    private final double sigmaMm;
    private final double[][] strips;
    private final double[] all;
    private final List<LineFilter> filters = new ArrayList<>();
    private final double[][] responses;
    private final double[] noise;
    private final double[][] stripNoise;

    /**
     * Prepares a tint.
     *
     * @param sigmaMm blur of print and scan together, as a Gaussian
     */
    LineTrace(TintTrace tint, double sigmaMm) {
        this.tint = tint;
        this.sigmaMm = sigmaMm;
        this.strips = new double[tint.strips()][];
        for (int s = 0; s < strips.length; s++) {
            strips[s] = RunningMedian.departures(tint.absorbed(s), tint.stepMm());
        }
        this.all = RunningMedian.middle(strips);
        for (double width : WIDTHS_MM) {
            LineFilter filter = new LineFilter(width, sigmaMm, tint.stepMm());
            if (tint.bins() > 4 * filter.reach()) {
                filters.add(filter);
            }
        }
        this.responses = new double[filters.size()][];
        this.noise = new double[filters.size()];
        this.stripNoise = new double[filters.size()][strips.length];
        for (int f = 0; f < noise.length; f++) {
            LineFilter filter = filters.get(f);
            responses[f] = filter.responses(all);
            double[] inside =
                    Arrays.copyOfRange(responses[f], filter.reach(), all.length - filter.reach());
            double apart = filter.widthMm() + HALF_HEIGHT * sigmaMm;
            double places = inside.length * tint.stepMm() / apart;
            noise[f] =
                    Math.max(
                            LEAST_NOISE,
                            FewPlaces.unsure(places) * RunningMedian.deviation(inside));
        }
    }

    TintTrace tint() {
        return tint;
    }

    /** Blur that lines are looked for with. */
    double sigmaMm() {
        return sigmaMm;
    }

    /** Departures of all strips together. */
    double[] departures() {
        return all;
    }

    /**
     * Everything of at least a robust z that crosses the tint, strongest first, none overlapping.
     */
    List<LineCandidate> candidates(double leastZ) {
        List<LineCandidate> found = new ArrayList<>();
        for (int f = 0; f < responses.length; f++) {
            double[] r = responses[f];
            for (int i = filters.get(f).reach(); i < r.length - filters.get(f).reach(); i++) {
                double size = Math.abs(r[i]);
                // At the ends of what the filter reaches one neighbour is 0: see nearEnds.
                if (size >= leastZ * noise[f]
                        && size >= Math.abs(r[i - 1])
                        && size > Math.abs(r[i + 1])) {
                    found.add(candidate(f, i));
                }
            }
        }
        found.sort(Comparator.comparingDouble((LineCandidate c) -> Math.abs(c.z())).reversed());
        List<LineCandidate> kept = new ArrayList<>();
        for (LineCandidate one : found) {
            boolean free = kept.stream().noneMatch(other -> other.accountsFor(one));
            if (free) {
                kept.add(one);
            }
        }
        kept.removeIf(one -> !crosses(one));
        List<LineCandidate> placed = new ArrayList<>();
        for (LineCandidate one : kept) {
            LineCandidate fitted = nearEnds(one);
            if (fitted != null && placed.stream().noneMatch(o -> o.isPlacedLike(fitted))) {
                placed.add(fitted);
            }
        }
        return placed;
    }

    /**
     * A response whose filter touches bins near an end that no filter of its kind is centred on may
     * be the side of a line there, lighter beside dark and darker beside light.
     */
    private @Nullable LineCandidate nearEnds(LineCandidate one) {
        int reach = filters.get(filterOf(one)).reach();
        int fromEnd = Math.min(one.bin(), all.length - 1 - one.bin());
        if (fromEnd >= 2 * reach) {
            return one;
        }
        LineCandidate fitted = fittedNearEnd(one, reach);
        boolean beyond =
                fitted != null && Math.min(fitted.bin(), all.length - 1 - fitted.bin()) < reach;
        return beyond || fromEnd == reach ? fitted : one;
    }

    private int filterOf(LineCandidate one) {
        int f = 0;
        for (int other = 0; other < filters.size(); other++) {
            f = filters.get(other).widthMm() == one.widthMm() ? other : f;
        }
        return f;
    }

    /**
     * A line near an end of the tint, where its filter does not reach its middle: placed by the
     * light that is there. Null where that is no line with light on both sides, but the ground that
     * rises or falls, or something of the next tint.
     */
    private @Nullable LineCandidate fittedNearEnd(LineCandidate one, int reach) {
        boolean first = one.bin() < all.length / 2;
        int fromEnd = first ? one.bin() : all.length - 1 - one.bin();
        int count = Math.min(all.length, fromEnd + reach + 1);
        int from = first ? 0 : all.length - count;
        double[] values = Arrays.copyOfRange(all, from, from + count);
        double begin = tint.positionMm(-0.5);
        double end = tint.positionMm(all.length - 0.5);
        double step = tint.stepMm() / 2;
        LineCandidate best = null;
        double most = 0;
        for (double width : WIDTHS_MM) {
            double clear = width / 2 + CLEAR_SIGMAS * sigmaMm;
            double low = Math.max(begin + clear, tint.positionMm(from));
            double high = Math.min(end - clear, tint.positionMm(from + count - 1.0));
            for (double at = low; at <= high; at += step) {
                double[] shape = new double[count];
                for (int i = 0; i < count; i++) {
                    shape[i] = LineFilter.shape(tint.positionMm(from + i) - at, width, sigmaMm);
                }
                LineFit fit = LineFit.of(shape, values);
                boolean line =
                        fit.explained() > fit.left()
                                && Math.abs(fit.height()) >= LineDetector.TOGETHER * noise(width);
                if (line && fit.explained() > most) {
                    most = fit.explained();
                    int bin = (int) Math.round(tint.binOf(at));
                    double z = Math.copySign(one.z(), fit.height());
                    best = new LineCandidate(bin, at, width, fit.height(), z);
                }
            }
        }
        return best;
    }

    /** The strongest response of one polarity near a place; null where the tint does not reach. */
    @Nullable LineCandidate near(double positionMm, double withinMm, boolean light) {
        LineCandidate best = null;
        int from = (int) Math.ceil(tint.binOf(positionMm - withinMm));
        int to = (int) Math.floor(tint.binOf(positionMm + withinMm));
        for (int f = 0; f < responses.length; f++) {
            int reach = filters.get(f).reach();
            if (from < reach || to >= all.length - reach) {
                continue;
            }
            for (int i = from; i <= to; i++) {
                double z = responses[f][i] / noise[f];
                if (best == null || (light ? z > best.z() : z < best.z())) {
                    best = candidate(f, i);
                }
            }
        }
        return best;
    }

    /** Standard deviation of the contrast that a line of a width would be read with. */
    double noise(double widthMm) {
        int nearest = 0;
        for (int f = 1; f < filters.size(); f++) {
            double apart = Math.abs(filters.get(f).widthMm() - widthMm);
            nearest = apart < Math.abs(filters.get(nearest).widthMm() - widthMm) ? f : nearest;
        }
        return filters.isEmpty() ? Double.POSITIVE_INFINITY : noise[nearest];
    }

    /** Whether a line would be found here alone, if it were there. */
    boolean wouldShow(double contrast, double widthMm) {
        double share = Math.min(1, widthMm / WIDTHS_MM[0]);
        return share * Math.abs(tint.left(contrast)) >= LineDetector.ALONE * noise(widthMm);
    }

    private LineCandidate candidate(int f, int bin) {
        double[] r = responses[f];
        double left = Math.abs(r[bin - 1]);
        double middle = Math.abs(r[bin]);
        double right = Math.abs(r[bin + 1]);
        double bend = left - 2 * middle + right;
        double shift = bend < 0 ? 0.5 * (left - right) / bend : 0;
        double at = bin + Math.max(-0.5, Math.min(0.5, shift));
        return new LineCandidate(
                bin, tint.positionMm(at), filters.get(f).widthMm(), r[bin], r[bin] / noise[f]);
    }

    /**
     * Whether it is no dust or hair: most strips show it, both sides of the tint do, and no more
     * than one strip, which may have dust of its own, surely lacks it.
     */
    private boolean crosses(LineCandidate one) {
        int f = filterOf(one);
        double[] shares = new double[strips.length];
        int shown = 0;
        int lacking = 0;
        for (int s = 0; s < shares.length; s++) {
            shares[s] = filters.get(f).at(strips[s], one.bin()) / one.contrast();
            boolean shows = shares[s] > SHOWN;
            shown += shows ? 1 : 0;
            boolean surely = (1 - SHOWN) * Math.abs(one.contrast()) > SURELY * stripNoise(f, s);
            lacking += !shows && surely ? 1 : 0;
        }
        int side = Math.max(1, strips.length / SIDE);
        double first = Arrays.stream(shares, 0, side).average().orElse(0);
        double last =
                Arrays.stream(shares, shares.length - side, shares.length).average().orElse(0);
        return shown >= CROSSING * strips.length && Math.min(first, last) > SHOWN && lacking <= 1;
    }

    /** Robust standard deviation of a filter's response in one strip; worked out once. */
    private double stripNoise(int f, int strip) {
        double[] known = stripNoise[f];
        if (known[strip] == 0) {
            LineFilter filter = filters.get(f);
            double[] r = filter.responses(strips[strip]);
            double[] inside = Arrays.copyOfRange(r, filter.reach(), r.length - filter.reach());
            known[strip] = Math.max(LEAST_NOISE, RunningMedian.deviation(inside));
        }
        return known[strip];
    }
}
