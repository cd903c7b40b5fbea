package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.sample.SheetSamples;

/**
 * The light of one scan, and its patches freed from it. Arrays are indexed by channel (red, green,
 * blue; a grey scan has the same in all), then by patch in the order of the samples.
 *
 * @param corrected device light of each patch as under even light without stray light
 * @param evened device light with the light evened out, stray light still in
 * @param gain change of corrected by measured light, for standard errors
 * @param paper device light of the unprinted paper
 * @param causes what one standard error of each independent cause in the removal of uneven and
 *     stray light does to {@code corrected}
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
        List<double[][]> causes,
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
        LightFitter.Outcome found = LightFitter.fit(scan);
        List<KernelChoice.Weighed> weighed = KernelChoice.of(scan, found);
        ChannelsTogether likeliest = weighed.get(0).model();
        double most = 0;
        double[] weights = new double[weighed.size()];
        List<LightRemoval> models = new ArrayList<>();
        for (int m = 0; m < weights.length; m++) {
            weights[m] = weighed.get(m).weight();
            models.add(LightRemoval.of(samples, scan, weighed.get(m).outcome()));
            if (weights[m] > most) {
                most = weights[m];
                likeliest = weighed.get(m).model();
            }
        }
        LightRemoval removal = LightRemoval.mean(models, weights);
        List<double[][]> causes = new ArrayList<>(removal.causes(scan, likeliest));
        for (int m = 0; m < weights.length && weights.length > 1; m++) {
            causes.add(models.get(m).apartFrom(removal, Math.sqrt(weights[m])));
        }
        LightFitter.Outcome full = found.full();
        if (full != null && found.kinds().length == 0) {
            // Not significant, so not removed; but it may be there all the same.
            causes.add(LightRemoval.of(samples, scan, full).apartFrom(removal, 1));
        }
        return new LightFit(
                removal.corrected(),
                removal.evened(),
                removal.gain(),
                removal.paper(),
                causes,
                scan.paperKnown(),
                nearEdge(scan, likeliest.outcome(), samples.samples().size()),
                falloff(scan, likeliest.outcome()),
                stray(weighed, likeliest.outcome(), found, scan.channels().size() / 2));
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

    private static @Nullable Stray stray(
            List<KernelChoice.Weighed> weighed,
            LightFitter.Outcome likeliest,
            LightFitter.Outcome found,
            int green) {
        LightFitter.Outcome full = found.full();
        if (full == null) {
            return null;
        }
        TwinFit.Result everything = full.fits()[green];
        boolean negative = everything.amounts()[GLARE_OF_BOTH] < -4 * glareError(full, green);
        if (found.kinds().length == 0) {
            return new Stray(
                    false,
                    glare(full, green),
                    glareError(full, green),
                    returned(full, green),
                    full.blurs()[GLARE_OF_BOTH].sigmaMm(),
                    negative);
        }
        double glare = 0;
        double returned = 0;
        for (KernelChoice.Weighed model : weighed) {
            glare += model.weight() * glare(model.outcome(), green);
            returned += model.weight() * returned(model.outcome(), green);
        }
        double variance = 0;
        for (KernelChoice.Weighed model : weighed) {
            double error = model.model().glareError(green);
            double apart = glare(model.outcome(), green) - glare;
            variance += model.weight() * (error * error + apart * apart);
        }
        double error = variance > 0 ? Math.sqrt(variance) : glareError(full, green);
        return new Stray(true, glare, error, returned, width(likeliest, green), negative);
    }

    private static double glare(LightFitter.Outcome outcome, int channel) {
        return sum(outcome, channel, Kind.GLARE);
    }

    private static double returned(LightFitter.Outcome outcome, int channel) {
        return sum(outcome, channel, Kind.RETURNED) * outcome.fits()[channel].paper();
    }

    private static double sum(LightFitter.Outcome outcome, int channel, Kind kind) {
        double sum = 0;
        for (int t = 0; t < outcome.kinds().length; t++) {
            sum += outcome.kinds()[t] == kind ? outcome.fits()[channel].amounts()[t] : 0;
        }
        return sum;
    }

    /** Width of the part that says most: glare where there is some, of two the larger. */
    private static double width(LightFitter.Outcome outcome, int channel) {
        double width = outcome.blurs()[0].sigmaMm();
        double most = 0;
        for (int t = 0; t < outcome.kinds().length; t++) {
            double amount = outcome.fits()[channel].amounts()[t];
            if (outcome.kinds()[t] == Kind.GLARE && amount > most) {
                most = amount;
                width = outcome.blurs()[t].sigmaMm();
            }
        }
        return width;
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
