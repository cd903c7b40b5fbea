package org.printassay.evaluation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Density;
import org.printassay.colour.Rgb8;

/**
 * How a print was measured, and what spectra alone can tell.
 *
 * @param condition measurement condition of the results, M0 to M3 (ISO 13655); null when not stated
 * @param backing what lay behind the sheet, as the file says; null when not stated
 * @param filter filter in the instrument, as the file says; null when not stated
 * @param instrument what the file calls the instrument; null when not stated
 * @param repeats most measurements that were averaged for one patch
 * @param brightener b* of the paper without ultraviolet less b* with it, b*(M2) - b*(M1): what
 *     optical brighteners add under daylight; null when not measured under both
 * @param solids densities of paper, black and the full colours, where there are spectra
 * @param notes which columns and scales were used, what was doubtful
 */
public record MeasurementSummary(
        @Nullable String condition,
        @Nullable String backing,
        @Nullable String filter,
        @Nullable String instrument,
        int repeats,
        @Nullable Double brightener,
        List<Solid> solids,
        List<String> notes) {
    public MeasurementSummary {
        solids = List.copyOf(solids);
        notes = List.copyOf(notes);
    }

    /** Whether no ultraviolet fell on the print: M2, and M3 (ISO 13655; M3 from memory). */
    public boolean cutsUltraviolet() {
        return "M2".equals(condition) || "M3".equals(condition);
    }

    /**
     * Absolute densities of one full colour.
     *
     * @param name in words
     * @param rgb codes
     * @param visual ISO 5-3 visual density
     * @param statusA ISO 5-3 status A, for photographic prints
     * @param statusT ISO 5-3 status T, for graphic arts
     */
    public record Solid(
            String name,
            Rgb8 rgb,
            double visual,
            Density.Filters statusA,
            Density.Filters statusT) {}
}
