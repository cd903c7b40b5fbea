package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.printassay.colour.Lab;
import org.printassay.sample.SheetSamples;

/**
 * Stray light of a scan with too few twins to estimate it from: what flatbeds ordinarily have,
 * narrowed by what twins there are (a linear model with a normal prior; A. Gelman and others,
 * "Bayesian Data Analysis", 3rd ed., 14.8). A black amid paper and one amid blacks tell much about
 * what levels beside them can be off. Where no twins are, nothing is removed and the whole prior is
 * the error.
 *
 * <p>A mark over the one black amid paper looks like stray light. So each twin may be marked
 * instead, which weighs as the twins say; what that changes belongs to the uncertainty (Bayesian
 * model averaging, as in {@link KernelChoice}).
 */
final class OrdinaryStray {
    /** Standard deviations of the kernels, millimetres: within patches, between them, beyond. */
    static final double[] WIDTHS_MM = {2.5, 8, 25};

    /**
     * Standard deviation of glare, for each of the widths. Flatbeds have 0 to 3 percent in all
     * (common practice, no source): a root mean square of 1.7.
     */
    static final double GLARE = 0.01;

    /** The same of returned light: 0 to 5 percent in all, a root mean square of 2.9. */
    static final double RETURNED = 0.017;

    /** Spread of inked twins, L* (common practice, no source): these are too few to tell it. */
    private static final double TWIN_L = 0.3;

    /** How much a mark over a twin changes it, L* (common practice, no source). */
    private static final double MARK_L = 5;

    /** How often a twin has a mark over all of it (common practice, no source). */
    private static final double MARKED = 0.02;

    /** Models that weigh less are left away. */
    private static final double NEGLIGIBLE = 0.003;

    private static final int NOBODY = -1;

    /** Optics differ this much between channels, as share of the amounts' errors, squared. */
    private static final double DIFFERENT = 0.01;

    private final SheetSamples samples;
    private final ScanLight scan;
    private final LightFitter.Outcome plain;
    private final StrayKind[] kinds = new StrayKind[2 * WIDTHS_MM.length];
    private final Blur[] blurs = new Blur[kinds.length];
    private final double[][][] around;

    private OrdinaryStray(SheetSamples samples, ScanLight scan, LightFitter.Outcome plain) {
        this.samples = samples;
        this.scan = scan;
        this.plain = plain;
        int channels = scan.channels().size();
        this.around = new double[channels][kinds.length][];
        for (int w = 0; w < WIDTHS_MM.length; w++) {
            Blur blur = new Blur(scan.grid(), WIDTHS_MM[w], scan.anyMap());
            for (int k = 0; k < 2; k++) {
                kinds[2 * w + k] = k == 0 ? StrayKind.RETURNED : StrayKind.GLARE;
                blurs[2 * w + k] = blur;
            }
            for (int c = 0; c < channels; c++) {
                double[] seen = scan.channels().get(c).around(blur);
                around[c][2 * w] = scan.channels().get(c).part(StrayKind.RETURNED, seen);
                around[c][2 * w + 1] = scan.channels().get(c).part(StrayKind.GLARE, seen);
            }
        }
    }

    /**
     * The likeliest stray light with its errors, and what is likely if one of the twins is marked.
     *
     * @param plain the light surface, found without stray light
     */
    static List<KernelChoice.Weighed> of(
            SheetSamples samples, ScanLight scan, LightFitter.Outcome plain) {
        OrdinaryStray stray = new OrdinaryStray(samples, scan, plain);
        List<Told> told = new ArrayList<>();
        Told clean = stray.likeliest(NOBODY);
        told.add(clean);
        for (int patch : stray.witnesses()) {
            Told marked = stray.likeliest(patch);
            double weight = marked.logEvidence + Math.log(MARKED / (1 - MARKED));
            told.add(new Told(marked.model, weight));
        }
        double most = told.stream().mapToDouble(Told::logEvidence).max().orElseThrow();
        told.removeIf(one -> one.logEvidence < most + Math.log(NEGLIGIBLE));
        double sum = told.stream().mapToDouble(one -> Math.exp(one.logEvidence - most)).sum();
        return told.stream()
                .map(
                        one ->
                                new KernelChoice.Weighed(
                                        one.model, Math.exp(one.logEvidence - most) / sum))
                .toList();
    }

    /** Stray light, and the logarithm of how likely it makes what was read, up to a constant. */
    private record Told(ChannelsTogether model, double logEvidence) {}

    /** Inked patches that have a clean twin. */
    private int[] witnesses() {
        TwinData data = scan.channels().get(0).data();
        return IntStream.range(0, data.groups())
                .filter(g -> g != data.paperGroup())
                .mapToObj(this::clean)
                .filter(twins -> twins.length > 1)
                .flatMapToInt(Arrays::stream)
                .toArray();
    }

    private int[] clean(int group) {
        TwinData data = scan.channels().get(0).data();
        return Arrays.stream(data.rows())
                .filter(i -> data.group()[i] == group)
                .filter(i -> samples.samples().get(i).flags().isEmpty())
                .toArray();
    }

