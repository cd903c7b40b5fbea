package org.printassay.calibrate.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
 * @param leak light from outside, or what may be, already taken off
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
public record LightFit(
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
        boolean assumed,
        Optional<LeakedLight> leak) {
    /** The first of the causes are stated; twins tell the others. */
    public static final int STATED = LightRemoval.STATED;

    /**
     * Standard error of glare from which what was not significant may be there all the same: about
     * one L* in a black.
     */
    private static final double WIDE = 0.002;

    /** Patches with less of their neighbourhood known are within two widths of a straight edge. */
    private static final double KNOWN_AT_TWO_WIDTHS = 0.977;

    /** Estimates the light of a scan and removes it. */
    public static LightFit of(SheetSamples given) {
        LeakSearch.Cleared cleared = LeakSearch.cleared(given);
        SheetSamples samples = cleared.samples();
        ScanLight scan = cleared.scan();
        LightFitter.Outcome found = cleared.found();
        LightFitter.Outcome full = found.full();
        boolean untold = full == null;
        KernelChoice choice = full == null ? null : new KernelChoice(scan, full);
        List<KernelChoice.Weighed> weighed =
                choice == null ? OrdinaryStray.of(samples, scan, found) : choice.weigh(found);
        AveragedRemoval averaged = AveragedRemoval.of(samples, scan, weighed);
        LightRemoval removal = averaged.mean();
        LightFitter.Outcome likeliest = averaged.likeliest().outcome();
        int green = scan.channels().size() / 2;
        // Glare along lines is no part of the full model, which then tells nothing of this scan.
        boolean linesAlone = found.kinds().length == 0 && likeliest.alongLines();
        boolean unsure =
                full != null
                        && !linesAlone
                        && found.kinds().length == 0
                        && StrayEstimate.glareError(full, green) > WIDE;
        List<double[][]> causes = new ArrayList<>();
        List<double[][]> shapes = averaged.shapes();
        if (choice != null && !linesAlone && less(found, choice.held())) {
            // What was not significant was not removed; but it may be there all the same, with the
            // errors that it was found with.
            AveragedRemoval everything =
                    AveragedRemoval.of(samples, scan, choice.weigh(choice.held()));
            if (found.kinds().length < choice.held().kinds().length) {
                causes.addAll(everything.causes(scan));
                shapes = everything.shapes();
            } else {
                causes.addAll(averaged.causes(scan));
            }
            causes.add(everything.mean().apartFrom(removal, 1));
        } else {
            causes.addAll(averaged.causes(scan));
        }
        cleared.leak().ifPresent(light -> causes.add(light.cause()));
        cleared.perhaps().ifPresent(light -> causes.add(light.added()));
        causes.addAll(shapes);
        return new LightFit(
                removal.corrected(),
                removal.evened(),
                removal.gain(),
                removal.paper(),
                causes,
                untold ? 0 : shapes.size(),
                scan.paperKnown(),
                nearEdge(scan, untold ? found : likeliest, samples.samples().size()),
                falloff(scan, likeliest),
                Arrays.stream(likeliest.fits())
                        .map(TwinFit.Result::surface)
                        .toArray(double[][]::new),
                StrayEstimate.of(weighed, likeliest, found, green),
                untold || unsure,
                cleared.leak());
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
            double light = LightSurface.at(outcome.fits()[green].surface(), terms);
            least = Math.min(least, light);
            most = Math.max(most, light);
        }
        return 100 * (1 - least / most);
    }
}
