package org.printassay.demo.paper;

import java.util.List;

/**
 * What a printer does to tone, told on the scale of neutral 8-bit levels (continuous, 0 to 255).
 *
 * @param gamma exponent on level / 255; 1 prints as the aim, above 1 darker
 * @param dotGain added ink coverage in the middle, 0 to 0.2: coverage a becomes a + 4 g a (1 - a)
 * @param blocked levels through {@code level} print as black; level 0 and width 0 for none
 * @param merged levels from {@code level} print as paper; level 255 and width 0 for none
 * @param bumps local departures in L*, for uneven or reversing tone
 */
public record Tone(double gamma, double dotGain, Knee blocked, Knee merged, List<Bump> bumps) {
    /** Prints as the aim. */
    public static final Tone AIM =
            new Tone(1, 0, new Knee(0, 0, false), new Knee(255, 0, false), List.of());

    public Tone {
        bumps = List.copyOf(bumps);
        if (gamma <= 0 || dotGain < -0.24 || dotGain > 0.24) {
            throw new IllegalArgumentException(
                    "tone needs gamma above 0 and dot gain within 0.24, got "
                            + gamma
                            + " and "
                            + dotGain);
        }
        if (blocked.level() + blocked.width() > merged.level() - merged.width()) {
            throw new IllegalArgumentException("blocked and merged levels overlap");
        }
    }

    /**
     * Where tone goes flat and how it gets back to the aim.
     *
     * @param level last level that prints flat
     * @param width levels within which tone is back on the aim
     * @param soft whether it leaves the flat part with slope zero (a soft knee) or in a straight
     *     line (a sharp one)
     */
    public record Knee(double level, double width, boolean soft) {
        /** Share of the way from flat (0) to the aim (1), {@code beyond} levels past the knee. */
        private double rise(double beyond, double total) {
            double t = beyond / width;
            if (!soft) {
                return t;
            }
            // Cubic with slope 0 at the flat end and the slope of the aim where it joins.
            return t * t * (3 - 2 * t) + width / total * t * t * (t - 1);
        }
    }

    /**
     * A local departure, Gaussian over the levels.
     *
     * @param level its middle
     * @param width its standard deviation in levels
     * @param deltaL its height, L*
     */
    public record Bump(double level, double width, double deltaL) {}

    /** This tone with other blocked levels. */
    public Tone withBlocked(double level, double width, boolean soft) {
        return new Tone(gamma, dotGain, new Knee(level, width, soft), merged, bumps);
    }

    /** This tone with other merged highlights. */
    public Tone withMerged(double level, double width, boolean soft) {
        return new Tone(gamma, dotGain, blocked, new Knee(level, width, soft), bumps);
    }

    /** This tone with another exponent. */
    public Tone withGamma(double other) {
        return new Tone(other, dotGain, blocked, merged, bumps);
    }

    /** This tone with another dot gain. */
    public Tone withDotGain(double other) {
        return new Tone(gamma, other, blocked, merged, bumps);
    }

    /** This tone with local departures. */
    public Tone withBumps(List<Bump> other) {
        return new Tone(gamma, dotGain, blocked, merged, other);
    }

    /**
     * The level (0-255) that would print on the aim as {@code level} prints here, bumps and dot
     * gain left out.
     */
    double printedLevel(double level) {
        double joined = knees(level);
        return gamma == 1 ? joined : 255 * Math.pow(joined / 255, gamma);
    }

    private double knees(double level) {
        if (level <= blocked.level()) {
            return 0;
        }
        if (level >= merged.level()) {
            return 255;
        }
        double shadowEnd = blocked.level() + blocked.width();
        if (level < shadowEnd) {
            return shadowEnd * blocked.rise(level - blocked.level(), shadowEnd);
        }
        double lightEnd = merged.level() - merged.width();
        if (level > lightEnd) {
            double total = 255 - lightEnd;
            return 255 - total * merged.rise(merged.level() - level, total);
        }
        return level;
    }

    /** Relative luminance (0-1) after dot gain. */
    double gained(double luminance) {
        double coverage = 1 - luminance;
        return 1 - coverage - 4 * dotGain * coverage * (1 - coverage);
    }

    /** L* that the bumps add at a level; none at black and paper. */
    double bumped(double level) {
        double sum = 0;
        for (Bump bump : bumps) {
            double z = (level - bump.level()) / bump.width();
            sum += bump.deltaL() * Math.exp(-z * z / 2);
        }
        double ends = Math.min(1, Math.min(level, 255 - level) / 8);
        return sum * Math.max(0, ends);
    }
}
