package org.printassay.colour.icc;

/** Rendering intents (ISO 15076-1, 6.2 and 7.2.15). */
public enum Intent {
    /** Pleasing rather than exact: the profile's own idea of fitting everything in. */
    PERCEPTUAL(0, "perceptual"),
    /** White of one medium lands on white of the other; colours both can show stay as they are. */
    RELATIVE(1, "relative colorimetric"),
    /** Vividness before likeness. */
    SATURATION(2, "saturation"),
    /** As relative, but the white of the one medium is imitated on the other. */
    ABSOLUTE(1, "absolute colorimetric");

    private final int table;
    private final String words;

    Intent(int table, String words) {
        this.table = table;
        this.words = words;
    }

    /** Number in the names of tags: A2B0, A2B1, A2B2. Absolute uses the relative one. */
    int table() {
        return table;
    }

    /** Name in running text, lower case. */
    public String words() {
        return words;
    }

    /** Whether version 4 lets the profile re-render towards a reference medium. */
    boolean rerenders() {
        return this == PERCEPTUAL || this == SATURATION;
    }
}
