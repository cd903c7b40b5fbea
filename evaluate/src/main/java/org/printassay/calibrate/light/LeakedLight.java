package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.printassay.colour.LinearRgb;
import org.printassay.sample.PageImage;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;

/**
 * Light from outside that reaches under the lid along edges of the sheet: it adds the same to every
 * patch there, light or dark, and dies away inwards. A print with less ink there looks much alike:
 * both are taken off, and {@code sure} says whether it is light. It is taken off in a first
 * approximation, so that it does not pass for stray light of the whole sheet; the exact shape of
 * what is left is not known.
 *
 * @param beams what it is made of
 * @param added in device light, by channel (always three), then by patch in the order of the
 *     samples
 * @param tail how it would go on if it reached farther, largest value as {@code added}
 * @param sure whether it is surely light; not where a print with less ink there would explain the
 *     twins as well
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
public record LeakedLight(List<Beam> beams, double[][] added, double[][] tail, boolean sure) {
    /** Standard error as share of what was found, and of how it would go on. */
    private static final double UNSURE = 0.25;

    private static final double UNSURE_TAIL = 0.15;

    /** Where it may be though it was not found it reaches farther, by this factor. */
    private static final double FARTHER = 2;

    /** Edges of a sheet as it was designed. */
    enum Edge {
        LEFT,
        RIGHT,
        TOP,
        BOTTOM;

        /** The edge that a place is nearest to. */
        static Edge nearest(PointMm at, RectMm page) {
            return Arrays.stream(values())
                    .min(Comparator.comparingDouble(edge -> edge.distance(at, page)))
                    .orElseThrow();
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
     * Light of one shape.
     *
     * @param edge where it comes in
     * @param depthMm in which it dies away to 1/e
     * @param power 1 for an exponential, 2 for a Gaussian
     * @param amounts in device light at the edge, by channel
     */
    @SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
    record Beam(Edge edge, double depthMm, double power, double[] amounts) {
        /** The same with other amounts. */
        Beam withAmounts(double[] others) {
            return new Beam(edge, depthMm, power, others);
        }

        /** The same, so many times as strong. */
        Beam times(double factor) {
            return withAmounts(Arrays.stream(amounts).map(one -> factor * one).toArray());
        }

        /** Its share at a place of the page, 1 at the edge. */
        double at(PointMm place, RectMm page) {
            double depth = Math.max(0, edge.distance(place, page));
            return Math.exp(-Math.pow(depth / depthMm, power));
        }

        /** The same at each patch. */
        double[] at(SheetSamples samples) {
            RectMm page = samples.located().sheet().page();
            return samples.samples().stream()
                    .mapToDouble(sample -> at(sample.patch().area().centre(), page))
                    .toArray();
        }
    }

    /**
     * Light of one shape on the patches of a scan.
     *
     * @param sure whether it is surely light
     */
    static LeakedLight of(Beam beam, SheetSamples samples, boolean sure) {
        double[] shape = beam.at(samples);
        double peak = Arrays.stream(shape).max().orElse(0);
        double[] beyond = new Beam(beam.edge, FARTHER * beam.depthMm, 1, beam.amounts).at(samples);
        double farthest = Arrays.stream(beyond).max().orElse(1);
        double[][] added = new double[beam.amounts.length][shape.length];
        double[][] tail = new double[added.length][shape.length];
        for (int c = 0; c < added.length; c++) {
            for (int i = 0; i < shape.length; i++) {
                added[c][i] = beam.amounts[c] * shape[i];
                tail[c][i] = beam.amounts[c] * peak * beyond[i] / farthest;
            }
        }
        return new LeakedLight(List.of(beam), added, tail, sure);
    }

    /** Edges of the sheet, as it was designed, where it comes in. */
    Set<Edge> edges() {
        Set<Edge> edges = EnumSet.noneOf(Edge.class);
        beams.forEach(beam -> edges.add(beam.edge()));
        return edges;
    }

    /** Both together. */
    LeakedLight and(LeakedLight more) {
        List<Beam> all = new ArrayList<>(beams);
        all.addAll(more.beams);
        return new LeakedLight(
                all, sum(added, more.added), sum(tail, more.tail), sure && more.sure);
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
    public double largest(double[] paper) {
        double largest = 0;
        for (int c = 0; c < added.length; c++) {
            for (double light : added[c]) {
                largest = Math.max(largest, light / paper[c]);
            }
        }
        return largest;
    }

    /** The same where a print with less ink would explain the twins as well. */
    LeakedLight inDoubt() {
        return new LeakedLight(beams, added, tail, false);
    }

    /** "left", "left and top". */
    public String words() {
        return edges().stream()
                .map(edge -> edge.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" and "));
    }

    /** What one standard error of it does to the light of each patch. */
    public double[][] cause() {
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

    /** The same samples without it. */
    SheetSamples removedFrom(SheetSamples samples) {
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
        return samples.withLight(patchesWithout(samples, added), around);
    }

    /**
     * Patches without some light.
     *
     * @param added in device light, by channel, then by patch
     */
    static List<PatchSample> patchesWithout(SheetSamples samples, double[][] added) {
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
                            one.flags(),
                            one.crossed()));
        }
        return without;
    }
}
