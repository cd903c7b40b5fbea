package org.printassay.compare;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * How a difference in a figure is said in words.
 *
 * @param noun what differs
 * @param low how the side with the smaller figure is, between two
 * @param lowest the same among more
 * @param high how the side with the larger figure is
 * @param highest the same among more
 * @param advice what it means for the picture; may be empty
 */
record Phrase(String noun, String low, String lowest, String high, String highest, String advice) {
    private static final Map<Figure, Phrase> ALL = all();

    /** The words for a figure; empty for figures that are only tabulated. */
    static Optional<Phrase> of(Figure figure) {
        return Optional.ofNullable(ALL.get(figure));
    }

    private static Map<Figure, Phrase> all() {
        Map<Figure, Phrase> all = new EnumMap<>(Figure.class);
        all.put(
                Figure.SHADOWS_STEPS,
                new Phrase(
                        "Visible steps in the shadows",
                        "fewer",
                        "fewest",
                        "more",
                        "most",
                        "Where steps are fewer, lift shadow detail in the file, or keep it out of"
                                + " the darkest levels."));
        all.put(
                Figure.SHADOWS_VISIBLE,
                new Phrase(
                        "The first level apart from black",
                        "lower",
                        "lowest",
                        "higher",
                        "highest",
                        ""));
        all.put(
                Figure.BLACK_L,
                new Phrase("Deepest black", "deeper", "deepest", "duller", "dullest", ""));
        all.put(
                Figure.BLACK_RELATIVE_L,
                new Phrase("Black against paper", "deeper", "deepest", "duller", "dullest", ""));
        all.put(
                Figure.HIGHLIGHTS_STEPS,
                new Phrase(
                        "Visible steps in the highlights",
                        "fewer",
                        "fewest",
                        "more",
                        "most",
                        "Where steps are fewer, hold highlights below the last levels."));
        all.put(
                Figure.HIGHLIGHTS_VISIBLE,
                new Phrase(
                        "The last level apart from paper",
                        "lower",
                        "lowest",
                        "higher",
                        "highest",
                        ""));
        all.put(
                Figure.TONE_MIDTONES,
                new Phrase(
                        "Mid-tones against their aim",
                        "darker",
                        "darkest",
                        "lighter",
                        "lightest",
                        "One file does not look alike on both: match brightness before judging"
                                + " colour."));
        all.put(
                Figure.TONE_SHADOWS,
                new Phrase(
                        "Shadows against their aim",
                        "darker",
                        "darkest",
                        "lighter",
                        "lightest",
                        ""));
        all.put(
                Figure.TONE_HIGHLIGHTS,
                new Phrase(
                        "Highlights against their aim",
                        "darker",
                        "darkest",
                        "lighter",
                        "lightest",
                        ""));
        all.put(
                Figure.GREYS_CHROMA,
                new Phrase("Greys off neutral", "nearer", "nearest", "further", "furthest", ""));
        all.put(
                Figure.CAST_B,
                new Phrase("Cast of greys", "bluer", "bluest", "yellower", "yellowest", ""));
        all.put(
                Figure.CAST_A,
                new Phrase("Cast of greys", "greener", "greenest", "redder", "reddest", ""));
        all.put(
                Figure.WHITE_L,
                new Phrase("Paper white", "darker", "darkest", "lighter", "lightest", ""));
        all.put(
                Figure.WHITE_B,
                new Phrase(
                        "Tint of the paper",
                        "cooler",
                        "coolest",
                        "warmer",
                        "warmest",
                        "The eye takes each paper for white, but not beside the other."));
        all.put(
                Figure.GAMUT_VOLUME,
                new Phrase("Gamut", "smaller", "smallest", "larger", "largest", ""));
        all.put(
                Figure.COLOURS_MEAN,
                new Phrase(
                        "Colours off their aim", "nearer", "nearest", "further", "furthest", ""));
        all.put(
                Figure.SKIN_MEAN,
                new Phrase(
                        "Skin-like tones off their aim",
                        "nearer",
                        "nearest",
                        "further",
                        "furthest",
                        ""));
        all.put(
                Figure.GRAIN_MIDTONES,
                new Phrase("Grain in mid-tones", "finer", "finest", "coarser", "coarsest", ""));
        all.put(
                Figure.EVENNESS_GRADIENT,
                new Phrase("Unevenness over the sheet", "less", "least", "more", "most", ""));
        all.put(
                Figure.SHARPNESS_ACROSS,
                new Phrase("Edges", "softer", "softest", "sharper", "sharpest", ""));
        return all;
    }
}
