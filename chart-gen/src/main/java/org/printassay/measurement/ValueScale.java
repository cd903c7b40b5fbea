package org.printassay.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;

/**
 * Whether reflectance or XYZ runs to 1 or to 100. Each reading is held against what it should come
 * to, the file's own CIELAB or else the code that was printed: the two scales are two decades
 * apart, prints and their codes less than one, so a table of dark patches alone tells too. Without
 * either, a lightest reading above anything a fraction can be tells percent. Mutable: readings are
 * added one by one.
 */
final class ValueScale {
    /** Paper with brightener stays below this as a fraction; paper in percent is far above. */
    static final double FRACTION_LIMIT = 1.6;

    /** Prints are hardly ever blacker than a hundredth: darker codes count as that. */
    private static final double DARKEST_PRINT = 0.01;

    /** CIELAB of the darkest things that are measured. */
    private static final double DARKEST_LAB = 0.001;

    /** Decades from what is expected; between the two nothing is decided. */
    private static final double SURELY_FRACTION = 0.7;

    private static final double SURELY_HUNDRED = 1.3;

    private final List<Double> decades = new ArrayList<>();
    private double lightest;

    /**
     * A reading.
     *
     * @param value its luminance, roughly, on the unknown scale
     * @param lab the file's own CIELAB
     * @param rgb the code that was printed
     */
    void add(double value, @Nullable Lab lab, @Nullable Rgb8 rgb) {
        lightest = Math.max(lightest, value);
        Double expected = expected(lab, rgb);
        if (expected != null && value > 0) {
            decades.add(Math.log10(value / expected));
        }
    }

    /** The middle band of a spectrum: one odd value decides nothing. */
    static double middle(double[] bands) {
        double[] sorted = bands.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }

    /** True for 100, false for 1; null where the readings do not tell. */
    @Nullable Boolean hundred() {
        Boolean compared = compared();
        return compared != null ? compared : lightest > FRACTION_LIMIT ? Boolean.TRUE : null;
    }

    /** The same by comparison alone. */
    @Nullable Boolean compared() {
        if (decades.isEmpty()) {
            return null;
        }
        double[] sorted = decades.stream().mapToDouble(d -> d).sorted().toArray();
        double middle = sorted[sorted.length / 2];
        return middle > SURELY_HUNDRED
                ? Boolean.TRUE
                : middle < SURELY_FRACTION ? Boolean.FALSE : null;
    }

    private static @Nullable Double expected(@Nullable Lab lab, @Nullable Rgb8 rgb) {
        if (lab != null) {
            return Math.max(DARKEST_LAB, Lab.luminanceFactor(Math.max(0, lab.l())));
        }
        return rgb == null
                ? null
                : Double.valueOf(
                        Math.max(DARKEST_PRINT, Lab.luminanceFactor(RgbSpace.SRGB.toLab(rgb).l())));
    }
}
