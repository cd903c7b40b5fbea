package org.printassay.compare;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;
import org.printassay.metric.Coverage;

/**
 * What an evaluation says of its uncertainties, split into what another reading of the same print
 * would change and what prints read alike share.
 */
final class Uncertainties {
    private final Evaluation evaluation;

    Uncertainties(Evaluation evaluation) {
        this.evaluation = evaluation;
    }

    /**
     * Both parts as standard uncertainties.
     *
     * @param random null when one print does not tell it
     */
    record Split(@Nullable Double random, double systematic) {
        static final Split UNKNOWN = new Split(null, 0);

        Split times(double factor) {
            return new Split(random == null ? null : factor * random, factor * systematic);
        }

        /** Random part made larger by something independent. */
        Split and(double standard) {
            return new Split(
                    random == null ? standard : Double.valueOf(Math.hypot(random, standard)),
                    systematic);
        }
    }

    /** The budget of a figure, by its key; {@link Split#UNKNOWN} where there is none. */
    Split of(String key) {
        return budget(key).map(Uncertainties::split).orElse(Split.UNKNOWN);
    }

    /**
     * Of a figure that has a 95 % half-width but no budget of its own: the systematic part is that
     * of another figure which is obtained alike.
     */
    Split of(double halfWidth, String alike) {
        double whole = halfWidth / Coverage.NORMAL_95;
        double systematic = Math.min(whole, of(alike).systematic());
        return new Split(
                Math.sqrt(Math.max(0, whole * whole - systematic * systematic)), systematic);
    }

    /** Root mean square of two. */
    static double quadraticMean(double one, double other) {
        return Math.sqrt((one * one + other * other) / 2);
    }

    private Optional<Budget> budget(String key) {
        return evaluation.uncertainty().stream().filter(b -> b.figure().equals(key)).findFirst();
    }

    /** Without repeats nothing tells how another reading would differ. */
    private static Split split(Budget budget) {
        double random = 0;
        double systematic = 0;
        boolean repeated = false;
        for (Budget.Part part : budget.parts()) {
            double square = part.standard() * part.standard();
            switch (part.kind()) {
                case RANDOM -> {
                    random += square * widened(part);
                    repeated |= part.standard() > 0;
                }
                case LIGHT -> random += square;
                case CALIBRATION, SYSTEMATIC -> systematic += square;
            }
        }
        return new Split(repeated ? Math.sqrt(random) : null, Math.sqrt(systematic));
    }

    /** Few repeats tell their spread badly; by the variance of Student's distribution. */
    private static double widened(Budget.Part part) {
        Integer freedom = part.freedom();
        return freedom == null ? 1 : freedom > 2 ? freedom / (freedom - 2.0) : 4;
    }
}
