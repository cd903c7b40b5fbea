package org.printassay.reading;

/** Something that makes one reading less sure. */
public enum ReadingFlag {
    /** Dust, hairs or scratches covered a good part of the patch. */
    DUSTY("dusty"),
    /** Codes at an end of the scanner's range. */
    CLIPPED("clipped"),
    /** The patch is not flat: its parts differ by more than noise. */
    UNEVEN("uneven"),
    /** It differs from patches of the same code by more than their spread explains. */
    UNLIKE_TWINS("unlike-twins"),
    /** All around it departs from its twins in the same way. */
    DISTURBED("disturbed"),
    /** A colour without twins, far from what the codes around it lead one to expect. */
    OUT_OF_LINE("out-of-line"),
    /** Lossy coding keeps this colour in steps larger than 1 dE00. */
    COARSE("coarse"),
    /** Too near the edge of the scan: what lies beyond is unknown. */
    EDGE("edge");

    private final String key;

    ReadingFlag(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }
}
