package org.printassay.compare;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * One number that an evaluation gives and that prints can be compared by. The key is where it
 * stands in the evaluation file, or says how it follows from what stands there.
 */
public enum Figure {
    WHITE_L("white.lab.l", Topic.WHITE, "Paper white, L*", "L*", 1),
    WHITE_A("white.lab.a", Topic.WHITE, "Paper white, a*", "a*", 1),
    WHITE_B("white.lab.b", Topic.WHITE, "Paper white, b*", "b*", 1),
    BLACK_L("black.lab.l", Topic.BLACK, "Deepest black, L*", "L*", 1),
    BLACK_RELATIVE_L("black.labRelative.l", Topic.BLACK, "Black against paper, L*", "L*", 1),
    BLACK_DENSITY("black.density", Topic.BLACK, "Dmax", "", 2),
    TONE_RMS("tone.rmsDeltaL", Topic.TONE, "Tone off its aim, RMS dL*", "L*", 1),
    TONE_SHADOWS("tone.meanDeltaLShadows", Topic.TONE, "Shadows, mean dL*", "L*", 1),
    TONE_MIDTONES("tone.meanDeltaLMidtones", Topic.TONE, "Mid-tones, mean dL*", "L*", 1),
    TONE_HIGHLIGHTS("tone.meanDeltaLHighlights", Topic.TONE, "Highlights, mean dL*", "L*", 1),
    SHADOWS_VISIBLE(
            "shadows.firstVisible", Topic.SHADOWS, "First level apart from black", "levels", 0),
    SHADOWS_STEPS("shadows.visibleSteps", Topic.SHADOWS, "Visible steps in shadows", "steps", 0),
    HIGHLIGHTS_VISIBLE(
            "highlights.lastVisible", Topic.HIGHLIGHTS, "Last level apart from paper", "levels", 0),
    HIGHLIGHTS_STEPS(
            "highlights.visibleSteps", Topic.HIGHLIGHTS, "Visible steps in highlights", "steps", 0),
    GREYS_CHROMA("neutrality.meanDeltaCh", Topic.NEUTRALITY, "Greys off neutral, dCh", "dCh", 1),
    CAST_A("neutrality.cast.a", Topic.NEUTRALITY, "Cast of greys, a*", "a*", 1),
    CAST_B("neutrality.cast.b", Topic.NEUTRALITY, "Cast of greys, b*", "b*", 1),
    CAST_SHADOWS_A("neutrality.shadows.a", Topic.NEUTRALITY, "Cast of shadows, a*", "a*", 1),
    CAST_SHADOWS_B("neutrality.shadows.b", Topic.NEUTRALITY, "Cast of shadows, b*", "b*", 1),
    CAST_HIGHLIGHTS_A(
            "neutrality.highlights.a", Topic.NEUTRALITY, "Cast of highlights, a*", "a*", 1),
    CAST_HIGHLIGHTS_B(
            "neutrality.highlights.b", Topic.NEUTRALITY, "Cast of highlights, b*", "b*", 1),
    COLOURS_MEAN("colours.meanDeltaE00", Topic.COLOURS, "Colours off their aim, dE00", "dE00", 1),
    GAMUT_VOLUME("colours.gamutVolume", Topic.COLOURS, "Gamut volume", "", -3),
    CHROMA_RED("colours.hues.red.chroma", Topic.COLOURS, "Chroma of full red", "C*", 0),
    CHROMA_YELLOW("colours.hues.yellow.chroma", Topic.COLOURS, "Chroma of full yellow", "C*", 0),
    CHROMA_GREEN("colours.hues.green.chroma", Topic.COLOURS, "Chroma of full green", "C*", 0),
    CHROMA_CYAN("colours.hues.cyan.chroma", Topic.COLOURS, "Chroma of full cyan", "C*", 0),
    CHROMA_BLUE("colours.hues.blue.chroma", Topic.COLOURS, "Chroma of full blue", "C*", 0),
    CHROMA_MAGENTA("colours.hues.magenta.chroma", Topic.COLOURS, "Chroma of full magenta", "C*", 0),
    SKIN_MEAN("colours.skin.meanDeltaE00", Topic.SKIN, "Skin tones off their aim, dE00", "dE00", 1),
    SKIN_LIGHTNESS("colours.skin.meanDeltaL", Topic.SKIN, "Skin tones, mean dL*", "L*", 1),
    EVENNESS_GRADIENT(
            "evenness.gradient.overSheet",
            Topic.EVENNESS,
            "Unevenness over the sheet, L*",
            "L*",
            1),
    GRAIN_SHADOWS("grain.shadows.graininess", Topic.GRAIN, "Grain in shadows", "L*", 2),
    GRAIN_MIDTONES("grain.midtones.graininess", Topic.GRAIN, "Grain in mid-tones", "L*", 2),
    GRAIN_HIGHLIGHTS("grain.highlights.graininess", Topic.GRAIN, "Grain in highlights", "L*", 2),
    MOTTLE_MIDTONES("grain.midtones.mottle", Topic.GRAIN, "Mottle in mid-tones", "L*", 2),
    SHARPNESS_ACROSS(
            "sharpness.acrossHalfPerMm",
            Topic.SHARPNESS,
            "Sharpness across, half contrast",
            "per mm",
            1),
    SHARPNESS_DOWN(
            "sharpness.downHalfPerMm",
            Topic.SHARPNESS,
            "Sharpness down, half contrast",
            "per mm",
            1),
    LINES("lines", Topic.LINES, "Lines", "", 0),
    BANDS("bands", Topic.LINES, "Visible bands", "", 0);

