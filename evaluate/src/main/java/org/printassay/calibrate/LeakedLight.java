package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.printassay.sample.LinearRgb;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Light from outside that reaches under the lid at one edge of the sheet: it adds the same to every
 * patch there, light or dark, and dies away inwards. Twins of dark codes tell it. What it added is
 * taken off in a first approximation, so that it does not pass for stray light of the whole sheet;
 * the exact shape of what is left is not known.
 *
 * @param edge where it comes in
 * @param added in device light, by channel (always three), then by patch in the order of the
 *     samples
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LeakedLight(Edge edge, double[][] added) {
    /** Standard errors from which it is taken for real. */
    private static final double SIGNIFICANT = 10;

    /** It matters from this many L* in the darkest patch of where it is brightest. */
    private static final double LEAST_L = 1;

    /** Lengths in which it dies away to 1/e, millimetres, at once or by the square of depth. */
    private static final double[] DEPTHS_MM = {8, 15, 30, 55};

    /** Standard error as share of it: what its true shape may differ by. */
    private static final double UNSURE = 0.1;

    /** How often it is looked for again in what is left, for it hides behind stray light. */
    private static final int ROUNDS = 4;

    private static final double MAD_TO_SIGMA = 1.4826;
    private static final double LEAST_SCALE = 0.02;

    /** Residuals count no further than this many standard deviations. */
    private static final double HELD = 6;

    /** Edges of a sheet as it was designed. */
    enum Edge {
        LEFT("left"),
        RIGHT("right"),
        TOP("top"),
        BOTTOM("bottom");

        private final String word;

        Edge(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }

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
     * The light that leaks in; empty where the twins show none.
     *
     * @param samples with it
     * @param scan the same
     * @param found what was found of their light without thought of leaks
     */
    static Optional<LeakedLight> of(
            SheetSamples samples, ScanLight scan, LightFitter.Outcome found) {
        Optional<LeakedLight> first = strongest(samples, scan, found);
        if (first.isEmpty()) {
            return first;
        }
        LeakedLight sum = first.get();
        for (int round = 1; round < ROUNDS; round++) {
            SheetSamples left = sum.removedFrom(samples);
            ScanLight again = ScanLight.of(left);
            Optional<LeakedLight> more = strongest(left, again, LightFitter.fit(again));
            if (more.isEmpty()) {
                break;
            }
            sum = sum.and(more.get());
        }
        return Optional.of(sum);
    }

    private LeakedLight and(LeakedLight more) {
        double[][] both = new double[added.length][];
        for (int c = 0; c < both.length; c++) {
            both[c] = added[c].clone();
            for (int i = 0; i < both[c].length; i++) {
                both[c][i] += more.added[c][i];
            }
        }
        return new LeakedLight(edge, both);
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

    /** What one standard error of it does to the light of each patch. */
    double[][] cause() {
        double[][] cause = new double[added.length][];
        for (int c = 0; c < cause.length; c++) {
            cause[c] = Arrays.stream(added[c]).map(light -> UNSURE * light).toArray();
        }
        return cause;
    }

    /** The same samples without it. */
    SheetSamples removedFrom(SheetSamples samples) {
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

    private static Optional<LeakedLight> strongest(
            SheetSamples samples, ScanLight scan, LightFitter.Outcome found) {
        LightFitter.Outcome full = found.full();
        if (full == null) {
            return Optional.empty();
        }
        int channels = scan.channels().size();
        LightRemoval removal = LightRemoval.of(samples, scan, full);
        int green = channels / 2;
        Departures departures = Departures.of(scan, removal, green);
        double most = SIGNIFICANT;
        Edge where = null;
        double[] shape = {};
        for (Edge edge : Edge.values()) {
            for (int i = 0; i < 2 * DEPTHS_MM.length; i++) {
                double[] tried = shape(samples, edge, DEPTHS_MM[i / 2], 1 + i % 2);
                double significance = departures.along(tried).significance();
                if (significance > most) {
                    most = significance;
                    where = edge;
                    shape = tried;
                }
            }
        }
        if (where == null || departures.along(shape).largestL() < LEAST_L) {
            return Optional.empty();
        }
        double[][] added = new double[LightRemoval.CHANNELS][shape.length];
        for (int c = 0; c < added.length; c++) {
            int from = Math.min(c, channels - 1);
            double amount = Departures.of(scan, removal, from).along(shape).amount();
            for (int i = 0; i < shape.length; i++) {
                added[c][i] = Math.max(0, amount) * shape[i] * scan.paper()[from];
            }
        }
        return Optional.of(new LeakedLight(where, added));
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
        private final double[] light;
        private final double[] weights;
        private final double[] off;

        private Departures(TwinData data, double[] light) {
            this.data = data;
            this.light = light;
            this.weights = new double[light.length];
            for (int i = 0; i < weights.length; i++) {
                double slope = TwinData.slope(Math.max(0, light[i]));
                weights[i] = data.group()[i] < 0 ? 0 : slope * slope;
            }
            this.off = fromMeans(light);
            double[] inL = new double[off.length];
            for (int i = 0; i < inL.length; i++) {
                inL[i] = Math.abs(off[i]) * Math.sqrt(weights[i]);
            }
            int[] rows = data.rows();
            double[] sizes = Arrays.stream(rows).mapToDouble(i -> inL[i]).sorted().toArray();
            double scale =
                    sizes.length == 0
                            ? LEAST_SCALE
                            : Math.max(LEAST_SCALE, MAD_TO_SIGMA * sizes[sizes.length / 2]);
            for (int i : rows) {
                weights[i] /= scale * scale;
                double limit = HELD / Math.sqrt(weights[i]);
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

        Fit along(double[] shape) {
            double[] varied = fromMeans(shape);
            double with = 0;
            double of = 0;
            double largest = 0;
            for (int i : data.rows()) {
                with += weights[i] * off[i] * varied[i];
                of += weights[i] * varied[i] * varied[i];
                largest = Math.max(largest, shape[i] * TwinData.slope(Math.max(0, light[i])));
            }
            double amount = of > 0 ? with / of : 0;
            return new Fit(amount, amount * Math.sqrt(of), amount * largest);
        }
    }
}
