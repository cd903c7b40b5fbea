package org.printassay.sample;

import java.util.Set;
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
 */
public record PatchSample(
        Patch patch,
        LinearRgb linear,
        LinearRgb standardError,
        int blocks,
        Set<ReadingFlag> flags) {
    /** This sample with other flags. */
    PatchSample withFlags(Set<ReadingFlag> others) {
        return new PatchSample(patch, linear, standardError, blocks, others);
    }
}
