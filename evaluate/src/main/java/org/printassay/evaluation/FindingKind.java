package org.printassay.evaluation;

/**
 * Every kind of finding that is ranked by weight: what it weighs at least, how much more by its
 * size, and how much more at most. The rule behind the numbers stands at {@link Findings}.
 */
enum FindingKind {
    /**
     * Printed at another size than 100 %: nothing else can be compared before that is put right.
     */
    PRINT_SIZE(100),
    /** Nothing can be said of an end of the scale: it hides what a picture loses. */
    END_UNKNOWN(30),
    /** Levels merge at an end of the scale; size: L* of the aim that merges. */
    END_LOST(4, 1),
    /** Tone runs backwards: every gradient shows a step. */
    TONE_BACKWARDS(12),
    /** A grey prints darker than level 0: shadows turn over. */
    DARKER_THAN_BLACK(11),
    /** Greys jump: an edge in every sky; size: L* of the jump. */
    TONE_JUMP(6, 1),
    /** Greys lean one way in shadows and another in highlights: no filter mends it. */
    CROSSOVER(5),
    /** Greys turn to another hue at one level; size: distance in a*, b*. */
    HUE_TURN(4, 1),
    /** Lines of the print, through every picture; size: contrast times width, millimetres. */
    LINES(3.5, 200, 6),
    /** The black is grey: dark pictures look dull. */
    BLACK_GREY(3.5),
    /**
     * More colour in the file gives no more colour on paper; size: percent of the way that is lost.
     */
    COLOUR_FULL(3, 0.05),
    /** Tone cannot be told. */
    TONE_UNKNOWN(3),
    /** Whether greys lean cannot be told. */
    GREYS_UNKNOWN(3),
    /** White or black is clipped in the scan. */
    RANGE_CLIPPED(3),
    /** Bands of the print; size: times what an eye just sees. */
    BANDS(2.5, 1.0 / 3, 3.5),
    /** Tone departs from its aim; size: RMS L*. */
    TONE_OFF(2, 2),
    /** Skin-like tones are off; size: mean dE00. */
    SKIN(2, 1),
    /** The sheet is uneven; size: L* from side to side. */
    UNEVEN(2, 1),
    /** A smooth gradient breaks into steps. */
    GRADIENT_STEP(2),
    /** Lines that may be the scanner's: half of what they would weigh. */
    LINES_UNSURE(1.75, 100, 3),
    /** Bands that may be the scanner's: half of what they would weigh. */
    BANDS_UNSURE(1.25, 1.0 / 6, 1.75),
    /** Greys lean; size: distance in a*, b*. */
    LEAN(1, 1.5),
    /**
     * Greys lean in some tones, though not in the mean; size: distance in a*, b*, of which a third
     * of all tones has its part.
     */
    LEAN_OF_TONES(1, 0.5),
    /** No colours at all: black and white, wanted or not. */
    NO_COLOUR(3),
    /** Full colours are dull, which few pictures hold; size: chroma that is missing. */
    DULL(1, 0.05),
    /** Grain is seen; size: how far beyond what is just seen, as a share. */
    GRAIN(1, 1, 2),
    /** Greys are toned, as the route says they should be. */
    TONED(1),
    /** The black is deep. */
    BLACK_DEEP(0.9),
    /** How deep the black is cannot be told. */
    BLACK_UNKNOWN(0.9),
    /** Tone follows its aim. */
    TONE_FOLLOWS(0.8),
    /** Greys are neutral, or lean by less than is known. */
    NEUTRAL(0.7),
    /** An end of the scale is held. */
    END_HELD(0.6),
    /** No lines and no visible bands. */
    NO_LINES(0.45),
    /** White and black cannot be told without a profile of the scanner. */
    RANGE_UNKNOWN(0.4);

    private final double least;
    private final double perSize;
    private final double mostMore;

    FindingKind(double least) {
        this(least, 0);
    }

    FindingKind(double least, double perSize) {
        this(least, perSize, Double.POSITIVE_INFINITY);
    }

    FindingKind(double least, double perSize, double mostMore) {
        this.least = least;
        this.perSize = perSize;
        this.mostMore = mostMore;
    }

    /** What one of such a size weighs. */
    double weight(double size) {
        return least + Math.min(mostMore, perSize * size);
    }

    /** A finding of this kind whose size does not matter. */
    Weighed weighed(String topic, String text, String sure, String advice) {
        return weighed(0, topic, text, sure, advice);
    }

    /** A finding of this kind. */
    Weighed weighed(double size, String topic, String text, String sure, String advice) {
        return new Weighed(this, weight(size), new Finding(topic, text, sure, advice));
    }
}
