package org.printassay.colour;

import java.util.Comparator;

/**
 * Device RGB codes, 0 to 255 each, in whatever RGB encoding the context names.
 *
 * @param r red code, 0-255
 * @param g green code, 0-255
 * @param b blue code, 0-255
 */
public record Rgb8(int r, int g, int b) implements Comparable<Rgb8> {
    private static final Comparator<Rgb8> ORDER =
            Comparator.comparingInt(Rgb8::r).thenComparingInt(Rgb8::g).thenComparingInt(Rgb8::b);

    public Rgb8 {
        if (r < 0 || r > 255 || g < 0 || g > 255 || b < 0 || b > 255) {
            throw new IllegalArgumentException(
                    "RGB codes go from 0 to 255, got " + r + " " + g + " " + b);
        }
    }

    /** The neutral of a level: r = g = b. */
    public static Rgb8 grey(int level) {
        return new Rgb8(level, level, level);
    }

    /** Whether r = g = b. */
    public boolean isNeutral() {
        return r == g && g == b;
    }

    @Override
    public int compareTo(Rgb8 other) {
        return ORDER.compare(this, other);
    }
}
