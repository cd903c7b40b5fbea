package org.printassay.evaluation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.sheet.RectMm;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.SwathPattern;

/**
 * The fine structure of a print; null parts were not judged.
 *
 * @param lines lines of the print, or that may be; by sheet and position
 * @param pattern one distance that lines of one sheet repeat at; null when there is none
 * @param bands bands of the print, or that may be; strongest first
 * @param scannerLines lines that are the scanner's
 * @param scannerBands bands that are the scanner's
 * @param page size of the page, millimetres; null when nothing was looked at
 * @param feed axis of the page that went through the printer; null when not said
 * @param viewing distance and light that visibility of bands is judged at
 * @param grain fine and coarse unevenness
 * @param sharpness of edges, print and scan together
 * @param vignettes steps in smooth gradients
 */
public record PrintSurface(
        @Nullable List<PrintLine> lines,
        @Nullable SwathPattern pattern,
        @Nullable List<PrintBand> bands,
        List<PrintLine> scannerLines,
        List<PrintBand> scannerBands,
        @Nullable RectMm page,
        @Nullable Along feed,
        ContrastSensitivity viewing,
        @Nullable Grain grain,
        @Nullable Sharpness sharpness,
        @Nullable List<Vignette> vignettes) {
    /** Nothing judged. */
    public static final PrintSurface NOT_JUDGED =
            new PrintSurface(
                    null,
                    null,
                    null,
                    List.of(),
                    List.of(),
                    null,
                    null,
                    ContrastSensitivity.USUAL,
                    null,
                    null,
                    null);

    /** The axis along the longer side of the page. */
    public Along longSide() {
        return page == null || page.height() >= page.width() ? Along.Y : Along.X;
    }

    /**
     * Unevenness in L* (standard deviations) by zone, the paper's own taken off; null where a zone
     * has no flat greys.
     *
     * @param paper of bare paper, at its lightness
     * @param highestPerMm frequency up to which grain counts
     * @param noiseRemoved whether the scanner's noise could be told and taken off
     * @param areas how many flat areas it is from
     */
    public record Grain(
            @Nullable Zone shadows,
            @Nullable Zone midtones,
            @Nullable Zone highlights,
            @Nullable Zone paper,
            double highestPerMm,
            boolean noiseRemoved,
            int areas) {}

    /**
     * One zone.
     *
     * @param graininess finer than 0.4 cycles per millimetre
     * @param mottle coarser, from tiles of 1.27 mm; null where areas are too small
     */
    public record Zone(double graininess, @Nullable Double mottle) {}

    /**
     * Frequencies, cycles per millimetre, at which slanted edges keep half of their contrast, and
     * what they keep at 5 per millimetre; print and scan together. Null where no edge could be
     * read.
     *
     * @param acrossHalfPerMm detail from left to right
     * @param downHalfPerMm detail from top to bottom
     */
    public record Sharpness(
            @Nullable Double acrossHalfPerMm,
            @Nullable Double downHalfPerMm,
            @Nullable Double acrossAtFive,
            @Nullable Double downAtFive,
            int edges,
            List<Double> across,
            List<Double> down,
            double stepPerMm) {
        public Sharpness {
            across = List.copyOf(across);
            down = List.copyOf(down);
        }
    }

    /**
     * One smooth gradient.
     *
     * @param fromLevel neutral code at its left end
     * @param toLevel neutral code at its right end
     * @param yMm its middle on the page
     * @param steps that should not be there, from left to right
     * @param scannerSteps those that go on over bare paper, so that they are the scanner's
     */
    public record Vignette(
            int sheet,
            double fromLevel,
            double toLevel,
            double yMm,
            List<Step> steps,
            List<Step> scannerSteps) {
        public Vignette {
            steps = List.copyOf(steps);
            scannerSteps = List.copyOf(scannerSteps);
        }
    }

    /**
     * A step in a gradient.
     *
     * @param level neutral code where it stands
     * @param positionMm from the left edge of the page
     * @param deltaL lightness after less before, the gradient's own slope taken off
     */
    public record Step(double level, double positionMm, double deltaL) {}
}
