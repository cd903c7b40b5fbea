package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Weighs kernels of other shapes, and glare along the scan's lines, against the model that was
 * found with Gaussians: what the twins cannot tell apart is averaged, and its disagreement belongs
 * to the uncertainty (J. A. Hoeting and others, "Bayesian Model Averaging: A Tutorial", Statistical
 * Science 14, 1999).
 */
final class KernelChoice {
    /**
     * What a Gaussian must gain over each shape with a tail to weigh the same: optics scatter with
     * tails, so it is held half as likely beforehand (common practice, no source).
     */
    private static final double GAUSSIAN_HANDICAP = 2 * Math.log(2);

    /** What two widths must gain over one to weigh the same: three numbers more. */
    private static final double APART_HANDICAP = 9;

    /**
     * What a model must gain for each amount that the model found does without (common practice, no
     * source).
     */
    private static final double AMOUNT_HANDICAP = 3;

    /** Standard errors from which glare along lines is taken for real. */
    private static final double SIGNIFICANT = 3.3;

    /** Models that weigh less against the best are left away. */
    private static final double NEGLIGIBLE = 0.01;

    private final ScanLight scan;
    private final LightFitter.Outcome held;
    private double @Nullable [][][] nodes;

    /**
     * The choice for one scan.
     *
     * @param held the model with everything in it, significant or not
     */
    KernelChoice(ScanLight scan, LightFitter.Outcome held) {
        this.scan = scan;
        this.held = held;
    }

    /** The model with everything in it. */
    LightFitter.Outcome held() {
        return held;
    }

    /**
     * A model and how much of the evidence speaks for it.
     *
     * @param weight all weights add up to 1
     */
    record Weighed(ChannelsTogether model, double weight) {
        LightFitter.Outcome outcome() {
            return model.outcome();
        }
    }

