package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.printassay.sample.LinearRgb;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Light from outside that reaches under the lid at edges of the sheet: it adds the same to every
 * patch there, light or dark, and dies away inwards. Twins of dark codes tell it; a print that is
 * lighter there by as many L* in all tones is another thing. What it added is taken off in a first
 * approximation, so that it does not pass for stray light of the whole sheet; the exact shape of
 * what is left is not known. Light from a corner is taken for light from an edge.
 *
 * @param edges where it comes in, edges of the sheet as it was designed
 * @param added in device light, by channel (always three), then by patch in the order of the
 *     samples
 * @param tail how it would go on if it reached farther, largest value as {@code added}
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LeakedLight(Set<Edge> edges, double[][] added, double[][] tail) {
    /** Standard errors from which it is taken for real. */
    private static final double SIGNIFICANT = 10;

    /** What it must explain better than a print that is lighter there, chi-square. */
    private static final double CLEARLY = 50;

    /** It matters from this many L* in the patch that it changes most. */
    private static final double LEAST_L = 2;

    /** Lengths in which it dies away to 1/e, millimetres, at once or by the square of depth. */
    private static final double[] DEPTHS_MM = {8, 15, 30, 55, 100};

    private static final double[] POWERS = {1, 2};

    /** Where it may be though it was not found, it dies away in this length. */
    private static final double TAIL_MM = 80;

    /** Standard error as share of what was found, and of how it would go on. */
    private static final double UNSURE = 0.25;

    private static final double UNSURE_TAIL = 0.1;

    /** How often it is looked for again in what is left, for it hides behind stray light. */
    private static final int ROUNDS = 5;

    private static final double MAD_TO_SIGMA = 1.4826;
    private static final double LEAST_SCALE = 0.02;

    /** Residuals count no further than this many standard deviations. */
    private static final double HELD = 6;

    /** Edges of a sheet as it was designed. */
    enum Edge {
        LEFT,
        RIGHT,
        TOP,
        BOTTOM;

        private double distance(PointMm at, RectMm page) {
            return switch (this) {
                case LEFT -> at.x() - page.x();
                case RIGHT -> page.right() - at.x();
                case TOP -> at.y() - page.y();
                case BOTTOM -> page.bottom() - at.y();
            };
        }
    }

    /**
     * Samples, and what was found of their light.
     *
     * @param leak what was taken off them already
     */
    record Cleared(
            SheetSamples samples,
            ScanLight scan,
            LightFitter.Outcome found,
            Optional<LeakedLight> leak) {}

    /** Samples without the light that leaks in, as far as twins show any. */
    static Cleared cleared(SheetSamples given) {
        ScanLight scan = ScanLight.of(given);
        Cleared cleared = new Cleared(given, scan, LightFitter.fit(scan), Optional.empty());
        for (int round = 0; round < ROUNDS; round++) {
            Optional<LeakedLight> more = strongest(cleared);
            if (more.isEmpty()) {
                break;
            }
            LeakedLight sum = cleared.leak.map(one -> one.and(more.get())).orElse(more.get());
            SheetSamples left = sum.removedFrom(given);
            ScanLight again = ScanLight.of(left);
            cleared = new Cleared(left, again, LightFitter.fit(again), Optional.of(sum));
        }
        return cleared;
    }

    private LeakedLight and(LeakedLight more) {
        Set<Edge> all = EnumSet.copyOf(edges);
        all.addAll(more.edges);
        return new LeakedLight(all, sum(added, more.added), sum(tail, more.tail));
    }

    private static double[][] sum(double[][] one, double[][] other) {
        double[][] sum = new double[one.length][];
        for (int c = 0; c < sum.length; c++) {
            sum[c] = one[c].clone();
            for (int i = 0; i < sum[c].length; i++) {
                sum[c][i] += other[c][i];
            }
        }
        return sum;
    }

    /** Where it is brightest, as share of the light of paper. */
    double largest(double[] paper) {
        double largest = 0;
        for (int c = 0; c < added.length; c++) {
            for (double light : added[c]) {
                largest = Math.max(largest, light / paper[c]);
            }
        }
        return largest;
    }

    /** "left", "left and top". */
    String words() {
        return edges.stream()
                .map(edge -> edge.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" and "));
    }

    /** What one standard error of it does to the light of each patch. */
    double[][] cause() {
        double[][] cause = new double[added.length][];
        for (int c = 0; c < cause.length; c++) {
            cause[c] = new double[added[c].length];
            for (int i = 0; i < cause[c].length; i++) {
                cause[c][i] = UNSURE * added[c][i] + UNSURE_TAIL * tail[c][i];
            }
        }
        return cause;
    }

    private SheetSamples removedFrom(SheetSamples samples) {
        List<PatchSample> without = new ArrayList<>();
        for (int i = 0; i < samples.samples().size(); i++) {
            PatchSample one = samples.samples().get(i);
            LinearRgb light = one.linear();
            without.add(
                    new PatchSample(
                            one.patch(),
                            new LinearRgb(
                                    light.r() - added[0][i],
                                    light.g() - added[1][i],
                                    light.b() - added[2][i]),
                            one.standardError(),
                            one.blocks(),
                            one.flags()));
        }
        return samples.withSamples(without);
    }

    private static Optional<LeakedLight> strongest(Cleared so) {
        LightFitter.Outcome full = so.found.full();
        if (full == null) {
            return Optional.empty();
        }
        ScanLight scan = so.scan;
        int channels = scan.channels().size();
        LightRemoval removal = LightRemoval.of(so.samples, scan, full);
        Departures departures = Departures.of(scan, removal, channels / 2);
        double most = SIGNIFICANT;
        double rival = 0;
        Edge where = null;
        double[] shape = {};
        for (Edge edge : Edge.values()) {
            for (double depth : DEPTHS_MM) {
                for (double power : POWERS) {
                    double[] tried = shape(so.samples, edge, depth, power);
                    double significance = departures.along(tried).significance();
                    if (significance > most) {
                        most = significance;
                        where = edge;
                        shape = tried;
                    }
                    rival = Math.max(rival, departures.alike(tried).significance());
                }
            }
        }
        if (where == null
                || most * most < rival * rival + CLEARLY
                || departures.along(shape).largestL() < LEAST_L) {
            return Optional.empty();
        }
        double peak = Arrays.stream(shape).max().orElse(0);
        double[] beyond = shape(so.samples, where, TAIL_MM, 1);
        double farthest = Arrays.stream(beyond).max().orElse(1);
        double[][] added = new double[LightRemoval.CHANNELS][shape.length];
        double[][] tail = new double[LightRemoval.CHANNELS][shape.length];
        for (int c = 0; c < added.length; c++) {
            int from = Math.min(c, channels - 1);
            double amount =
                    Math.max(0, Departures.of(scan, removal, from).along(shape).amount())
                            * scan.paper()[from];
            for (int i = 0; i < shape.length; i++) {
                added[c][i] = amount * shape[i];
                tail[c][i] = amount * peak * beyond[i] / farthest;
            }
        }
        return Optional.of(new LeakedLight(EnumSet.of(where), added, tail));
    }

    private static double[] shape(SheetSamples samples, Edge edge, double depthMm, double power) {
        RectMm page = samples.located().sheet().page();
        return samples.samples().stream()
                .mapToDouble(
                        sample -> {
                            PointMm at = sample.patch().area().centre();
                            double depth = Math.max(0, edge.distance(at, page));
                            return Math.exp(-Math.pow(depth / depthMm, power));
                        })
                .toArray();
    }

    /** How patches differ from the mean of their twins in one channel, paper 1. */
    private static final class Departures {
        private final TwinData data;
        private final double[] slopes;
        private final double[] weights;
        private final double[] off;

        private Departures(TwinData data, double[] light) {
            this.data = data;
            this.slopes =
                    Arrays.stream(light).map(one -> TwinData.slope(Math.max(0, one))).toArray();
            this.weights = new double[light.length];
            this.off = fromMeans(light);
            int[] rows = data.rows();
            double[] sizes =
                    Arrays.stream(rows)
                            .mapToDouble(i -> Math.abs(off[i]) * slopes[i])
                            .sorted()
                            .toArray();
            double scale =
                    sizes.length == 0
                            ? LEAST_SCALE
                            : Math.max(LEAST_SCALE, MAD_TO_SIGMA * sizes[sizes.length / 2]);
            for (int i : rows) {
                weights[i] = Math.pow(slopes[i] / scale, 2);
                double limit = HELD * scale / slopes[i];
                off[i] = Math.max(-limit, Math.min(limit, off[i]));
            }
        }

        static Departures of(ScanLight scan, LightRemoval removal, int channel) {
            double[] light = removal.corrected()[channel].clone();
            for (int i = 0; i < light.length; i++) {
                light[i] /= scan.paper()[channel];
            }
            return new Departures(scan.channels().get(channel).data(), light);
        }

        private double[] fromMeans(double[] values) {
            double[] sums = new double[data.groups()];
            double[] sizes = new double[data.groups()];
            for (int i : data.rows()) {
                sums[data.group()[i]] += values[i];
                sizes[data.group()[i]]++;
            }
            double[] from = new double[values.length];
            for (int i : data.rows()) {
                from[i] = values[i] - sums[data.group()[i]] / sizes[data.group()[i]];
            }
            return from;
        }

        /**
         * A shape fitted to the departures.
         *
         * @param amount of light, paper 1
         * @param significance amount over its standard error
         * @param largestL what it does to the lightness of the patch that it changes most, L*
         */
        private record Fit(double amount, double significance, double largestL) {}

        /** The same light added at places that are alike. */
        Fit along(double[] shape) {
            double[] varied = fromMeans(shape);
            double with = 0;
            double of = 0;
            double largest = 0;
            for (int i : data.rows()) {
                with += weights[i] * off[i] * varied[i];
                of += weights[i] * varied[i] * varied[i];
                largest = Math.max(largest, shape[i] * slopes[i]);
            }
            double amount = of > 0 ? with / of : 0;
            return new Fit(amount, amount * Math.sqrt(of), amount * largest);
        }

        /** The same L* added at places that are alike, whatever the tone. */
        Fit alike(double[] shape) {
            double[] inLight = new double[shape.length];
            for (int i = 0; i < shape.length; i++) {
                inLight[i] = shape[i] / slopes[i];
            }
            return along(inLight);
        }
    }
}