    private final String key;
    private final Topic topic;
    private final String label;
    private final String unit;
    private final int decimals;

    Figure(String key, Topic topic, String label, String unit, int decimals) {
        this.key = key;
        this.topic = topic;
        this.label = label;
        this.unit = unit;
        this.decimals = decimals;
    }

    /** What figures tell about, in the order of reports. */
    public enum Topic {
        WHITE("Paper white"),
        BLACK("Black"),
        TONE("Tone"),
        SHADOWS("Shadows"),
        HIGHLIGHTS("Highlights"),
        NEUTRALITY("Greys"),
        COLOURS("Colours"),
        SKIN("Skin-like tones"),
        EVENNESS("Evenness"),
        GRAIN("Grain"),
        SHARPNESS("Sharpness"),
        LINES("Lines and bands");

        private final String label;

        Topic(String label) {
            this.label = label;
        }

        /** Heading in reports. */
        public String label() {
            return label;
        }
    }

    /** Name in files and on the command line; never changes. */
    public String key() {
        return key;
    }

    /** What it tells about. */
    public Topic topic() {
        return topic;
    }

    /** In a few words, for tables. */
    public String label() {
        return label;
    }

    /** Unit for readers; empty where there is none. */
    public String unit() {
        return unit;
    }

    /** The same without its unit, for sentences. */
    public String shortLabel() {
        int comma = label.indexOf(',');
        String what = comma < 0 ? label : label.substring(0, comma);
        return what.equals("Dmax")
                ? what
                : what.substring(0, 1).toLowerCase(Locale.ROOT) + what.substring(1);
    }

    /** Decimals worth showing; negative where the last digits before the point say nothing. */
    public int decimals() {
        return decimals;
    }

    /** Decimals worth showing of a value: means of whole numbers are no whole numbers. */
    public int decimals(double value) {
        return whole() && value != Math.rint(value) ? decimals + 1 : decimals;
    }

    /**
     * A smaller difference is not counted when papers are ranked, even where it is measurable: what
     * is just visible side by side (common practice, no source).
     */
    public double visible() {
        return switch (this) {
            case BLACK_DENSITY -> 0.05;
            case SHADOWS_VISIBLE, HIGHLIGHTS_VISIBLE -> 2;
            case SHADOWS_STEPS, HIGHLIGHTS_STEPS -> 3;
            case GAMUT_VOLUME -> 30_000;
            case CHROMA_RED,
                    CHROMA_YELLOW,
                    CHROMA_GREEN,
                    CHROMA_CYAN,
                    CHROMA_BLUE,
                    CHROMA_MAGENTA ->
                    3;
            case GRAIN_SHADOWS, GRAIN_MIDTONES, GRAIN_HIGHLIGHTS, MOTTLE_MIDTONES -> 0.1;
            case SHARPNESS_ACROSS, SHARPNESS_DOWN -> 0.5;
            default -> 1;
        };
    }

    private static final Map<String, Figure> BY_KEY =
            Arrays.stream(values()).collect(Collectors.toMap(Figure::key, Function.identity()));

    /** Whether it is counted: levels, steps, lines. */
    public boolean whole() {
        return switch (this) {
            case SHADOWS_VISIBLE,
                    SHADOWS_STEPS,
                    HIGHLIGHTS_VISIBLE,
                    HIGHLIGHTS_STEPS,
                    LINES,
                    BANDS ->
                    true;
            default -> false;
        };
    }

    /** What evaluation files round it to, in its unit. */
    public double step() {
        return whole() || this == GAMUT_VOLUME ? 1 : 0.001;
    }

    /** The figure of a {@link #key}. */
    public static Optional<Figure> ofKey(String key) {
        return Optional.ofNullable(BY_KEY.get(key));
    }
}
