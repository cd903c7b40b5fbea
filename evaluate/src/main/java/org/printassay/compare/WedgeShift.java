package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/**
 * By how many levels a whole wedge has moved between two prints, or means of prints: the s for
 * which the second print's distance from black (or paper), at every tested level, is best that of
 * the first print s levels further out. All levels of a wedge tell the same shift, so it is known
 * far better than the level at which something becomes visible.
 *
 * <p>Weighted least squares by Gauss-Newton steps; the distance from the anchor (black or paper)
 * has an error that all levels share, which is fitted along with its known size as a prior. Slopes
 * come from a local straight line through both curves. Where the wedge changed its shape too, what
 * the shift leaves widens its uncertainty; {@link WedgeDepth} tells such changes.
 *
 * @param levels the shift; positive when the second print separates later, that is further from
 *     black or paper
 * @param standard standard uncertainty of it; null when neither print has twins
 * @param remaining root mean square of what the shift leaves, L*
 * @param tested levels that were used
 */
public record WedgeShift(double levels, @Nullable Double standard, double remaining, int tested) {
    /** Levels from the anchor that are compared, and that may be reached by shifting. */
    private static final int REACH = 48;

    private static final int BEYOND = 72;

    /** Half-width of the local straight line, levels. */
    private static final int WINDOW = 5;

    private static final int FEWEST = 6;
    private static final int STEPS = 8;

    /** L* + 16 goes with the cube root of luminance. */
    private static final double CUBE_ROOT = 16;

    /** An error of the anchor of more standard deviations than this is none. */
    private static final double BELIEVED = 3.5;

    /** Noise of a level is never known to be less, L*. */
    private static final double LEAST_NOISE = 0.02;

    /** A level of one print: its code's distance from the anchor, and L* from the anchor's. */
    private record Point(int out, double distance, int readings) {}

    /** Shift of shadows; empty when there are too few levels that both have. */
    public static Optional<WedgeShift> ofShadows(Side one, Side other) {
        return between(one, other, 0);
    }

    /** Shift of highlights; empty when there are too few levels that both have. */
    public static Optional<WedgeShift> ofHighlights(Side one, Side other) {
        return between(one, other, 255);
    }

    private static Optional<WedgeShift> between(Side one, Side other, int anchor) {
        boolean relative = !one.absolute() || !other.absolute();
        CodeMeans first = CodeMeans.of(one.prints(), relative);
        CodeMeans second = CodeMeans.of(other.prints(), relative);
        Rgb8 at = Rgb8.grey(anchor);
        if (first.count(at) == 0 || second.count(at) == 0) {
            return Optional.empty();
        }
        List<Point> before = curve(first, anchor);
        List<Point> after = curve(second, anchor);
        List<Point> tested = new ArrayList<>();
        for (Point p : after) {
            boolean both = before.stream().anyMatch(b -> b.out == p.out);
            if (p.out > 0 && p.out <= REACH && both) {
                tested.add(p);
            }
        }
        if (tested.size() < FEWEST) {
            return Optional.empty();
        }
        double noise = noise(first, second, anchor);
        double anchors = sizeOf(noise) * Math.sqrt(1.0 / first.count(at) + 1.0 / second.count(at));
        double away = tested.stream().mapToDouble(Point::distance).average().orElse(0);
        double both = Math.hypot(anchors, light(one, other, anchor, first.mean(at).l(), away));
        return Optional.of(new Fit(before, after, tested, noise, both).solve());
    }

    /**
     * What the light of both prints leaves unknown of how far levels are from an anchor, L*. Light
     * that is off moves a level nearly as far as its anchor: L* rises with luminance by a slope
     * that falls as the square of L* + 16 (ISO/CIE 11664-4), so only the difference of slopes
     * counts.
     *
     * @param anchorL lightness of the anchor
     * @param away mean distance of the levels from it, L*
     */
    static double light(Side one, Side other, int anchor, double anchorL, double away) {
        String key = anchor == 0 ? "black.lab.l" : "white.lab.l";
        double level = Math.max(1, anchorL + CUBE_ROOT + (anchor == 0 ? away : -away));
        double slopes = Math.pow((anchorL + CUBE_ROOT) / level, 2);
        double share = Math.min(1, Math.abs(1 - slopes));
        return share * Math.hypot(Lights.of(one.prints(), key), Lights.of(other.prints(), key));
    }

    /** Standard deviation of one reading near an anchor; NaN without twins. */
    static double noise(CodeMeans first, CodeMeans second, int anchor) {
        double from = anchor == 0 ? 0 : 60;
        double to = anchor == 0 ? 40 : 110;
        double one = first.deviation(Lab::l, from, to);
        double other = second.deviation(Lab::l, from, to);
        return Double.isNaN(one)
                ? other
                : Double.isNaN(other) ? one : Uncertainties.quadraticMean(one, other);
    }

