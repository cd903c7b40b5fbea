package org.printassay.metric;

/** Leans of greys in words. Names of hue sectors: common practice, no source. */
final class HueWords {
    private static final String[] SECTORS = {
        "pink", "orange", "yellow", "yellow-green", "green", "blue-green", "blue", "violet"
    };

    private HueWords() {}

    /** Name of the hue of a lean. */
    static String hue(double a, double b) {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        int sector = (int) Math.floorMod(Math.round(degrees / 45), 8L);
        return SECTORS[sector];
    }

    /** Warm, cool, or neither. */
    static String temperature(double a, double b) {
        double lean = b + 0.35 * a;
        if (Math.abs(lean) < 0.7 * Math.hypot(a, b)) {
            return "";
        }
        return lean > 0 ? "warm" : "cool";
    }

    /** A lean in words: "no cast", "slightly warm, towards yellow", "blue cast". */
    static String words(double a, double b, boolean significant) {
        double size = Math.hypot(a, b);
        if (!significant || size < 0.5) {
            return "no cast";
        }
        String strength = size < 1 ? "very slightly " : size < 2 ? "slightly " : "";
        String temperature = temperature(a, b);
        return temperature.isEmpty()
                ? strength + hue(a, b)
                : strength + temperature + ", towards " + hue(a, b);
    }
}
