package org.printassay.check;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Figure;

/** One number that a check looks at, with its name in tolerance sets. */
public enum Quantity {
    PAPER_L("paperL", Figure.WHITE_L, "Paper white, L*", "L*"),
    PAPER_A("paperA", Figure.WHITE_A, "Paper white, a*", "a*"),
    PAPER_B("paperB", Figure.WHITE_B, "Paper white, b*", "b*"),
    BLACK_L("blackL", Figure.BLACK_L, "Deepest black, L*", "L*"),
    BLACK_RELATIVE_L(
            "blackRelativeL", Figure.BLACK_RELATIVE_L, "Deepest black against paper, L*", "L*"),
    TONE_SHADOWS("toneShadows", Figure.TONE_SHADOWS, "Tone of shadows, mean dL*", "L*"),
    TONE_MIDTONES("toneMidtones", Figure.TONE_MIDTONES, "Tone of mid-tones, mean dL*", "L*"),
    TONE_HIGHLIGHTS("toneHighlights", Figure.TONE_HIGHLIGHTS, "Tone of highlights, mean dL*", "L*"),
    TONE_BEND("toneBend", null, "Tone curve, largest local change", "L*"),
    SHADOW_SHIFT("shadowShift", null, "Shadow wedge as a whole", "levels"),
    HIGHLIGHT_SHIFT("highlightShift", null, "Highlight wedge as a whole", "levels"),
    SHADOW_DEPTH("shadowDepth", null, "Levels 1 to 24 from black, mean dL*", "L*"),
    HIGHLIGHT_DEPTH("highlightDepth", null, "Levels 231 to 254 from paper, mean dL*", "L*"),
    CAST_A("castA", Figure.CAST_A, "Cast of greys, a*", "a*"),
    CAST_B("castB", Figure.CAST_B, "Cast of greys, b*", "b*"),
    CAST_SHADOWS_A("castShadowsA", Figure.CAST_SHADOWS_A, "Cast of shadows, a*", "a*"),
    CAST_SHADOWS_B("castShadowsB", Figure.CAST_SHADOWS_B, "Cast of shadows, b*", "b*"),
    CAST_HIGHLIGHTS_A("castHighlightsA", Figure.CAST_HIGHLIGHTS_A, "Cast of highlights, a*", "a*"),
    CAST_HIGHLIGHTS_B("castHighlightsB", Figure.CAST_HIGHLIGHTS_B, "Cast of highlights, b*", "b*"),
    MEAN_DRIFT("meanDrift", null, "All patches, mean dE00 less noise", "dE00"),
    GAMUT_VOLUME("gamutVolume", Figure.GAMUT_VOLUME, "Gamut volume", "cubic units"),
    GRADIENT("gradient", Figure.EVENNESS_GRADIENT, "Lightness over the sheet", "L*"),
    GRAIN_SHADOWS("grainShadows", Figure.GRAIN_SHADOWS, "Grain in shadows", "L*"),
    GRAIN_MIDTONES("grainMidtones", Figure.GRAIN_MIDTONES, "Grain in mid-tones", "L*"),
    GRAIN_HIGHLIGHTS("grainHighlights", Figure.GRAIN_HIGHLIGHTS, "Grain in highlights", "L*");

    private final String key;
    private final @Nullable Figure figure;
    private final String label;
    private final String unit;

    Quantity(String key, @Nullable Figure figure, String label, String unit) {
        this.key = key;
        this.figure = figure;
        this.label = label;
        this.unit = unit;
    }

    /** Name in tolerance sets and results; never changes. */
    public String key() {
        return key;
    }

    /** The figure that it is the change of; empty for what is told by two prints together. */
    public Optional<Figure> figure() {
        return Optional.ofNullable(figure);
    }

    /** In a few words, for tables. */
    public String label() {
        return label;
    }

    /** Unit for readers. */
    public String unit() {
        return unit;
    }

    /** Decimals worth showing. */
    public int decimals() {
        return this == GAMUT_VOLUME ? 0 : this == SHADOW_SHIFT || this == HIGHLIGHT_SHIFT ? 1 : 2;
    }

    /** The quantity of a {@link #key}. */
    public static Optional<Quantity> ofKey(String key) {
        return Arrays.stream(values()).filter(quantity -> quantity.key.equals(key)).findFirst();
    }
}
