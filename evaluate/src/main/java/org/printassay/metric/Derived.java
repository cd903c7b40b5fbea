package org.printassay.metric;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * What follows from paper white and black.
 *
 * @param contrastStops range from black to paper as a camera counts it: log2 of the ratio of
 *     luminance factors
 * @param contrastUncertainty 95 % half-width of it, from those of both L*
 * @param contrastDeltaL the same range in L*
 * @param stopsWithFlare what is left of it where 1 % of the light that falls on the print is
 *     reflected by its surface into the eye (common practice, no source)
 * @param paperWords colour of the paper in words, no more than its uncertainty allows, and the
 *     light that it is known for
 * @param paperDeltaCh distance of the paper from neutral, a*b* plane; NaN where it is not known
 */
public record Derived(
        double contrastStops,
        double contrastUncertainty,
        double contrastDeltaL,
        double stopsWithFlare,
        String paperWords,
        double paperDeltaCh) {
    /** Light that a surface sends into the eye without having seen the ink. */
    public static final double FLARE = 0.01;

    private static final double DARKEST = 1e-5;
    private static final String GREY = "not known: the scan is grey";

    /**
     * Nothing where absolute colours are not known.
     *
     * @param light that the paper's colour is known for
     */
    public static @Nullable Derived of(
            @Nullable Extreme white, @Nullable Extreme black, PaperLight light) {
        if (white == null || black == null) {
            return null;
        }
        Lab paper = white.lab();
        Lab ink = black.lab();
        if (paper == null || ink == null || paper.l() <= ink.l()) {
            return null;
        }
        double top = Lab.luminanceFactor(paper.l());
        double bottom = Math.max(DARKEST, Lab.luminanceFactor(ink.l()));
        boolean grey = light == PaperLight.NONE;
        return new Derived(
                stops(top, bottom),
                Math.hypot(
                        halfStops(paper.l(), white.uncertainty().l()),
                        halfStops(ink.l(), black.uncertainty().l())),
                paper.l() - ink.l(),
                stops(top + FLARE, bottom + FLARE),
                grey ? GREY : words(paper, white.uncertainty(), light.words()),
                grey ? Double.NaN : paper.chroma());
    }

    private static double stops(double top, double bottom) {
        return Math.log(top / bottom) / Math.log(2);
    }

    /** Half of what an L* and its error to either side span, in stops. */
    private static double halfStops(double l, double error) {
        double up = Math.max(DARKEST, Lab.luminanceFactor(l + error));
        double down = Math.max(DARKEST, Lab.luminanceFactor(l - error));
        return stops(up, down) / 2;
    }

    private static String words(Lab paper, Lab uncertainty, String light) {
        double chroma = paper.chroma();
        PaperTint tint = PaperTint.of(paper, uncertainty);
        if (tint == PaperTint.NOT_TOLD) {
            return String.format(
                    Locale.ROOT,
                    "neutral or tinted, which cannot be told: %.1f towards %s, \u00b1 %.1f",
                    chroma,
                    HueWords.hue(paper.a(), paper.b()),
                    Math.max(uncertainty.a(), uncertainty.b()));
        }
        if (tint == PaperTint.NEUTRAL) {
            return "neutral " + light;
        }
        String temperature = HueWords.temperature(paper.a(), paper.b());
        return String.format(
                Locale.ROOT,
                "%s%s %s, %.1f towards %s",
                tint.strength(),
                temperature.isEmpty() ? "tinted" : temperature,
                light,
                chroma,
                HueWords.hue(paper.a(), paper.b()));
    }
}
