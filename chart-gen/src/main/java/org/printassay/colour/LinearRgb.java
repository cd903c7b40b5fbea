package org.printassay.colour;

/**
 * Linear device light of a scanner, 0 to 1 each; a grey scan has all three equal.
 *
 * @param r red channel
 * @param g green channel
 * @param b blue channel
 */
public record LinearRgb(double r, double g, double b) {
    /** Channel 0, 1 or 2. */
    public double channel(int index) {
        return switch (index) {
            case 0 -> r;
            case 1 -> g;
            case 2 -> b;
            default -> throw new IllegalArgumentException("channel " + index);
        };
    }
}
