package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.sample.PageImage;
import org.printassay.sample.SheetSamples;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

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
        @Nullable Stray stray,
        boolean assumed) {

    /** Where the model with both parts has its glare. */
    private static final int GLARE_OF_BOTH = 1;

    /**
     * Standard error of glare from which what was not significant may be there all the same: about
     * one L* in a black.
     */
    private static final double WIDE = 0.002;

    /** Patches with less of their neighbourhood known are within two widths of a straight edge. */
    private static final double KNOWN_AT_TWO_WIDTHS = 0.977;

    /**
     * Stray light, green channel.
     *
     * @param corrected whether it was significant and removed
     * @param glare fraction g; 0 when left out of the model
     * @param glareError standard error of g, the width's error included
     * @param returned c; 0 when left out of the model
     * @param widthMm Gaussian width; NaN for glare along the lines of the scan
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
                rest != null && found.kinds().length == 0 && glareError(rest, green) > WIDE;
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
                stray(weighed, likeliest.outcome(), found, green),
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

    /**
     * Light of the bare margin over that of the windows, evened out, by channel; stray light, which
     * differs by a percent or two between them, is still in both. Empty when there are too few
     * places.
     */
    Optional<double[]> marginOverWindows(SheetSamples samples) {
        RectMm page = samples.located().sheet().page();
        RectMm printable = samples.located().sheet().printable();
        Surface terms = new Surface(page);
        PageImage image = samples.page();
        double[] ratios = new double[surfaces.length];
        for (int c = 0; c < ratios.length; c++) {
            List<Double> margin = new ArrayList<>();
            for (int row = 0; row < image.rows(); row++) {
                for (int column = 0; column < image.columns(); column++) {
                    PointMm at = image.centre(column, row);
                    float light = image.light(c, column, row);
                    if (inMargin(at, page, printable) && !Float.isNaN(light)) {
                        margin.add(light / Surface.at(surfaces[c], terms.terms(at.x(), at.y())));
                    }
                }
            }
            List<Double> windows = new ArrayList<>();
            for (int i = 0; i < samples.samples().size(); i++) {
                if (samples.samples().get(i).patch().section() == Section.PAPER) {
                    windows.add(evened[c][i]);
                }
            }
            if (margin.size() < 200 || windows.size() < 4) {
                return Optional.empty();
            }
            ratios[c] = median(margin) / median(windows);
        }
        return Optional.of(ratios);
    }

    private static boolean inMargin(PointMm at, RectMm page, RectMm printable) {
        double fromEdge =
                Math.min(
                        Math.min(at.x() - page.x(), page.right() - at.x()),
                        Math.min(at.y() - page.y(), page.bottom() - at.y()));
        double fromPrint =
                Math.max(
                        Math.max(printable.x() - at.x(), at.x() - printable.right()),
                        Math.max(printable.y() - at.y(), at.y() - printable.bottom()));
        return fromEdge > 3 && fromPrint > 1;
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
        return sorted[sorted.length / 2];
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
        if (found.kinds().length == 0 && !likeliest.alongLines()) {
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

    /**
     * Width of the part that says most: glare where there is some, of two the larger. NaN for glare
     * along lines.
     */
    private static double width(LightFitter.Outcome outcome, int channel) {
        if (outcome.alongLines()) {
            return Double.NaN;
        }
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
