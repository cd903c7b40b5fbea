package org.printassay.metric;

/**
 * Leans of greys in words. Boundaries of hue names lie midway between the ten principal hues of the
 * Munsell system, hue angles in CIELAB of its renotation (S. M. Newhall, D. Nickerson, D. B. Judd,
 * "Final Report of the O.S.A. Subcommittee on the Spacing of the Munsell Colors", Journal of the
 * Optical Society of America 33, 1943); the angles are from memory, good to some five degrees.
 */
final class HueWords {
    /** Munsell 5R, 5YR, 5Y, 5GY, 5G, 5BG, 5B, 5PB, 5P, 5RP at middle values, degrees. */
    private static final double[] ANGLES = {26, 60, 90, 119, 162, 197, 236, 277, 316, 354};

    private static final String[] NAMES = {
        "red",
        "orange",
        "yellow",
        "yellow-green",
        "green",
        "blue-green",
        "blue",
        "blue",
        "violet",
        "pink"
    };

    private HueWords() {}

    /** Name of the hue of a lean. */
    static String hue(double a, double b) {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        int nearest = 0;
        for (int i = 1; i < ANGLES.length; i++) {
            if (apart(degrees, ANGLES[i]) < apart(degrees, ANGLES[nearest])) {
                nearest = i;
            }
        }
        return NAMES[nearest];
    }

    private static double apart(double one, double two) {
        double turn = one - two;
        return Math.abs(turn - 360 * Math.rint(turn / 360));
    }

    /** Warm, cool, or neither. */
    static String temperature(double a, double b) {
        double lean = b + 0.35 * a;
        if (Math.abs(lean) < 0.7 * Math.hypot(a, b)) {
            return "";
        }
        return lean > 0 ? "warm" : "cool";
    }

    /** A lean in words: "no cast", "no sure cast", "slightly warm, towards yellow", "blue cast". */
    static String words(double a, double b, boolean significant) {
        double size = Math.hypot(a, b);
        if (size < 0.5) {
            return "no cast";
        }
        if (!significant) {
            return "no sure cast";
        }
        String strength = size < 1 ? "very slightly " : size < 2 ? "slightly " : "";
        String temperature = temperature(a, b);
        return temperature.isEmpty()
                ? strength + hue(a, b)
                : strength + temperature + ", towards " + hue(a, b);
    }
}
