package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.printassay.colour.Lab;
import org.printassay.sample.LinearRgb;
import org.printassay.sample.PageImage;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Light from outside that reaches under the lid along edges of the sheet: it adds the same to every
 * patch there, light or dark, and dies away inwards. Twins of dark codes tell it, on sheets that
 * have enough of them; a print with less ink there is another thing, which mid-tones tell. What it
 * added is taken off in a first approximation, so that it does not pass for stray light of the
 * whole sheet; the exact shape of what is left is not known. Light that comes in at a corner or a
 * part of an edge is not looked for.
 *
 * @param beams what it is made of
 * @param added in device light, by channel (always three), then by patch in the order of the
 *     samples
 * @param tail how it would go on if it reached farther, largest value as {@code added}
 * @param sure whether it is surely light; not where a print with less ink there would explain the
 *     twins as well
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LeakedLight(List<Beam> beams, double[][] added, double[][] tail, boolean sure) {
    /** Standard errors from which it is taken for real. */
    private static final double SIGNIFICANT = 10;

    /** What it must explain better than a print with less ink there, chi-square. */
    private static final double CLEARLY = 50;

    /** It matters from this many L* in the patch that it changes most. */
    private static final double LEAST_L = 2;

    /** Lengths in which it dies away to 1/e, millimetres, at once or by the square of depth. */
    private static final double[] DEPTHS_MM = {8, 15, 30, 55, 100};

    private static final double[] POWERS = {1, 2};
    private static final double[] NO_LIGHT = new double[LightRemoval.CHANNELS];

    /** Where it may be though it was not found it reaches farther, by this factor. */
    private static final double TAIL = 2;

    /** Standard error as share of what was found, and of how it would go on. */
    private static final double UNSURE = 0.25;

    private static final double UNSURE_TAIL = 0.15;

    /** How often it is looked for again in what is left, for it hides behind stray light. */
    private static final int ROUNDS = 5;

    private static final double MAD_TO_SIGMA = 1.4826;
    private static final double LEAST_SCALE = 0.02;

    /** Standard deviations from which residuals count by size instead of square (Huber). */
    private static final double HELD = 3;

    private static final int STEPS = 6;

    /** Shares of channels are not taken from darker patches, paper 1. */
    private static final double DARKEST = 1e-4;

    /** How often light is followed further, and a print with less ink instead. */
    private static final int FURTHER = 4;

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
     * Light of one shape.
     *
     * @param edge where it comes in
     * @param depthMm in which it dies away to 1/e
     * @param power 1 for an exponential, 2 for a Gaussian
     * @param amounts in device light at the edge, by channel
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Beam(Edge edge, double depthMm, double power, double[] amounts) {
        private double at(PointMm place, RectMm page) {
            double depth = Math.max(0, edge.distance(place, page));
            return Math.exp(-Math.pow(depth / depthMm, power));
        }

        private double[] at(SheetSamples samples) {
            RectMm page = samples.located().sheet().page();
            return samples.samples().stream()
                    .mapToDouble(sample -> at(sample.patch().area().centre(), page))
                    .toArray();
        }
    }

    /** Edges of the sheet, as it was designed, where it comes in. */
    Set<Edge> edges() {
        Set<Edge> edges = EnumSet.noneOf(Edge.class);
        beams.forEach(beam -> edges.add(beam.edge()));
        return edges;
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
            Optional<LeakedLight> leak) {
        private static Cleared of(SheetSamples samples, Optional<LeakedLight> leak) {
            ScanLight scan = ScanLight.of(samples);
            return new Cleared(samples, scan, LightFitter.fit(scan), leak);
        }
    }

    /** Samples without the light that leaks in, as far as twins show any. */
    static Cleared cleared(SheetSamples given) {
        ScanLight scan = ScanLight.of(given);
        Cleared first = new Cleared(given, scan, LightFitter.fit(scan), Optional.empty());
        Cleared light = first;
        for (int round = 0; round < ROUNDS; round++) {
            Optional<LeakedLight> more = strongest(light, Looking.FOR_WHAT_MATTERS);
            if (more.isEmpty()) {
                break;
            }
            LeakedLight sum = light.leak.map(one -> one.and(more.get())).orElse(more.get());
            light = Cleared.of(sum.removedFrom(given), Optional.of(sum));
        }
        if (light.leak.isEmpty() || clearlyLight(first, light)) {
            return light;
        }
        LeakedLight may = light.leak.get();
        LeakedLight unsure = new LeakedLight(may.beams, may.added, may.tail, false);
        return new Cleared(light.samples, light.scan, light.found, Optional.of(unsure));
    }

    /**
     * Whether light explains the twins better than any print with less ink at the same edges, both
     * followed as far as they go.
     */
    private static boolean clearlyLight(Cleared first, Cleared light) {
        Set<Edge> edges = light.leak.orElseThrow().edges();
        Cleared most = light;
        for (int round = 0; round < FURTHER; round++) {
            Optional<LeakedLight> more = strongest(most, new Looking(edges, false));
            if (more.isEmpty()) {
                break;
            }
            most = Cleared.of(more.get().removedFrom(most.samples), Optional.empty());
        }
        Departures left = Departures.of(most);
        double enough = left.loss(left.scale) + CLEARLY;
        for (LessInk way : LessInk.values()) {
            Cleared print = first;
            for (int round = 0; round < FURTHER; round++) {
                Optional<Cleared> next = withMoreInk(print, edges, way);
                if (next.isEmpty()) {
                    break;
                }
                print = next.get();
            }
            if (Departures.of(print).loss(left.scale) < enough) {
                return false;
            }
        }
        return true;
    }

    /**
     * Samples as if more ink lay where the print is lighter, by the shape that fits best; empty
     * where none does.
     */
    private static Optional<Cleared> withMoreInk(Cleared so, Set<Edge> edges, LessInk way) {
        Departures departures = Departures.of(so);
        Fit best = Fit.NONE;
        double[] shape = new double[so.samples.samples().size()];
        for (Edge edge : edges) {
            for (double depth : DEPTHS_MM) {
                for (double power : POWERS) {
                    double[] lighter =
                            departures.lighter(
                                    new Beam(edge, depth, power, NO_LIGHT).at(so.samples), way);
                    Fit fit = departures.fit(lighter);
                    if (fit.gain() > best.gain()) {
                        best = fit;
                        shape = lighter;
                    }
                }
            }
        }
        if (best.gain() <= 0) {
            return Optional.empty();
        }
        LightFitter.Outcome full = so.found.full();
        LightRemoval removal = LightRemoval.of(so.samples, so.scan, full == null ? so.found : full);
        double[][] added = new double[LightRemoval.CHANNELS][shape.length];
        for (int c = 0; c < added.length; c++) {
            double paper = so.scan.paper()[Math.min(c, so.scan.channels().size() - 1)];
            for (int i = 0; i < shape.length; i++) {
                // Of each channel in proportion to that in which the departure was seen, then back
                // to light with stray light in it.
                double seen = Math.max(DARKEST, departures.light[i]);
                double share = removal.corrected()[c][i] / paper / seen;
                double more = best.amount() * shape[i] * Math.max(0, Math.min(2, share)) * paper;
                added[c][i] = more / removal.gain()[c][i];
            }
        }
        LeakedLight as = new LeakedLight(List.of(), added, added, true);
        return Optional.of(Cleared.of(as.removedFrom(so.samples), Optional.empty()));
    }

    private LeakedLight and(LeakedLight more) {
        List<Beam> all = new ArrayList<>(beams);
        all.addAll(more.beams);
        return new LeakedLight(all, sum(added, more.added), sum(tail, more.tail), true);
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
        return edges().stream()
                .map(edge -> edge.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" and "));
    }

    /** What one standard error of it does to the light of each patch. */
    double[][] cause() {
        double[][] cause = new double[added.length][];
        for (int c = 0; c < cause.length; c++) {
            cause[c] = new double[added[c].length];
            for (int i = 0; i < cause[c].length; i++) {
                double share = sure ? UNSURE : 1;
                cause[c][i] = share * added[c][i] + UNSURE_TAIL * tail[c][i];
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
        RectMm page = samples.located().sheet().page();
        PageImage around =
                samples.page()
                        .without(
                                (channel, place) ->
                                        beams.stream()
                                                .mapToDouble(
                                                        beam ->
                                                                beam.amounts()[channel]
                                                                        * beam.at(place, page))
                                                .sum());
        return samples.withLight(without, around);
    }

    /**
     * What to look for.
     *
     * @param edges where
     * @param mattering whether it must be significant and change what is read
     */
    private record Looking(Set<Edge> edges, boolean mattering) {
        static final Looking FOR_WHAT_MATTERS = new Looking(EnumSet.allOf(Edge.class), true);
    }

    private static Optional<LeakedLight> strongest(Cleared so, Looking looking) {
        if (so.found.full() == null) {
            return Optional.empty();
        }
        Departures departures = Departures.of(so);
        Fit best = Fit.NONE;
        Edge where = Edge.LEFT;
        double depthMm = 0;
        double powerOfDepth = 1;
        double[] shape = {};
        for (Edge edge : looking.edges) {
            for (double depth : DEPTHS_MM) {
                for (double power : POWERS) {
                    double[] tried = new Beam(edge, depth, power, NO_LIGHT).at(so.samples);
                    Fit fit = departures.fit(tried);
                    if (fit.gain() > best.gain() && fit.amount() > 0) {
                        best = fit;
                        where = edge;
                        depthMm = depth;
                        powerOfDepth = power;
                        shape = tried;
                    }
                }
            }
        }
        boolean matters = best.significance() >= SIGNIFICANT && best.largestL() >= LEAST_L;
        if (looking.mattering ? !matters : best.gain() <= 0) {
            return Optional.empty();
        }
        int channels = so.scan.channels().size();
        double[] amounts = new double[LightRemoval.CHANNELS];
        double peak = Arrays.stream(shape).max().orElse(0);
        double[] beyond = new Beam(where, TAIL * depthMm, 1, NO_LIGHT).at(so.samples);
        double farthest = Arrays.stream(beyond).max().orElse(1);
        double[][] added = new double[LightRemoval.CHANNELS][shape.length];
        double[][] tail = new double[LightRemoval.CHANNELS][shape.length];
        for (int c = 0; c < added.length; c++) {
            int from = Math.min(c, channels - 1);
            double amount =
                    Math.max(0, Departures.of(so, from).fit(shape).amount())
                            * so.scan.paper()[from];
            amounts[c] = amount;
            for (int i = 0; i < shape.length; i++) {
                added[c][i] = amount * shape[i];
                tail[c][i] = amount * peak * beyond[i] / farthest;
            }
        }
        Beam beam = new Beam(where, depthMm, powerOfDepth, amounts);
        return Optional.of(new LeakedLight(List.of(beam), added, tail, true));
    }

    /** How a print with less ink at a place is lighter there, by tone. */
    enum LessInk {
        ALIKE,
        BY_INK,
        BY_SQUARE,
        DARKS;

        /** L* by which a tone is lighter, against others. */
        double at(double lightness) {
            double ink = Math.max(0, 1 - lightness / 100);
            return switch (this) {
                case ALIKE -> 1;
                case BY_INK -> ink;
                case BY_SQUARE -> ink * ink;
                case DARKS -> Math.max(0, 1 - lightness / 40);
            };
        }
    }

    /**
     * A shape fitted to the departures.
     *
     * @param amount of light, paper 1
     * @param significance amount over its standard error
     * @param largestL what it does to the lightness of the patch that it changes most, L*
     * @param gain by how much it explains the departures better than nothing, as chi-square
     */
    private record Fit(double amount, double significance, double largestL, double gain) {
        static final Fit NONE = new Fit(0, 0, 0, 0);
    }

    /** How patches differ from the mean of their twins in one channel, paper 1. */
    private static final class Departures {
        private final TwinData data;
        private final int[] rows;
        private final double[] light;

        /** L* for each unit of light. */
        private final double[] slopes;

        private final double[] off;
        private final double scale;

        private Departures(TwinData data, double[] light) {
            this.data = data;
            this.rows = data.rows();
            this.light = light;
            this.off = fromMeans(light);
            this.slopes =
                    Arrays.stream(light).map(one -> TwinData.slope(Math.max(0, one))).toArray();
            double[] sizes =
                    Arrays.stream(rows)
                            .mapToDouble(i -> Math.abs(off[i]) * slopes[i])
                            .sorted()
                            .toArray();
            this.scale =
                    sizes.length == 0
                            ? LEAST_SCALE
                            : Math.max(LEAST_SCALE, MAD_TO_SIGMA * sizes[sizes.length / 2]);
        }

        static Departures of(Cleared so) {
            return of(so, so.scan.channels().size() / 2);
        }

        static Departures of(Cleared so, int channel) {
            LightFitter.Outcome full = so.found.full();
            LightRemoval removal =
                    LightRemoval.of(so.samples, so.scan, full == null ? so.found : full);
            double[] light = removal.corrected()[channel].clone();
            for (int i = 0; i < light.length; i++) {
                light[i] /= so.scan.paper()[channel];
            }
            return new Departures(so.scan.channels().get(channel).data(), light);
        }

        private double[] fromMeans(double[] values) {
            double[] sums = new double[data.groups()];
            double[] sizes = new double[data.groups()];
            for (int i : rows) {
                sums[data.group()[i]] += values[i];
                sizes[data.group()[i]]++;
            }
            double[] from = new double[values.length];
            for (int i : rows) {
                from[i] = values[i] - sums[data.group()[i]] / sizes[data.group()[i]];
            }
            return from;
        }

        /** Light that a print with less ink throws back more. */
        double[] lighter(double[] shape, LessInk way) {
            double[] lighter = new double[shape.length];
            for (int i = 0; i < shape.length; i++) {
                lighter[i] = shape[i] * way.at(Lab.lightness(light[i])) / slopes[i];
            }
            return lighter;
        }

        /** Huber's fit. */
        Fit fit(double[] change) {
            double[] x = fromMeans(change);
            double amount = 0;
            double squares = 0;
            for (int step = 0; step < STEPS; step++) {
                squares = 0;
                double with = 0;
                for (int i : rows) {
                    double z = slopes[i] / scale * (off[i] - amount * x[i]);
                    double held = Math.min(1, HELD / Math.max(1e-9, Math.abs(z)));
                    double weight = held * Math.pow(slopes[i] / scale, 2);
                    squares += weight * x[i] * x[i];
                    with += weight * x[i] * off[i];
                }
                if (!(squares > 0)) {
                    return Fit.NONE;
                }
                amount = with / squares;
            }
            double gain = 0;
            double largest = 0;
            for (int i : rows) {
                gain += huber(slopes[i] / scale * off[i]);
                gain -= huber(slopes[i] / scale * (off[i] - amount * x[i]));
                largest = Math.max(largest, change[i] * slopes[i]);
            }
            return new Fit(amount, amount * Math.sqrt(squares), amount * largest, gain);
        }

        /** What all departures come to, in units of a spread, L*. */
        double loss(double spread) {
            return Arrays.stream(rows).mapToDouble(i -> huber(slopes[i] / spread * off[i])).sum();
        }

        private static double huber(double z) {
            double size = Math.abs(z);
            return size <= HELD ? z * z : HELD * (2 * size - HELD);
        }
    }
}
