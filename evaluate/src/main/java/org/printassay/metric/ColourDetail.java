package org.printassay.metric;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/**
 * Colours of a print against their aim, relative colorimetric with black point compensation onto
 * this paper, in absolute CIELAB.
 *
 * @param percentile95DeltaE00 dE00 that 95 of 100 colours of the cube's surface keep to
 * @param maxDeltaE00 the largest, and {@code maxAt} its code
 * @param hues the six primaries and secondaries that the print holds, red first
 * @param skin skin-like tones, darkest first; empty when the print has none
 * @param gamutVolume cubic CIELAB units; null when the cube's surface is incomplete
 * @param aimVolume the same of the aim: what the paper would reach if inks had no limit of their
 *     own
 * @param slices of both gamuts at rising lightness; empty when the surface is incomplete
 */
public record ColourDetail(
        double percentile95DeltaE00,
        double maxDeltaE00,
        Rgb8 maxAt,
        List<Hue> hues,
        List<SkinTone> skin,
        @Nullable Double gamutVolume,
        double aimVolume,
        List<Slice> slices) {
    /** Primaries and secondaries. */
    private static final int ALL_HUES = 6;

    /**
     * Full colours nearer to each other than this share of their aims' chroma are no colours
     * (common practice, no source): toned prints stay below 0.1, the dullest papers reach 0.4.
     */
    private static final double NO_COLOUR = 0.2;

    public ColourDetail {
        hues = List.copyOf(hues);
        skin = List.copyOf(skin);
        slices = List.copyOf(slices);
    }

    /** Whether all full colours print as one tone, as in black and white, toned or not. */
    public boolean isWithoutColour() {
        Lab mean = hues.isEmpty() ? null : Lab.mean(hues.stream().map(Hue::full).toList());
        return mean != null
                && hues.size() == ALL_HUES
                && hues.stream().allMatch(h -> apart(h.full, mean) < NO_COLOUR * h.aim.chroma());
    }

    /** How far the full colours lie from their mean, at most, in a* and b*. */
    public double spreadOfHues() {
        Lab mean = Lab.mean(hues.stream().map(Hue::full).toList());
        return hues.stream().mapToDouble(h -> apart(h.full, mean)).max().orElse(0);
    }

    private static double apart(Lab one, Lab other) {
        return Math.hypot(one.a() - other.a(), one.b() - other.b());
    }

    /**
     * A primary or secondary, from paper to the full colour.
     *
     * @param name red, yellow, green, cyan, blue or magenta, of the file's code
     * @param full measured full colour
     * @param aim its aim
     * @param deltaE00 between them
     * @param deltaChroma dC*ab, measured minus aim
     * @param deltaHue dH*ab, signed: positive turns anticlockwise in the a*b* plane
     * @param mostChroma largest chroma on the way from paper to the full colour
     * @param noMoreFromPercent share of the full colour, percent, beyond which no further step
     *     gives more colour, counted from paper, though the aim still rises; null when it does to
     *     the end, or when the steps between were not printed
     */
    public record Hue(
            String name,
            Lab full,
            Lab aim,
            double deltaE00,
            double deltaChroma,
            double deltaHue,
            double mostChroma,
            @Nullable Integer noMoreFromPercent) {}

    /**
     * A skin-like tone.
     *
     * @param rgb its code
     * @param deltaL lightness, measured minus aim
     * @param deltaChroma dC*ab
     * @param hueShiftDegrees hue angle, measured minus aim; positive is towards yellow
     */
    public record SkinTone(
            Rgb8 rgb,
            Lab measured,
            Lab aim,
            double deltaE00,
            double deltaL,
            double deltaChroma,
            double hueShiftDegrees,
            String words) {}

    /** Both gamuts at one lightness. */
    public record Slice(
            double lightness, List<List<GamutMesh.Place>> print, List<List<GamutMesh.Place>> aim) {}
}
