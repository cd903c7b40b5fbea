package org.printassay.check;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How a change, its uncertainty and a tolerance become an outcome (idea of ISO/IEC Guide 98-4:2012,
 * 8.2 and 8.3.3: guarded rejection, and simple acceptance with a bound on the uncertainty).
 *
 * <p>U is {@link #factor} times the standard uncertainty of the change. <i>Failed</i>: the whole
 * interval of change -U to +U lies outside the tolerance. <i>Cannot tell</i>: U is larger than the
 * tolerance, so that not even no change could be accepted; or the estimate lies outside while the
 * interval reaches inside. <i>Drifted</i>: the change is larger than U, so there is one, and its
 * estimate lies inside. <i>Within</i>: everything else; then neither the change nor U is larger
 * than the tolerance.
 *
 * <p>The factor is so large that the chance of a change being seen in any of all quantities of an
 * unchanged print is at most the stated one, however they hang together (Bonferroni's inequality;
 * NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.3).
 *
 * @param falseAlarms chance over all quantities together, 0 to 1
 * @param quantities how many are judged together
 * @param factor on standard uncertainties
 */
public record DecisionRule(double falseAlarms, int quantities, double factor) {
    /** The rule, for people. */
    public static final String WORDS =
            "U is the uncertainty of a change, so wide that an unchanged print seems changed in any"
                    + " quantity at most as often as stated. Failed: the change less U is beyond the"
                    + " tolerance. Cannot tell: U is larger than the tolerance, or the change is"
                    + " beyond it and may yet be inside. Drifted: the change is larger than U, inside"
                    + " the tolerance. Within: anything else.";

    /** The rule for so many quantities together. */
    public static DecisionRule of(double falseAlarms, int quantities) {
        double each = falseAlarms / Math.max(1, quantities);
        double factor =
                new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - each / 2);
        return new DecisionRule(falseAlarms, quantities, factor);
    }

    /**
     * U of a change.
     *
     * @param standard standard uncertainty; null when it cannot be told
     * @param freedom degrees of freedom of it where few prints told it (Student's factor at the
     *     same chance); null for many
     */
    public @Nullable Double halfWidth(@Nullable Double standard, @Nullable Integer freedom) {
        return halfWidth(standard, freedom, 1);
    }

    /**
     * U of the largest of several changes: the chance is shared by all that were looked at.
     *
     * @param looks how many it is the largest of
     */
    public @Nullable Double halfWidth(
            @Nullable Double standard, @Nullable Integer freedom, int looks) {
        if (standard == null) {
            return null;
        }
        if (freedom == null && looks == 1) {
            return factor * standard;
        }
        double upper = 1 - falseAlarms / Math.max(1, quantities) / looks / 2;
        RealDistribution chance =
                freedom == null
                        ? new NormalDistribution(null, 0, 1)
                        : new TDistribution(null, freedom);
        return chance.inverseCumulativeProbability(upper) * standard;
    }

    /**
     * The outcome of one quantity.
     *
     * @param change of any sign
     * @param u its half-width; null when it cannot be told
     * @param limit largest change that is allowed
     */
    public static Outcome decide(double change, @Nullable Double u, double limit) {
        if (u == null) {
            return Outcome.CANNOT_TELL;
        }
        double size = Math.abs(change);
        if (size - u > limit) {
            return Outcome.FAILED;
        }
        if (u > limit || size > limit) {
            return Outcome.CANNOT_TELL;
        }
        return size > u ? Outcome.DRIFTED : Outcome.WITHIN;
    }
}