    /** A model that was found and its rivals; where it has no stray light, glare along lines. */
    List<Weighed> weigh(LightFitter.Outcome found) {
        boolean stray = found.kinds().length > 0;
        boolean apart = found.kinds().length > 1 && found.blurs()[0] != found.blurs()[1];
        Kind[] kinds = apart ? held.kinds() : found.kinds();
        List<LightFitter.Outcome> outcomes = new ArrayList<>();
        List<Double> misfits = new ArrayList<>();
        outcomes.add(found);
        misfits.add(misfit(found) + (apart ? APART_HANDICAP : stray ? GAUSSIAN_HANDICAP : 0));
        double[][][] around = stray ? nodes() : new double[0][][];
        List<LightFitter.Outcome> rivals =
                Stream.of(stray ? Kernel.values() : new Kernel[0])
                        .parallel()
                        .map(kernel -> rival(kernel, around, kinds, found.surfaceTerms()))
                        .filter(Objects::nonNull)
                        .toList();
        for (LightFitter.Outcome rival : rivals) {
            outcomes.add(rival);
            misfits.add(misfit(rival));
        }
        for (double turn : new double[] {scan.turnDegrees(), scan.turnDegrees() + 90}) {
            LightFitter.Outcome lines =
                    stray
                            ? lines(turn, around, found.surfaceTerms())
                            : linesAlone(turn, found.surfaceTerms());
            if (lines != null) {
                int more = Math.max(0, lines.kinds().length - found.kinds().length);
                outcomes.add(lines);
                misfits.add(misfit(lines) + AMOUNT_HANDICAP * more);
            }
        }
        double least = misfits.stream().mapToDouble(m -> m).min().orElseThrow();
        double sum = 0;
        double[] weights = new double[outcomes.size()];
        for (int i = 0; i < weights.length; i++) {
            double weight = Math.exp(-(misfits.get(i) - least) / 2);
            weights[i] = weight < NEGLIGIBLE ? 0 : weight;
            sum += weights[i];
        }
        List<Weighed> weighed = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > 0) {
                weighed.add(
                        new Weighed(ChannelsTogether.of(scan, outcomes.get(i)), weights[i] / sum));
            }
        }
        return weighed;
    }

    /** Robust sum of squares with the spread of twins that all models share; mean of channels. */
    private double misfit(LightFitter.Outcome outcome) {
        double sum = 0;
        for (int c = 0; c < outcome.fits().length; c++) {
            TwinFit.Result fit =
                    TwinFit.fit(
                            scan.channels().get(c).data(),
                            outcome.kinds(),
                            outcome.around()[c],
                            outcome.surfaceTerms(),
                            held.fits()[c]);
            if (fit == null) {
                return Double.POSITIVE_INFINITY;
            }
            sum += fit.misfit() / outcome.fits().length;
        }
        return sum;
    }

    /** Light around each patch by channel and node, the last of them the mean of everything. */
    private double[][][] nodes() {
        if (nodes == null) {
            nodes = atNodes();
        }
        return nodes;
    }

    private double[][][] atNodes() {
        int channels = scan.channels().size();
        double[][][] at = new double[channels][Kernel.NODES.length + 1][];
        IntStream.range(0, Kernel.NODES.length)
                .parallel()
                .forEach(
                        n -> {
                            Blur blur = new Blur(scan.grid(), Kernel.NODES[n], scan.anyMap());
                            for (int c = 0; c < channels; c++) {
                                at[c][n] = scan.channels().get(c).around(blur);
                            }
                        });
        for (int c = 0; c < channels; c++) {
            at[c][Kernel.NODES.length] = scan.channels().get(c).everywhere();
        }
        return at;
    }

    private static double[] mixed(double[] shares, double[][] nodes) {
        double[] mixed = new double[nodes[0].length];
        for (int n = 0; n < shares.length; n++) {
            for (int i = 0; i < mixed.length; i++) {
                mixed[i] += shares[n] * nodes[n][i];
            }
        }
        return mixed;
    }

    /**
     * Glare that a line of the scan spreads over itself alone: optics of a line sensor look at one
     * line at a time, so what is scattered in them comes from all of that line and from nowhere
     * else. Returned light beside it is Gaussian. Null where it is not significant.
     *
     * @param turnDegrees how the page is turned against the lines
     */
    private LightFitter.@Nullable Outcome lines(
            double turnDegrees, double[][][] nodes, int surfaceTerms) {
        WidthSearch found = held.search();
        if (found == null) {
            return null;
        }
        int channels = nodes.length;
        int line = Widths.TRIED.length;
        double[][][] at = new double[channels][line + 1][];
        for (int c = 0; c < channels; c++) {
            for (int w = 0; w < line; w++) {
                at[c][w] = mixed(Kernel.gaussian(Widths.TRIED[w]), nodes[c]);
            }
            at[c][line] = scan.channels().get(c).alongLines(turnDegrees);
        }
        Kind[] kinds = {Kind.RETURNED, Kind.GLARE};
        WidthSearch search =
                WidthSearch.first(
                        new WidthSearch.Setting(scan, kinds, surfaceTerms, at),
                        new int[] {found.widths()[0].nearest(), line},
                        held.fits());
        if (search == null) {
            return null;
        }
        double widthMm = search.widths()[0].mm();
        double[][][] around = new double[channels][][];
        for (int c = 0; c < channels; c++) {
            double[] near = mixed(Kernel.gaussian(widthMm), nodes[c]);
            around[c] =
                    new double[][] {scan.channels().get(c).part(Kind.RETURNED, near), at[c][line]};
        }
        Blur blur = new Blur(scan.grid(), widthMm, scan.anyMap());
        LightFitter.Outcome both = fitted(kinds, blur, around, surfaceTerms, search, true);
        if (both == null || !(ratio(both, 1) >= SIGNIFICANT)) {
            return null;
        }
        if (ratio(both, 0) > SIGNIFICANT) {
            return both;
        }
        return linesAlone(turnDegrees, surfaceTerms);
    }

    /** The same without returned light; its width is taken for what lies beside patches only. */
    private LightFitter.@Nullable Outcome linesAlone(double turnDegrees, int surfaceTerms) {
        double[][][] around = new double[scan.channels().size()][][];
        for (int c = 0; c < around.length; c++) {
            around[c] = new double[][] {scan.channels().get(c).alongLines(turnDegrees)};
        }
        Kind[] kinds = {Kind.GLARE};
        LightFitter.Outcome alone =
                fitted(kinds, held.blurs()[0], around, surfaceTerms, null, true);
        return alone != null && ratio(alone, 0) >= SIGNIFICANT ? alone : null;
    }

    /** Largest amount of a part over its standard error, of all channels. */
    private static double ratio(LightFitter.Outcome outcome, int part) {
        double largest = 0;
        for (int c = 0; c < outcome.fits().length; c++) {
            TwinFit.Result fit = outcome.fits()[c];
            double error = fit.error(part) * outcome.widening(c, part);
            largest = Math.max(largest, fit.amounts()[part] / error);
        }
        return largest;
    }

    private LightFitter.@Nullable Outcome fitted(
            Kind[] kinds,
            Blur blur,
            double[][][] around,
            int surfaceTerms,
            @Nullable WidthSearch search,
            boolean alongLines) {
        TwinFit.Result[] fits = new TwinFit.Result[around.length];
        for (int c = 0; c < fits.length; c++) {
            TwinData data = scan.channels().get(c).data();
            TwinFit.Result fit = TwinFit.fit(data, kinds, around[c], surfaceTerms, null);
            if (fit == null) {
                return null;
            }
            fits[c] = fit;
        }
        Blur[] blurs = new Blur[kinds.length];
        Arrays.fill(blurs, blur);
        return new LightFitter.Outcome(kinds, blurs, around, fits, search, alongLines, held);
    }

    private LightFitter.@Nullable Outcome rival(
            Kernel kernel, double[][][] nodes, Kind[] kinds, int surfaceTerms) {
        int channels = nodes.length;
        double[][][] at = new double[channels][Widths.TRIED.length][];
        for (int w = 0; w < Widths.TRIED.length; w++) {
            double[] shares = kernel.mixture(Widths.TRIED[w]);
            for (int c = 0; c < channels; c++) {
                at[c][w] = mixed(shares, nodes[c]);
            }
        }
        WidthSearch.Setting setting = new WidthSearch.Setting(scan, kinds, surfaceTerms, at);
        WidthSearch found = held.search();
        if (found == null) {
            return null;
        }
        WidthSearch search =
                WidthSearch.common(setting, found.widths()[0].nearest(), true, held.fits());
        if (search == null) {
            return null;
        }
        double widthMm = search.widths()[0].mm();
        double[] shares = kernel.mixture(widthMm);
        Blur blur = new Blur(scan.grid(), widthMm, scan.anyMap());
        double[][][] around = new double[channels][kinds.length][];
        for (int c = 0; c < channels; c++) {
            double[] mixed = mixed(shares, nodes[c]);
            for (int t = 0; t < kinds.length; t++) {
                around[c][t] = scan.channels().get(c).part(kinds[t], mixed);
            }
        }
        return fitted(kinds, blur, around, surfaceTerms, search, false);
    }
}
