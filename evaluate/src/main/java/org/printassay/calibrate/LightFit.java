package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
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
 * @param shapes how many of them, the last, are what shapes of stray light that are as likely
 *     disagree by
 * @param paperKnown false when no unprinted patch was there and the lightest one stands for it
 * @param nearEdge patches whose neighbourhood is not all known, where that matters
 * @param falloffPercent largest difference of illumination between patches, green channel; 0 when
 *     not significant
 * @param surfaces coefficients of the light surface of each channel
 * @param stray what was found out about stray light, green channel; null when the twins cannot tell
 * @param assumed whether stray light is not known well enough to tell near levels apart without its
 *     error: then what is ordinary, or what the twins leave open, stands in {@code causes}
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record LightFit(
        double[][] corrected,
        double[][] evened,
        double[][] gain,
        double[] paper,
        List<double[][]> causes,
        int shapes,
        boolean paperKnown,
        boolean[] nearEdge,
        double falloffPercent,
        double[][] surfaces,
        @Nullable StrayEstimate stray,
        boolean assumed) {

    /**
     * Standard error of glare from which what was not significant may be there all the same: about
     * one L* in a black.
     */
    private static final double WIDE = 0.002;

    /** Patches with less of their neighbourhood known are within two widths of a straight edge. */
    private static final double KNOWN_AT_TWO_WIDTHS = 0.977;

    /** Estimates the light of a scan and removes it. */
    static LightFit of(SheetSamples samples) {
        ScanLight scan = ScanLight.of(samples);
        LightFitter.Outcome found = LightFitter.fit(scan);
        LightFitter.Outcome full = found.full();
        boolean untold = full == null;
        List<KernelChoice.Weighed> weighed =
                untold ? OrdinaryStray.of(samples, scan, found) : KernelChoice.of(scan, found);
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
        int green = scan.channels().size() / 2;
        // Glare along lines is no part of the full model, which then tells nothing of this scan.
        boolean linesAlone = found.kinds().length == 0 && likeliest.outcome().alongLines();
        LightFitter.Outcome rest = linesAlone ? null : full;
        boolean unsure =
                rest != null
                        && found.kinds().length == 0
                        && StrayEstimate.glareError(rest, green) > WIDE;
        List<double[][]> causes = causes(samples, scan, found, rest, likeliest, removal);
        int shapes = weights.length > 1 ? weights.length : 0;
        for (int m = 0; m < shapes; m++) {
            causes.add(models.get(m).apartFrom(removal, Math.sqrt(weights[m])));
        }
        return new LightFit(
                removal.corrected(),
                removal.evened(),
                removal.gain(),
                removal.paper(),
                causes,
                untold ? 0 : shapes,
                scan.paperKnown(),
                nearEdge(scan, untold ? found : likeliest.outcome(), samples.samples().size()),
                falloff(scan, likeliest.outcome()),
                Arrays.stream(likeliest.outcome().fits())
                        .map(TwinFit.Result::surface)
                        .toArray(double[][]::new),
                StrayEstimate.of(weighed, likeliest.outcome(), found, green),
                untold || unsure);
    }

    /**
     * What the errors of the model do to the patches. What was not significant was not removed; but
     * it may be there all the same, with the errors that it was found with.
     *
     * @param full the model with everything in it; null when it tells nothing of this scan
     */
    private static List<double[][]> causes(
            SheetSamples samples,
            ScanLight scan,
            LightFitter.Outcome found,
            LightFitter.@Nullable Outcome full,
            ChannelsTogether likeliest,
            LightRemoval removal) {
        if (full == null || !less(found, full)) {
            return new ArrayList<>(removal.causes(scan, likeliest));
        }
        LightRemoval everything = LightRemoval.of(samples, scan, full);
        List<double[][]> causes =
                new ArrayList<>(
                        found.kinds().length < full.kinds().length
                                ? everything.causes(scan, ChannelsTogether.of(scan, full))
                                : removal.causes(scan, likeliest));
        causes.add(everything.apartFrom(removal, 1));
        return causes;
    }

    private static boolean less(LightFitter.Outcome found, LightFitter.Outcome full) {
        return found.kinds().length < full.kinds().length
                || found.surfaceTerms() < full.surfaceTerms();
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
}
