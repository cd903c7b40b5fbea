package org.printassay.reading;

import java.util.Set;

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
    /** All patches of like tone around it depart from their twins in the same way. */
    DISTURBED("disturbed"),
    /** Light from outside lay on it, or may have, and was taken off as well as it is known. */
    LIT("lit"),
    /** Without twins on its sheet, and far from what codes near its own lead one to expect. */
    OUT_OF_LINE("out-of-line"),
    /**
     * Lossy coding, or gaps that an edit left, keep this colour in steps: two standard deviations
     * are more than 0.8 dE00.
     */
    COARSE("coarse"),
    /** Patches of one code, of tones like its own, lie far apart over the whole sheet. */
    SCATTERED("scattered"),
    /** What moves readings together, stray light above all, may move it by more than 2 dE00. */
    UNSURE("unsure"),
    /** Too near the edge of the scan: what lies beyond is unknown. */
    EDGE("edge");

    /**
     * What may make a reading wrong by more than its error says, so that it is left out where there
     * are others. What a scanner cuts off, or coding keeps in steps, its twins have in common, as
     * what makes a reading unsure; and where all are scattered there are no others.
     */
    public static final Set<ReadingFlag> DOUBTFUL =
            Set.of(DUSTY, UNEVEN, UNLIKE_TWINS, DISTURBED, LIT, OUT_OF_LINE, EDGE);

    private final String key;

    ReadingFlag(String key) {
        this.key = key;
    }

    /** Name in files. */
    public String key() {
        return key;
    }
}
