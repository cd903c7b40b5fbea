package org.printassay.compare;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * One figure of two sides.
 *
 * @param figure which
 * @param one mean of the first side
 * @param other mean of the second
 * @param standard standard uncertainty of the difference; null when it cannot be told
 * @param freedom effective degrees of freedom of it (ISO/IEC Guide 98-3, G.4); null for many
 * @param halfWidth 95 % half-width of it; null when it cannot be told
 * @param basis what the uncertainty holds
 */
public record Difference(
        Figure figure,
        double one,
        double other,
        @Nullable Double standard,
        @Nullable Double freedom,
        @Nullable Double halfWidth,
        Basis basis) {
    private static final double UPPER = 0.975;

    /** What is known of how prints that are meant to be alike differ. */
    public enum Basis {
        /** Nothing: the difference is one of these prints, not of papers or printers. */
        THESE_PRINTS("these-prints"),
        /** A spread between prints that was known beforehand. */
        KNOWN_SPREAD("known-spread"),
        /** Repeats on both sides, or on one. */
        REPEATS("repeats");

        private final String key;

        Basis(String key) {
            this.key = key;
        }

        /** Name in files. */
        public String key() {
            return key;
        }
    }

    /** With the half-width that follows from a standard uncertainty. */
    static Difference of(
            Figure figure,
            double one,
            double other,
            @Nullable Double standard,
            @Nullable Double freedom,
            Basis basis) {
        Double halfWidth = standard == null ? null : Double.valueOf(standard * factor(freedom));
        return new Difference(figure, one, other, standard, freedom, halfWidth, basis);
    }

    private static double factor(@Nullable Double freedom) {
        return freedom == null
                ? new NormalDistribution().inverseCumulativeProbability(UPPER)
                : new TDistribution(null, freedom).inverseCumulativeProbability(UPPER);
    }

    /** Second minus first. */
    public double value() {
        return other - one;
    }

    /** Whether zero lies outside the 95 % interval; false when there is none. */
    public boolean measurable() {
        return halfWidth != null && Math.abs(value()) > halfWidth;
    }

    /**
     * How probable a difference at least as large is where there is none (two-sided); NaN when that
     * cannot be told.
     */
    public double chance() {
        if (standard == null) {
            return Double.NaN;
        }
        if (standard == 0) {
            return value() == 0 ? 1 : 0;
        }
        double size = Math.abs(value()) / standard;
        return 2
                * (freedom == null
                        ? new NormalDistribution().cumulativeProbability(-size)
                        : new TDistribution(null, freedom).cumulativeProbability(-size));
    }

    /** The same seen from the other side. */
    public Difference turned() {
        return new Difference(
                figure, /* one= */ other, /* other= */ one, standard, freedom, halfWidth, basis);
    }
}
