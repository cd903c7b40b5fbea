package org.printassay.calibrate;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.sample.PatchSample;
import org.printassay.sample.SheetSamples;

/**
 * The light of one scan, and its patches freed from it. Arrays are indexed by channel (red, green,
 * blue; a grey scan has the same in all), then by patch in the order of the samples.
 *
 * @param corrected device light of each patch as under even light without stray light
 * @param evened device light with the light evened out, stray light still in
 * @param gain change of corrected by measured light, for standard errors
 * @param paper device light of the unprinted paper
 * @param paperKnown false when no unprinted patch was there and the lightest one stands for it
 * @param nearEdge patches whose neighbourhood is not all known, where that matters
 * @param falloffPercent largest difference of illumination between patches, green channel; 0 when
 *     not significant
 * @param stray what was found out about stray light, green channel; null when the twins cannot tell
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LightFit(
        double[][] corrected,
        double[][] evened,
        double[][] gain,
        double[] paper,
        boolean paperKnown,
        boolean[] nearEdge,
        double falloffPercent,
        @Nullable Stray stray) {

    /** Where the model with both parts has its glare. */
    private static final int GLARE_OF_BOTH = 1;

    /** Patches with less of their neighbourhood known are within two widths of a straight edge. */
    private static final double KNOWN_AT_TWO_WIDTHS = 0.977;

    /**
     * Stray light, green channel.
     *
     * @param corrected whether it was significant and removed
     * @param glare fraction g; 0 when left out of the model
     * @param glareError standard error of g, the width's error included
     * @param returned c; 0 when left out of the model
     * @param widthMm Gaussian width
     * @param negative whether it came out as less than nothing, which no scanner does by itself
     */
    record Stray(
            boolean corrected,
            double glare,
            double glareError,
            double returned,
            double widthMm,
            boolean negative) {}

    /** Estimates the light of a scan and removes it. */
    static LightFit of(SheetSamples samples) {
        ScanLight scan = ScanLight.of(samples);
        LightFitter.Outcome outcome = LightFitter.fit(scan);
        int n = samples.samples().size();
        double[][] corrected = new double[3][n];
        double[][] evened = new double[3][n];
        double[][] gain = new double[3][n];
        double[] paper = new double[3];
        int channels = scan.channels().size();
        for (int c = 0; c < 3; c++) {
            int from = Math.min(c, channels - 1);
            TwinFit.Result fit = outcome.fits()[from];
            double[][] terms = scan.channels().get(from).data().surface();
            paper[c] = scan.paper()[from] * fit.paper();
            for (int i = 0; i < n; i++) {
                PatchSample sample = samples.samples().get(i);
                double multiplier = 1;
                double added = 0;
                for (int t = 0; t < outcome.kinds().length; t++) {
                    double around = outcome.around()[from][t][i];
                    if (outcome.kinds()[t] == Kind.RETURNED) {
                        multiplier += fit.amounts()[t] * around;
                    } else {
                        multiplier -= fit.amounts()[t];
                        added += fit.amounts()[t] * around;
                    }
                }
                double light = Surface.at(fit.surface(), terms[i]);
                evened[c][i] = sample.linear().channel(c) / light;
                corrected[c][i] = (evened[c][i] - added * scan.paper()[from]) / multiplier;
                gain[c][i] = 1 / (light * multiplier);
            }
        }
        return new LightFit(
                corrected,
                evened,
                gain,
                paper,
                scan.paperKnown(),
                nearEdge(scan, outcome, n),
                falloff(scan, outcome),
                stray(outcome, channels / 2));
    }

    private static boolean[] nearEdge(ScanLight scan, LightFitter.Outcome outcome, int patches) {
        boolean[] near = new boolean[patches];
        for (Blur blur : outcome.blurs()) {
            double[] known = scan.channels().get(0).atPatches(blur.known());
            for (int i = 0; i < patches; i++) {
                near[i] |= known[i] < KNOWN_AT_TWO_WIDTHS;
            }
        }
        return near;
    }

    private static double falloff(ScanLight scan, LightFitter.Outcome outcome) {
        int green = scan.channels().size() / 2;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double[] terms : scan.channels().get(green).data().surface()) {
            double light = Surface.at(outcome.fits()[green].surface(), terms);
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        return 100 * (1 - least / most);
    }

    private static @Nullable Stray stray(LightFitter.Outcome outcome, int green) {
        LightFitter.Outcome full = outcome.full();
        if (full == null) {
            return null;
        }
        boolean used = outcome.kinds().length > 0;
        LightFitter.Outcome shown = used ? outcome : full;
        TwinFit.Result fit = shown.fits()[green];
        double glare = 0;
        double returned = 0;
        double width = 0;
        for (int t = 0; t < shown.kinds().length; t++) {
            double amount = fit.amounts()[t];
            if (shown.kinds()[t] == Kind.RETURNED) {
                returned += amount * fit.paper();
                width = width == 0 ? shown.blurs()[t].sigmaMm() : width;
            } else {
                // Of two widths of glare the one with more of it is named.
                width = amount > glare / 2 ? shown.blurs()[t].sigmaMm() : width;
                glare += amount;
            }
        }
        double error = glareError(shown, green);
        TwinFit.Result everything = full.fits()[green];
        double errorOfAll = glareError(full, green);
        if (shown.blurs().length > 1 && !List.of(shown.kinds()).contains(Kind.RETURNED)) {
            // The twins say that the kernel is no Gaussian; two of them are no more than another
            // guess at it, and what the guesses differ by is part of the error.
            error = Math.hypot(error, glare - everything.amounts()[GLARE_OF_BOTH]);
        }
        boolean negative = everything.amounts()[GLARE_OF_BOTH] < -4 * errorOfAll;
        return new Stray(used, glare, error > 0 ? error : errorOfAll, returned, width, negative);
    }

    /** Standard error of the sum of all glare, the widths' errors included. */
    private static double glareError(LightFitter.Outcome outcome, int channel) {
        WidthSearch search = outcome.search();
        TwinFit.Result fit = outcome.fits()[channel];
        double variance = 0;
        for (int t = 0; t < outcome.kinds().length; t++) {
            for (int u = 0; u < outcome.kinds().length; u++) {
                if (outcome.kinds()[t] == Kind.GLARE && outcome.kinds()[u] == Kind.GLARE) {
                    int first = fit.surface().length;
                    variance += fit.covariance()[first + t][first + u];
                }
            }
        }
        double error = Math.sqrt(Math.max(0, variance));
        return search == null ? error : search.sumError(error, channel, outcome.kinds());
    }
}
