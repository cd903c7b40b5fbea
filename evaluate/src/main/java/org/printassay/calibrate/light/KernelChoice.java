package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Weighs kernels of other shapes, such that reach farther one way, and glare along the scan's
 * lines, against the model that was found with Gaussians: what the twins cannot tell apart is
 * averaged, and its disagreement belongs to the uncertainty (J. A. Hoeting and others, "Bayesian
 * Model Averaging: A Tutorial", Statistical Science 14, 1999).
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

    /**
     * Lines make what is around seem narrower than it is: widths tried beside them, in multiples of
     * the one found without (common practice, no source).
     */
    private static final double[] WIDER = {1, 1.6, 2.5};

    /**
     * How much farther one way than the mean of both stray light may reach, in steps (common
     * practice, no source).
     */
    private static final double[] LONGER = {1.35, 1.8};

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
        Rivals rivals = new Rivals();
        if (found.kinds().length == 0) {
            rivals.add(found, 0);
            addLines(rivals, new double[0][][], found);
            return rivals.weighed();
        }
        boolean apart = found.kinds().length > 1 && found.blurs()[0] != found.blurs()[1];
        StrayKind[] kinds = apart ? held.kinds() : found.kinds();
        double[][][] around = nodes();
        rivals.add(found, apart ? APART_HANDICAP : GAUSSIAN_HANDICAP);
        Stream.of(Kernel.values())
                .parallel()
                .map(kernel -> rival(kernel, around, kinds, found.surfaceTerms()))
                .filter(Objects::nonNull)
                .toList()
                .forEach(rival -> rivals.add(rival, 0));
        addLonger(rivals, kinds, found.surfaceTerms(), true);
        addLonger(rivals, kinds, found.surfaceTerms(), false);
        addLines(rivals, around, found);
        return rivals.weighed();
    }

    /** Models and how badly the twins fit them. */
    private final class Rivals {
        private final List<LightFitter.Outcome> outcomes = new ArrayList<>();
        private final List<Double> misfits = new ArrayList<>();

        /** Adds a model; whether it fits better than all before, its handicap counted. */
        boolean add(LightFitter.Outcome outcome, double handicap) {
            double misfit = misfit(outcome) + handicap;
            boolean better = misfits.stream().allMatch(other -> misfit < other);
            outcomes.add(outcome);
            misfits.add(misfit);
            return better;
        }

        List<Weighed> weighed() {
            double least = Collections.min(misfits);
            double[] weights =
                    misfits.stream()
                            .mapToDouble(misfit -> Math.exp(-(misfit - least) / 2))
                            .map(weight -> weight < NEGLIGIBLE ? 0 : weight)
                            .toArray();
            double sum = Arrays.stream(weights).sum();
            return IntStream.range(0, weights.length)
                    .filter(i -> weights[i] > 0)
                    .mapToObj(
                            i ->
                                    new Weighed(
                                            ChannelsTogether.of(scan, outcomes.get(i)),
                                            weights[i] / sum))
                    .toList();
        }
    }

    /** Shapes that are longer and longer one way, as long as they fit better than all before. */
    private void addLonger(Rivals rivals, StrayKind[] kinds, int surfaceTerms, boolean along) {
        for (double step : LONGER) {
            double[][][] around = longer(along ? step : 1 / step);
            LightFitter.Outcome rival = rival(Kernel.TAILED, around, kinds, surfaceTerms);
            if (rival == null || !rivals.add(rival, AMOUNT_HANDICAP)) {
                return;
            }
        }
    }

    private void addLines(Rivals rivals, double[][][] around, LightFitter.Outcome found) {
        for (double turn : new double[] {scan.turnDegrees(), scan.turnDegrees() + 90}) {
            for (LightFitter.Outcome lines : alongLines(turn, around, found.surfaceTerms())) {
                int more = Math.max(0, lines.kinds().length - found.kinds().length);
                rivals.add(lines, AMOUNT_HANDICAP * more);
            }
        }
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

    /**
     * The same where stray light reaches farther along the lines of the scan than the mean of both
     * ways, by a factor, or less far.
     */
    private double[][][] longer(double longer) {
        LineGrid lines = new LineGrid(scan.grid(), scan.turnDegrees());
        float[] anyMap = lines.turned(scan.anyMap());
        Blur[] blurs =
                Arrays.stream(Kernel.NODES)
                        .mapToObj(width -> new Blur(lines, width, longer, anyMap))
                        .toArray(Blur[]::new);
        double[][][] at = new double[scan.channels().size()][][];
        for (int c = 0; c < at.length; c++) {
            ChannelLight channel = scan.channels().get(c);
            at[c] = Arrays.copyOf(channel.around(lines, blurs), blurs.length + 1);
            at[c][blurs.length] = channel.everywhere();
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
     * Models of glare that a line of the scan spreads over itself: optics of a line sensor look at
     * one line at a time, so what is scattered in them comes from all of that line and from nowhere
     * else; all of the glare, or half of it where glass and lid scatter as much around. None where
     * it is not significant.
     *
     * @param turnDegrees how the page is turned against the lines
     * @param nodes light around by node; none where the scan has no other stray light
     */
    private List<LightFitter.Outcome> alongLines(
            double turnDegrees, double[][][] nodes, int surfaceTerms) {
        double[][] lines =
                scan.channels().stream()
                        .map(channel -> channel.alongLines(turnDegrees))
                        .toArray(double[][]::new);
        if (nodes.length == 0) {
            return Stream.ofNullable(glareAlone(lines, surfaceTerms)).toList();
        }
        WidthSearch found = held.search();
        LightFitter.Outcome all = found == null ? null : glareOf(lines, found, nodes, surfaceTerms);
        if (found == null || all == null) {
            return List.of();
        }
        double widthMm = found.widths()[0].mm();
        List<LightFitter.Outcome> models = new ArrayList<>(List.of(all));
        for (double wider : WIDER) {
            double[] shares = Kernel.TAILED.mixture(wider * widthMm);
            double[][] halves = new double[lines.length][];
            for (int c = 0; c < lines.length; c++) {
                halves[c] = mixed(shares, nodes[c]);
                for (int i = 0; i < halves[c].length; i++) {
                    halves[c][i] = (halves[c][i] + lines[c][i]) / 2;
                }
            }
            LightFitter.Outcome half = glareOf(halves, found, nodes, surfaceTerms);
            if (half != null) {
                models.add(half);
            }
        }
        return models;
    }

    /**
     * Glare whose light around each patch is given. Returned light beside it is Gaussian. Null
     * where it is not significant.
     */
    private LightFitter.@Nullable Outcome glareOf(
            double[][] glare, WidthSearch found, double[][][] nodes, int surfaceTerms) {
        int channels = nodes.length;
        int given = Widths.TRIED.length;
        double[][][] at = new double[channels][given + 1][];
        for (int c = 0; c < channels; c++) {
            for (int w = 0; w < given; w++) {
                at[c][w] = mixed(Kernel.gaussian(Widths.TRIED[w]), nodes[c]);
            }
            at[c][given] = glare[c];
        }
        StrayKind[] kinds = {StrayKind.RETURNED, StrayKind.GLARE};
        WidthSearch search =
                WidthSearch.first(
                        new WidthSearch.Setting(scan, kinds, surfaceTerms, at),
                        new int[] {found.widths()[0].nearest(), given},
                        held.fits());
        if (search == null) {
            return null;
        }
        double widthMm = search.widths()[0].mm();
        double[][][] around = new double[channels][][];
        for (int c = 0; c < channels; c++) {
            double[] near = mixed(Kernel.gaussian(widthMm), nodes[c]);
            around[c] =
                    new double[][] {
                        scan.channels().get(c).part(StrayKind.RETURNED, near), glare[c]
                    };
        }
        Blur blur = new Blur(scan.grid(), widthMm, scan.anyMap());
        LightFitter.Outcome both = fitted(kinds, blur, around, surfaceTerms, search, true);
        if (both == null || !(ratio(both, 1) >= SIGNIFICANT)) {
            return null;
        }
        if (ratio(both, 0) > SIGNIFICANT) {
            return both;
        }
        return glareAlone(glare, surfaceTerms);
    }

    /** The same without returned light; its width is taken for what lies beside patches only. */
    private LightFitter.@Nullable Outcome glareAlone(double[][] glare, int surfaceTerms) {
        double[][][] around = new double[glare.length][][];
        for (int c = 0; c < around.length; c++) {
            around[c] = new double[][] {glare[c]};
        }
        StrayKind[] kinds = {StrayKind.GLARE};
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
            StrayKind[] kinds,
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
            Kernel kernel, double[][][] nodes, StrayKind[] kinds, int surfaceTerms) {
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