    /** Weights need a noise even where none is known; any does, for all levels share it. */
    static double sizeOf(double noise) {
        return Double.isNaN(noise) ? 1 : Math.max(noise, LEAST_NOISE);
    }

    private static List<Point> curve(CodeMeans means, int anchor) {
        double from = means.mean(Rgb8.grey(anchor)).l();
        List<Point> points = new ArrayList<>();
        for (int out = 0; out <= BEYOND; out++) {
            Rgb8 code = Rgb8.grey(Math.abs(anchor - out));
            if (means.count(code) > 0) {
                double lighter = means.mean(code).l() - from;
                points.add(new Point(out, anchor == 0 ? lighter : -lighter, means.count(code)));
            }
        }
        return points;
    }

    /** The least squares. */
    private record Fit(
            List<Point> before,
            List<Point> after,
            List<Point> tested,
            double noise,
            double anchors) {
        /**
         * Where the wedge changed its shape, an error of the anchor beyond belief would make up for
         * it; then there is none.
         */
        WedgeShift solve() {
            return solve(false).orElseGet(() -> solve(true).orElseThrow());
        }

        private Optional<WedgeShift> solve(boolean anchored) {
            double[] slopes = tested.stream().mapToDouble(p -> slope(p.out)).toArray();
            double shift = 0;
            double offset = 0;
            double[] normal = new double[3];
            for (int step = 0; step < STEPS; step++) {
                normal = new double[] {0, 0, 1 / (anchors * anchors)};
                double towards = 0;
                double off = -offset / (anchors * anchors);
                for (int i = 0; i < slopes.length; i++) {
                    double w = weight(tested.get(i));
                    double left = left(tested.get(i), shift, offset);
                    normal[0] += w * slopes[i] * slopes[i];
                    normal[1] -= w * slopes[i];
                    normal[2] += w;
                    towards -= w * slopes[i] * left;
                    off += w * left;
                }
                if (anchored) {
                    normal[1] = 0;
                    off = 0;
                }
                double determinant = normal[0] * normal[2] - normal[1] * normal[1];
                if (!(determinant > 0)) {
                    break;
                }
                shift += (normal[2] * towards - normal[1] * off) / determinant;
                offset += (normal[0] * off - normal[1] * towards) / determinant;
                shift = Math.max(-REACH / 2.0, Math.min(REACH / 2.0, shift));
            }
            boolean beyondBelief = Math.abs(offset) > BELIEVED * anchors;
            return beyondBelief && !anchored
                    ? Optional.empty()
                    : Optional.of(result(shift, offset, normal));
        }

        private WedgeShift result(double shift, double offset, double[] normal) {
            double chi = 0;
            double squares = 0;
            for (Point p : tested) {
                double left = left(p, shift, offset);
                chi += weight(p) * left * left;
                squares += left * left;
            }
            double freedom = tested.size() - 1.0;
            double determinant = normal[0] * normal[2] - normal[1] * normal[1];
            boolean known = !Double.isNaN(noise) && determinant > 0;
            double misfit = Math.max(1, chi / freedom);
            return new WedgeShift(
                    shift,
                    known ? Double.valueOf(Math.sqrt(misfit * normal[2] / determinant)) : null,
                    Math.sqrt(squares / tested.size()),
                    tested.size());
        }

        /** What a shift and an error of the anchor leave at a level. */
        private double left(Point p, double shift, double offset) {
            return p.distance - at(before, p.out - shift) - offset;
        }

        private double weight(Point p) {
            double one = sizeOf(noise);
            int there = before.stream().filter(b -> b.out == p.out).mapToInt(Point::readings).sum();
            return 1 / (one * one * (1.0 / p.readings + 1.0 / there));
        }

        /** Slope of both curves around a level, L* a level; wider where levels lie far apart. */
        private double slope(int out) {
            for (int reach = WINDOW; reach <= BEYOND; reach += WINDOW) {
                SimpleRegression line = new SimpleRegression();
                for (List<Point> curve : List.of(before, after)) {
                    for (Point p : curve) {
                        if (Math.abs(p.out - out) <= reach) {
                            line.addData(p.out, p.distance);
                        }
                    }
                }
                if (line.getN() >= FEWEST && line.getXSumSquares() > 0) {
                    return line.getSlope();
                }
            }
            return 0;
        }
    }

    /** A curve between its levels; before its anchor nothing separates. */
    private static double at(List<Point> curve, double out) {
        if (out <= 0) {
            return 0;
        }
        Point last = curve.get(0);
        for (Point p : curve) {
            if (p.out >= out) {
                double share = p.out == last.out ? 0 : (out - last.out) / (p.out - last.out);
                return last.distance + share * (p.distance - last.distance);
            }
            last = p;
        }
        return last.distance;
    }
}
