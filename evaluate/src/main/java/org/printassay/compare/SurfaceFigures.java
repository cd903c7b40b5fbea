package org.printassay.compare;

import org.jspecify.annotations.Nullable;
import org.printassay.compare.Uncertainties.Split;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.Evenness;
import org.printassay.evaluation.PrintSurface;

/** Figures of evenness, grain, sharpness, lines and bands. */
final class SurfaceFigures {
    /**
     * Standard uncertainty of grain as a share, and the least; measured, see the tests of grain.
     */
    private static final double GRAIN_SHARE = 0.05;

    private static final double GRAIN_LEAST = 0.02;

    /** The same of the frequency at which edges keep half of their contrast. */
    private static final double SHARPNESS_SHARE = 0.025;

    private SurfaceFigures() {}

    static void collect(
            Evaluation evaluation, Uncertainties uncertainties, PrintFigures.Collected to) {
        Evenness evenness = evaluation.evenness();
        if (evenness != null && evenness.gradient() != null) {
            to.put(
                    Figure.EVENNESS_GRADIENT,
                    evenness.gradient().overSheet(),
                    uncertainties.of(Figure.EVENNESS_GRADIENT.key()));
        }
        PrintSurface surface = evaluation.surface();
        if (surface == null) {
            return;
        }
        PrintSurface.Grain grain = surface.grain();
        if (grain != null) {
            grain(to, Figure.GRAIN_SHADOWS, grain.shadows());
            grain(to, Figure.GRAIN_MIDTONES, grain.midtones());
            grain(to, Figure.GRAIN_HIGHLIGHTS, grain.highlights());
            PrintSurface.Zone midtones = grain.midtones();
            if (midtones != null && midtones.mottle() != null) {
                to.put(Figure.MOTTLE_MIDTONES, midtones.mottle(), ofGrain(midtones.mottle()));
            }
        }
        PrintSurface.Sharpness sharpness = surface.sharpness();
        if (sharpness != null) {
            frequency(to, Figure.SHARPNESS_ACROSS, sharpness.acrossHalfPerMm());
            frequency(to, Figure.SHARPNESS_DOWN, sharpness.downHalfPerMm());
        }
        if (surface.lines() != null) {
            to.put(Figure.LINES, surface.lines().size(), Split.UNKNOWN);
        }
        if (surface.bands() != null) {
            long visible = surface.bands().stream().filter(b -> b.band().visible()).count();
            to.put(Figure.BANDS, visible, Split.UNKNOWN);
        }
    }

    private static void grain(
            PrintFigures.Collected to, Figure figure, PrintSurface.@Nullable Zone zone) {
        if (zone != null) {
            to.put(figure, zone.graininess(), ofGrain(zone.graininess()));
        }
    }

    private static Split ofGrain(double value) {
        return new Split(Math.max(GRAIN_LEAST, GRAIN_SHARE * value), 0);
    }

    private static void frequency(
            PrintFigures.Collected to, Figure figure, @Nullable Double perMm) {
        if (perMm != null) {
            to.put(figure, perMm, SHARPNESS_SHARE * perMm, 0);
        }
    }
}
