package org.printassay.sample;

import java.util.Set;
import org.printassay.colour.LinearRgb;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.Patch;

/**
 * The middle of one patch in one scan.
 *
 * @param patch which
 * @param linear robust mean in linear device light per channel
 * @param standardError of each mean, from the spread of 1 mm block means
 * @param blocks how many block means
 * @param flags dusty, clipped, uneven, edge
 * @param crossed whether what is left out are straight lines along the page's sides
 */
public record PatchSample(
        Patch patch,
        LinearRgb linear,
        LinearRgb standardError,
        int blocks,
        Set<ReadingFlag> flags,
        boolean crossed) {
    /** A sample that no line crosses. */
    public PatchSample(
            Patch patch,
            LinearRgb linear,
            LinearRgb standardError,
            int blocks,
            Set<ReadingFlag> flags) {
        this(patch, linear, standardError, blocks, flags, false);
    }

    /** This sample with other flags. */
    PatchSample withFlags(Set<ReadingFlag> others) {
        return new PatchSample(patch, linear, standardError, blocks, others, crossed);
    }
}
