package org.printassay.metric;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Where the uncertainty of one figure comes from: independent parts, combined by the root of the
 * sum of their squares (ISO/IEC Guide 98-3, 5.1.2) and expanded to a coverage of 95 % by Student's
 * factor for the effective degrees of freedom (annex G.4, Welch and Satterthwaite).
 *
 * @param figure which figure, by its keys in the evaluation file: {@code white.lab.l}
 * @param unit its unit
 * @param value the figure
 * @param parts what it is made of; never empty
 */
public record Budget(String figure, String unit, double value, List<Part> parts) {
    /** From here on Student's factor is that of the normal distribution. */
    private static final double MANY = 1000;

    /** Whole degrees of freedom that rounding of numbers would take one from. */
    private static final double ROUNDING = 1e-9;

    public Budget {
        parts = List.copyOf(parts);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("a budget without parts");
        }
    }

    /** Kinds of parts. */
    public enum Kind {
        /** Told by the spread of what was read repeatedly (type A). */
        RANDOM("random"),
        /** The scanner's uneven and stray light, known no better than twins tell. */
        LIGHT("light"),
        /**
         * The calibration, by what it was off when colours were left out; or a profile that the
         * scan itself casts doubt on.
         */
        CALIBRATION("calibration"),
        /** Stated by how colour was obtained (type B). */
        SYSTEMATIC("systematic");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Name in files. */
        public String key() {
            return key;
        }

        /** The kind of a {@link #key}. */
        public static Kind ofKey(String key) {
            for (Kind kind : values()) {
                if (kind.key.equals(key)) {
                    return kind;
                }
            }
            throw new IllegalArgumentException("no such part: " + key);
        }
    }

    /**
     * One part.
     *
     * @param kind where it comes from
     * @param standard standard uncertainty, in the figure's unit
     * @param freedom degrees of freedom; null for many
     */
    public record Part(Kind kind, double standard, @Nullable Integer freedom) {
        /** A part that is stated rather than seen, as a 95 % half-width. */
        static Part stated(double halfWidth) {
            return new Part(Kind.SYSTEMATIC, halfWidth / Coverage.NORMAL_95, null);
        }

        /** This part and another of its kind as one, with their effective degrees of freedom. */
        Part with(Part other) {
            double fourth = 0;
            for (Part part : List.of(this, other)) {
                Integer known = part.freedom;
                fourth += known == null ? 0 : Math.pow(part.standard, 4) / known;
            }
            double both = Math.hypot(standard, other.standard);
            double effective = Math.pow(both, 4) / fourth;
            return new Part(
                    kind, both, effective <= MANY ? (int) Math.max(1, effective + ROUNDING) : null);
        }
    }

    /** Combined standard uncertainty. */
    public double standard() {
        return Math.sqrt(parts.stream().mapToDouble(p -> p.standard * p.standard).sum());
    }

    /** Student's factor that the standard uncertainty is expanded by. */
    public double coverageFactor() {
        double denominator = 0;
        for (Part part : parts) {
            Integer freedom = part.freedom;
            if (freedom != null) {
                denominator += Math.pow(part.standard, 4) / freedom;
            }
        }
        double fourth = Math.pow(standard(), 4);
        if (denominator * MANY <= fourth) {
            return Coverage.NORMAL_95;
        }
        double freedom = Math.max(1, fourth / denominator);
        return new TDistribution(null, freedom).inverseCumulativeProbability(0.975);
    }

    /** Half-width of the 95 % interval. */
    public double halfWidth() {
        return coverageFactor() * standard();
    }

    /** The largest part. */
    public Part largest() {
        Part largest = parts.get(0);
        for (Part part : parts) {
            largest = part.standard > largest.standard ? part : largest;
        }
        return largest;
    }
}
