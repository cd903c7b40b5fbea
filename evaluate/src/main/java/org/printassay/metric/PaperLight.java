package org.printassay.metric;

/** The light that the colour of a paper is known for, which decides what its brightener does. */
public enum PaperLight {
    /** Daylight, as D50 has it, ultraviolet included. */
    DAYLIGHT("under D50"),

    /** D50 without ultraviolet, which shows no brightener: M2 and M3 of ISO 13655 (from memory). */
    NO_ULTRAVIOLET("under D50 without ultraviolet"),

    /**
     * The scanner's lamp, taken for daylight as on the paper that a calibration was made on: on
     * another paper the brightener is another.
     */
    OTHER_CALIBRATION("as for the calibration's paper"),

    /** The scanner's lamp, which excites brighteners less or more than daylight. */
    SCANNER("in the scanner's light"),

    /** None: a grey scan tells lightness alone. */
    NONE("");

    private final String words;

    PaperLight(String words) {
        this.words = words;
    }

    /** What stands behind a colour, as in "neutral under D50". */
    String words() {
        return words;
    }
}
