package org.printassay.calibrate.light;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found out about the stray light of a scan, green channel.
 *
 * @param corrected whether it was significant and removed
 * @param glare fraction g; 0 when left out of the model
 * @param glareError standard error of g, the width's error included
 * @param returned c; 0 when left out of the model
 * @param widthMm Gaussian width; NaN for glare along the lines of the scan
 * @param negative whether it came out as less than nothing, which no scanner does by itself
 */
public record StrayEstimate(
        boolean corrected,
        double glare,
        double glareError,
        double returned,
        double widthMm,
        boolean negative) {

    /** Where the model with both parts has its glare. */
    private static final int GLARE_OF_BOTH = 1;

    /**
     * The estimate by all models, each by its weight; null where the twins carry no model.
     *
     * @param likeliest the one that weighs most
     */
    static @Nullable StrayEstimate of(
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
            return new StrayEstimate(
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
        return new StrayEstimate(true, glare, error, returned, width(likeliest, green), negative);
    }

    private static double glare(LightFitter.Outcome outcome, int channel) {
        return sum(outcome, channel, StrayKind.GLARE);
    }

    private static double returned(LightFitter.Outcome outcome, int channel) {
        return sum(outcome, channel, StrayKind.RETURNED) * outcome.fits()[channel].paper();
    }

    private static double sum(LightFitter.Outcome outcome, int channel, StrayKind kind) {
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
            if (outcome.kinds()[t] == StrayKind.GLARE && amount > most) {
                most = amount;
                width = outcome.blurs()[t].sigmaMm();
            }
        }
        return width;
    }

    /** Standard error of the sum of all glare, the widths' errors included. */
    static double glareError(LightFitter.Outcome outcome, int channel) {
        WidthSearch search = outcome.search();
        TwinFit.Result fit = outcome.fits()[channel];
        double variance = 0;
        for (int t = 0; t < outcome.kinds().length; t++) {
            for (int u = 0; u < outcome.kinds().length; u++) {
                if (outcome.kinds()[t] == StrayKind.GLARE
                        && outcome.kinds()[u] == StrayKind.GLARE) {
                    int first = fit.surface().length;
                    variance += fit.covariance()[first + t][first + u];
                }
            }
        }
        double error = Math.sqrt(Math.max(0, variance));
        return search == null ? error : search.sumError(error, channel, outcome.kinds());
    }
}
