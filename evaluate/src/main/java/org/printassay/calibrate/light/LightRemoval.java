package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.sample.SheetSamples;

/**
 * The patches of a scan freed from uneven and stray light by one model. Arrays by channel (always
 * three), then by patch.
 *
 * @param evened light evened out, stray light still in
 * @param corrected both removed
 * @param gain change of corrected by measured light
 * @param paper light of the unprinted paper by channel
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LightRemoval(double[][] evened, double[][] corrected, double[][] gain, double[] paper) {
    static final int CHANNELS = 3;

    /** The first of the {@link #causes} are stated; twins tell the others. */
    static final int STATED = 3;

    /** How far the mean surround of paper may be from that the scanner was set up with. */
    private static final double SURROUND_ERROR = 0.12;

    /** Glare that reaches so far that no twin can tell, as share of what they tell. */
    private static final double VEIL_ERROR = 0.05;

    /** Gain by what a low-order surface misses between middle and rim, as share of its range. */
    private static final double SURFACE_ERROR = 0.05;

    static LightRemoval of(SheetSamples samples, ScanLight scan, LightFitter.Outcome outcome) {
        int n = samples.samples().size();
        LightRemoval removal =
                new LightRemoval(
                        new double[CHANNELS][n],
                        new double[CHANNELS][n],
                        new double[CHANNELS][n],
                        new double[CHANNELS]);
        for (int c = 0; c < CHANNELS; c++) {
            int from = Math.min(c, scan.channels().size() - 1);
            TwinFit.Result fit = outcome.fits()[from];
            double[][] terms = scan.channels().get(from).data().surface();
            removal.paper[c] = scan.paper()[from] * fit.paper();
            for (int i = 0; i < n; i++) {
                double multiplier = multiplier(outcome, from, i);
                double added = 0;
                for (int t = 0; t < outcome.kinds().length; t++) {
                    added +=
                            outcome.kinds()[t].adds(fit.amounts()[t], outcome.around()[from][t][i]);
                }
                double light = LightSurface.at(fit.surface(), terms[i]);
                double measured = samples.samples().get(i).linear().channel(c);
                removal.evened[c][i] = measured / light;
                removal.corrected[c][i] =
                        (removal.evened[c][i] - added * scan.paper()[from]) / multiplier;
                removal.gain[c][i] = 1 / (light * multiplier);
            }
        }
        return removal;
    }

    private static double multiplier(LightFitter.Outcome outcome, int channel, int patch) {
        double multiplier = 1;
        for (int t = 0; t < outcome.kinds().length; t++) {
            multiplier +=
                    outcome.kinds()[t].multiplies(
                            outcome.fits()[channel].amounts()[t],
                            outcome.around()[channel][t][patch]);
        }
        return multiplier;
    }

    /**
     * What one standard error of each independent cause in the model's numbers does to {@code
     * corrected}.
     */
    List<double[][]> causes(ScanLight scan, ChannelsTogether model) {
        LightFitter.Outcome outcome = model.outcome();
        int surface = outcome.surfaceTerms();
        int parts = outcome.kinds().length;
        int channels = scan.channels().size();
        int n = corrected[0].length;
        double[][][] slopes = new double[CHANNELS][n][];
        double[][][] surfaces = new double[channels][][];
        for (int c = 0; c < channels; c++) {
            surfaces[c] = Triangle.of(surfaceCovariance(outcome, c));
        }
        for (int c = 0; c < CHANNELS; c++) {
            for (int i = 0; i < n; i++) {
                slopes[c][i] = slopes(scan, outcome, c, i);
            }
        }
        List<double[][]> causes = stated(scan, outcome);
        double[][] amounts = Triangle.of(model.covariance());
        for (int e = 0; e < amounts.length; e++) {
            double[][] cause = new double[CHANNELS][n];
            for (int c = 0; c < CHANNELS; c++) {
                int from = Math.min(c, channels - 1);
                double[] by = new double[surface + parts];
                for (int t = 0; t < parts; t++) {
                    by[surface + t] = amounts[from * parts + t][e];
                    for (int k = 0; k < surface; k++) {
                        by[k] += model.surfaceByAmount()[from][k][t] * by[surface + t];
                    }
                }
                apply(by, slopes[c], 1, cause[c]);
            }
            causes.add(cause);
        }
        double[][] together = Triangle.of(ChannelsTogether.correlation(outcome.fits()));
        for (int k = 0; k < surface; k++) {
            for (int e = 0; e < channels; e++) {
                double[][] cause = new double[CHANNELS][n];
                for (int c = 0; c < CHANNELS; c++) {
                    int from = Math.min(c, channels - 1);
                    double[] by = new double[surface];
                    for (int l = k; l < surface; l++) {
                        by[l] = surfaces[from][l][k];
                    }
                    apply(by, slopes[c], together[from][e], cause[c]);
                }
                causes.add(cause);
            }
        }
        return causes;
    }

    private static double[][] surfaceCovariance(LightFitter.Outcome outcome, int channel) {
        int surface = outcome.surfaceTerms();
        double[][] block = new double[surface][];
        for (int k = 0; k < surface; k++) {
            block[k] = Arrays.copyOf(outcome.fits()[channel].covariance()[k], surface);
        }
        return block;
    }

    private static void apply(double[] by, double[][] slopes, double factor, double[] to) {
        for (int i = 0; i < to.length; i++) {
            double sum = 0;
            for (int l = 0; l < by.length; l++) {
                sum += slopes[i][l] * by[l];
            }
            to[i] = factor * sum;
        }
    }

    /** What the twins cannot tell and is stated instead. */
    private List<double[][]> stated(ScanLight scan, LightFitter.Outcome outcome) {
        int n = corrected[0].length;
        double[][] surround = new double[CHANNELS][n];
        double[][] middle = new double[CHANNELS][n];
        double[][] veil = new double[CHANNELS][n];
        for (int c = 0; c < CHANNELS; c++) {
            int from = Math.min(c, scan.channels().size() - 1);
            TwinFit.Result fit = outcome.fits()[from];
            double[][] terms = scan.channels().get(from).data().surface();
            double doubt = SURFACE_ERROR * range(fit.surface(), terms);
            double far = VEIL_ERROR * scan.channels().get(from).meanOfAll() * scan.paper()[from];
            for (int i = 0; i < n; i++) {
                middle[c][i] = doubt * corrected[c][i];
                for (int t = 0; t < outcome.kinds().length; t++) {
                    if (outcome.kinds()[t] == StrayKind.RETURNED) {
                        surround[c][i] += corrected[c][i] * fit.amounts()[t] * SURROUND_ERROR;
                    } else {
                        veil[c][i] += fit.amounts()[t] * far;
                    }
                }
            }
        }
        return new ArrayList<>(List.of(surround, middle, veil));
    }

    /** Change of a corrected patch by each number of the model: surface, then amounts. */
    private double[] slopes(ScanLight scan, LightFitter.Outcome outcome, int c, int i) {
        int from = Math.min(c, scan.channels().size() - 1);
        TwinFit.Result fit = outcome.fits()[from];
        double[] terms = scan.channels().get(from).data().surface()[i];
        double multiplier = multiplier(outcome, from, i);
        double light = LightSurface.at(fit.surface(), terms);
        int surface = fit.surface().length;
        double[] slopes = new double[surface + outcome.kinds().length];
        for (int k = 0; k < surface; k++) {
            slopes[k] = -evened[c][i] * terms[k] / light / multiplier;
        }
        for (int t = 0; t < outcome.kinds().length; t++) {
            // In device light, as the patch; what stands around it is over paper.
            double paper = scan.paper()[from];
            double by =
                    outcome.kinds()[t].slope(corrected[c][i] / paper, outcome.around()[from][t][i]);
            slopes[surface + t] = -by * paper / multiplier;
        }
        return slopes;
    }

    private static double range(double[] surface, double[][] terms) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double[] at : terms) {
            double light = LightSurface.at(surface, at);
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        return most - least;
    }

    /** The weighted mean of models. */
    static LightRemoval mean(List<LightRemoval> models, double[] weights) {
        if (models.size() == 1) {
            return models.get(0);
        }
        int n = models.get(0).corrected[0].length;
        LightRemoval mean =
                new LightRemoval(
                        new double[CHANNELS][n],
                        new double[CHANNELS][n],
                        new double[CHANNELS][n],
                        new double[CHANNELS]);
        for (int m = 0; m < weights.length; m++) {
            LightRemoval one = models.get(m);
            for (int c = 0; c < CHANNELS; c++) {
                mean.paper[c] += weights[m] * one.paper[c];
                for (int i = 0; i < n; i++) {
                    mean.evened[c][i] += weights[m] * one.evened[c][i];
                    mean.corrected[c][i] += weights[m] * one.corrected[c][i];
                    mean.gain[c][i] += weights[m] * one.gain[c][i];
                }
            }
        }
        return mean;
    }

    /** How {@code corrected} of this model is off another's, times a factor: a cause of error. */
    double[][] apartFrom(LightRemoval other, double factor) {
        int n = corrected[0].length;
        double[][] apart = new double[CHANNELS][n];
        for (int c = 0; c < CHANNELS; c++) {
            for (int i = 0; i < n; i++) {
                apart[c][i] = factor * (corrected[c][i] - other.corrected[c][i]);
            }
        }
        return apart;
    }
}
