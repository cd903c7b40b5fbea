package org.printassay.demo.flatbed;

/**
 * Dirt on the glass, scattered over the frame.
 *
 * @param dustMarks number of specks, 0.1 to 0.5 mm across
 * @param hairs number of hairs, 4 to 15 mm long
 */
public record Dirt(int dustMarks, int hairs) {
    /** A clean glass. */
    public static final Dirt NONE = new Dirt(0, 0);

    public Dirt {
        if (dustMarks < 0 || dustMarks > 10_000 || hairs < 0 || hairs > 1000) {
            throw new IllegalArgumentException("dirt: 0 to 10 000 specks, 0 to 1000 hairs");
        }
    }
}