    /**
     * By the twins.
     *
     * @param marked the patch that has a mark, or {@link #NOBODY}
     */
    private Told likeliest(int marked) {
        int parts = kinds.length;
        int channels = scan.channels().size();
        RealMatrix precision = new Array2DRowRealMatrix(parts, parts);
        for (int t = 0; t < parts; t++) {
            double size = kinds[t] == StrayKind.GLARE ? GLARE : RETURNED;
            precision.setEntry(t, t, 1 / (size * size));
        }
        double[] told = new double[parts];
        TwinData data = scan.channels().get(0).data();
        double logEvidence = 0;
        for (int g = 0; g < data.groups(); g++) {
            if (g != data.paperGroup()) {
                logEvidence += hear(g, marked, precision, told);
            }
        }
        CholeskyDecomposition decomposed = new CholeskyDecomposition(precision);
        RealMatrix covariance = decomposed.getSolver().getInverse();
        double[] amounts = covariance.operate(told);
        for (int t = 0; t < parts; t++) {
            logEvidence += told[t] * amounts[t] / 2;
        }
        logEvidence -= Math.log(decomposed.getDeterminant()) / 2;
        TwinFit.Result[] fits = new TwinFit.Result[channels];
        double[][][] byAmount = new double[channels][][];
        double[][] joint = new double[channels * parts][channels * parts];
        for (int c = 0; c < channels; c++) {
            fits[c] = with(plain.fits()[c], c, amounts, covariance);
            byAmount[c] = new double[plain.surfaceTerms()][parts];
            for (int d = 0; d < channels; d++) {
                for (int k = 0; k < parts; k++) {
                    for (int l = 0; l < parts; l++) {
                        joint[c * parts + k][d * parts + l] =
                                covariance.getEntry(k, l) * (c == d ? 1 + DIFFERENT : 1);
                    }
                }
            }
        }
        LightFitter.Outcome outcome =
                new LightFitter.Outcome(kinds, blurs, around, fits, null, false, null);
        return new Told(new ChannelsTogether(outcome, joint, byAmount), logEvidence);
    }

    /**
     * What one group of twins says. A twin's ink is off alike in all channels, so that these are
     * one witness and not three: their mean is taken.
     *
     * @return the logarithm of how likely what was read is without stray light, up to a constant;
     *     the group's own reflectance may be any
     */
    private double hear(int group, int marked, RealMatrix precision, double[] told) {
        int channels = scan.channels().size();
        TwinData first = scan.channels().get(0).data();
        int[] twins = clean(group);
        if (twins.length < 2) {
            return 0;
        }
        double[] seen = new double[twins.length];
        double[] weight = new double[twins.length];
        double[][] by = new double[kinds.length][twins.length];
        double middle = 0;
        for (int k = 0; k < twins.length; k++) {
            for (int c = 0; c < channels; c++) {
                seen[k] += evened(c, twins[k]) / channels;
            }
            middle += seen[k] / twins.length;
        }
        for (int c = 0; c < channels; c++) {
            double own = 0;
            for (int i : twins) {
                own += evened(c, i) / twins.length;
            }
            for (int t = 0; t < kinds.length; t++) {
                for (int k = 0; k < twins.length; k++) {
                    by[t][k] += kinds[t].slope(own, around[c][t][twins[k]]) / channels;
                }
            }
        }
        double slope = Lab.slope(Math.max(0, middle));
        for (int k = 0; k < twins.length; k++) {
            double off = twins[k] == marked ? Math.hypot(TWIN_L, MARK_L) : TWIN_L;
            double error = Math.hypot(off, first.errorL()[twins[k]]) / slope;
            weight[k] = 1 / (error * error);
        }
        double logEvidence = -Math.log(Arrays.stream(weight).sum()) / 2;
        centre(seen, weight);
        for (int k = 0; k < twins.length; k++) {
            logEvidence += (Math.log(weight[k]) - weight[k] * seen[k] * seen[k]) / 2;
        }
        for (double[] one : by) {
            centre(one, weight);
        }
        for (int t = 0; t < kinds.length; t++) {
            for (int k = 0; k < twins.length; k++) {
                told[t] += weight[k] * by[t][k] * seen[k];
                for (int u = 0; u < kinds.length; u++) {
                    // In this order both halves of the matrix are the same to the last digit.
                    precision.addToEntry(t, u, weight[k] * (by[t][k] * by[u][k]));
                }
            }
        }
        return logEvidence;
    }

    /** The group's own reflectance is not known: only distances from its mean tell. */
    private static void centre(double[] values, double[] weight) {
        double sum = 0;
        double total = 0;
        for (int k = 0; k < values.length; k++) {
            sum += weight[k] * values[k];
            total += weight[k];
        }
        for (int k = 0; k < values.length; k++) {
            values[k] -= sum / total;
        }
    }

    private double evened(int channel, int patch) {
        TwinData data = scan.channels().get(channel).data();
        double light = LightSurface.at(plain.fits()[channel].surface(), data.surface()[patch]);
        return data.light()[patch] / light;
    }

    private TwinFit.Result with(
            TwinFit.Result fit, int channel, double[] amounts, RealMatrix covariance) {
        int surface = fit.surface().length;
        int all = surface + kinds.length;
        RealMatrix both = new Array2DRowRealMatrix(all, all);
        for (int k = 0; k < surface; k++) {
            for (int l = 0; l < surface; l++) {
                both.setEntry(k, l, fit.covariance()[k][l]);
            }
        }
        both.setSubMatrix(covariance.getData(), surface, surface);
        return new TwinFit.Result(
                fit.surface(),
                amounts,
                both.getData(),
                fit.scales(),
                fit.misfit(),
                paper(fit.paper(), channel, amounts),
                fit.residuals());
    }

    /** Paper is seen through stray light too. */
    private double paper(double seen, int channel, double[] amounts) {
        TwinData data = scan.channels().get(channel).data();
        double sum = 0;
        int n = 0;
        for (int i : data.rows()) {
            if (data.group()[i] == data.paperGroup()) {
                double multiplier = 1;
                double added = 0;
                for (int t = 0; t < kinds.length; t++) {
                    double light = around[channel][t][i];
                    multiplier += kinds[t].multiplies(amounts[t], light);
                    added += kinds[t].adds(amounts[t], light);
                }
                sum += (seen - added) / multiplier;
                n++;
            }
        }
        return n == 0 ? seen : sum / n;
    }
}
