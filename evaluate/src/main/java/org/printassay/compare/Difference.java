package org.printassay.compare;

import org.jspecify.annotations.Nullable;

/**
 * One figure of two sides.
 *
 * @param figure which
 * @param one mean of the first side
 * @param other mean of the second
 * @param standard standard uncertainty of the difference; null when it cannot be told
 * @param halfWidth 95 % half-width of it; null when it cannot be told
 * @param basis what the uncertainty holds
 */
public record Difference(
        Figure figure,
        double one,
        double other,
        @Nullable Double standard,
        @Nullable Double halfWidth,
        Basis basis) {
    /** What is known of how prints that are meant to be alike differ. */
    public enum Basis {
        /** Nothing: the difference is one of these prints, not of papers or printers. */
        THESE_PRINTS,
        /** A spread between prints that was known beforehand. */
        KNOWN_SPREAD,
        /** Repeats on both sides, or on one. */
        REPEATS
    }

    /** Second minus first. */
    public double value() {
        return other - one;
    }

    /** Whether zero lies outside the 95 % interval; false when there is none. */
    public boolean measurable() {
        return halfWidth != null && Math.abs(value()) > halfWidth;
    }
}
