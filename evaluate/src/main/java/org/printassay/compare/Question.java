package org.printassay.compare;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What papers can be ranked for. Figures are asked one after the other: the next only decides
 * between those that the one before leaves together. Which figures, and in which order, is common
 * practice, no source; it is shown wherever a ranking is.
 */
public enum Question {
    /** Night, low key, deep shade. */
    DARK_PICTURES(
            "dark-pictures",
            "For dark pictures",
            List.of(
                    Criterion.more(Figure.SHADOWS_STEPS),
                    Criterion.less(Figure.BLACK_RELATIVE_L),
                    Criterion.less(Figure.SHADOWS_VISIBLE))),
    /** Grey pictures printed without a toned route. */
    BLACK_AND_WHITE(
            "black-and-white",
            "For black and white",
            List.of(
                    Criterion.less(Figure.GREYS_CHROMA),
                    Criterion.less(Figure.BLACK_RELATIVE_L),
                    Criterion.less(Figure.TONE_RMS))),
    /** Portraits. */
    SKIN(
            "skin",
            "For skin",
            List.of(
                    Criterion.less(Figure.SKIN_MEAN),
                    Criterion.less(Figure.GREYS_CHROMA),
                    Criterion.less(Figure.GRAIN_MIDTONES))),
    /** Strong colours. */
    COLOUR(
            "colour",
            "For colour",
            List.of(
                    Criterion.more(Figure.GAMUT_VOLUME),
                    Criterion.less(Figure.COLOURS_MEAN),
                    Criterion.less(Figure.BLACK_RELATIVE_L)));

    private final String key;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<Criterion> criteria;

    Question(String key, String label, List<Criterion> criteria) {
        this.key = key;
        this.label = label;
        this.criteria = criteria;
    }

    /**
     * One figure that decides.
     *
     * @param more whether more of it is wanted
     */
    public record Criterion(Figure figure, boolean more) {
        static Criterion more(Figure figure) {
            return new Criterion(figure, true);
        }

        static Criterion less(Figure figure) {
            return new Criterion(figure, false);
        }

        /** Which way a difference, second minus first, decides: positive for the second. */
        int favours(Judged judged) {
            if (!judged.counts()) {
                return 0;
            }
            int sign = judged.difference().value() > 0 ? 1 : -1;
            return more ? sign : -sign;
        }
    }

    /** Name in files and on the command line. */
    public String key() {
        return key;
    }

    /** Heading. */
    public String label() {
        return label;
    }

    /** What decides, first things first. */
    public List<Criterion> criteria() {
        return criteria;
    }

    /** The question of a {@link #key}. */
    public static Optional<Question> ofKey(String key) {
        String small = key.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(q -> q.key.equals(small)).findFirst();
    }
}
