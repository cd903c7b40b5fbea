package org.printassay.metric;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How neutral greys are. Headline figures are against the paper tint fading to neutral at black
 * (idea of ISO 12647-2:2013).
 *
 * @param meanDeltaCh mean dCh over the ramp
 * @param maxDeltaCh largest dCh
 * @param maxAtLevel level of it
 * @param cast mean da*, db* over the ramp, with words
 * @param shadows mean cast where the file's L* is below 33
 * @param midtones mean cast between
 * @param highlights mean cast where the file's L* is above 67
 * @param crossover whether shadows and highlights lean significantly different ways
 * @param paperRelativeMeanDeltaCh mean chroma relative to paper (plain media-relative grey)
 * @param paperRelativeMaxDeltaCh largest of it
 * @param paperTintWords paper tint in words; null when absolute colour is not judged
 * @param suggestedDeltaB b* to add in the file to offset the cast; null when not significant
 * @param points each level
 */
public record Neutrality(
        double meanDeltaCh,
        double maxDeltaCh,
        int maxAtLevel,
        Cast cast,
        Cast shadows,
        Cast midtones,
        Cast highlights,
        boolean crossover,
        double paperRelativeMeanDeltaCh,
        double paperRelativeMaxDeltaCh,
        @Nullable String paperTintWords,
        @Nullable Double suggestedDeltaB,
        List<Point> points) {
    public Neutrality {
        points = List.copyOf(points);
    }

    /**
     * A lean of greys away from neutral.
     *
     * @param a mean da*
     * @param b mean db*
     * @param uncertaintyA 95 % half-width of a
     * @param uncertaintyB 95 % half-width of b
     * @param significant whether it differs from none
     * @param words direction in words
     * @param budgets what the uncertainties of a and b are made of; empty when read from a file
     */
    public record Cast(
            double a,
            double b,
            double uncertaintyA,
            double uncertaintyB,
            boolean significant,
            String words,
            List<Budget> budgets) {
        public Cast {
            budgets = List.copyOf(budgets);
        }

        /** Without budgets. */
        public Cast(
                double a,
                double b,
                double uncertaintyA,
                double uncertaintyB,
                boolean significant,
                String words) {
            this(a, b, uncertaintyA, uncertaintyB, significant, words, List.of());
        }
    }

    /**
     * One grey.
     *
     * @param level 8-bit code
     * @param l measured L*
     * @param a measured a*
     * @param b measured b*
     * @param deltaA a* minus the reference grey of this lightness
     * @param deltaB b* minus the reference grey of this lightness
     */
    public record Point(int level, double l, double a, double b, double deltaA, double deltaB) {}
}
