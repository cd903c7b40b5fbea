package org.printassay.reading;

import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Section;

/**
 * The colour of one patch.
 *
 * @param id patch id in its chart or measurement file
 * @param section purpose, when known (measurement files of other charts have none)
 * @param rgb codes that were printed
 * @param lab absolute CIELAB, D50; null when the trust does not allow it
 * @param labRelative CIELAB relative to the paper (paper windows at L* 100, a* = b* = 0); null when
 *     no paper white is known
 * @param standardError of one reading of this patch, random part: print grain and noise within the
 *     patch, not the spread between twins; null where unknown
 * @param density visual density (ISO 5-3), absolute; null when the trust does not allow it
 * @param flags what makes it less sure
 * @param centre where it stands on the page; null for measurement files of other charts
 * @param sheet sheet number from 1
 */
public record Reading(
        String id,
        Optional<Section> section,
        Rgb8 rgb,
        @Nullable Lab lab,
        @Nullable Lab labRelative,
        @Nullable LabError standardError,
        @Nullable Double density,
        Set<ReadingFlag> flags,
        @Nullable PointMm centre,
        int sheet) {
    public Reading {
        flags = Set.copyOf(flags);
    }

    /**
     * Whether nothing is known against it but that all equal patches scatter, which the mean of
     * many does not mind, or what moves them all together and has its own part in errors.
     */
    public boolean isSound() {
        return Set.of(ReadingFlag.SCATTERED, ReadingFlag.UNSURE).containsAll(flags);
    }

    /** The same with other flags. */
    public Reading withFlags(Set<ReadingFlag> others) {
        return new Reading(
                id, section, rgb, lab, labRelative, standardError, density, others, centre, sheet);
    }

    /** Absolute CIELAB where there is one, else relative to paper. */
    public Lab best() {
        Lab best = lab != null ? lab : labRelative;
        if (best == null) {
            throw new IllegalStateException("reading " + id + " has no colour");
        }
        return best;
    }
}
