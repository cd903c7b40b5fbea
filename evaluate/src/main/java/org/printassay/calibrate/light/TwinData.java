package org.printassay.calibrate.light;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What one channel says about every patch of one scan, grouped by printed code: patches of one
 * group (twins) have the same reflectance.
 *
 * @param light light over the first estimate of paper white; not copied
 * @param errorL standard error of each light within its patch, in L*; 0 where unknown
 * @param group which group each patch belongs to, -1 when it is no evidence
 * @param groups how many groups
 * @param paperGroup the group of unprinted paper
 * @param surface the terms of the light surface at each patch
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way, never compared
record TwinData(
        double[] light,
        double[] errorL,
        int[] group,
        int groups,
        int paperGroup,
        double[][] surface) {

    /** The same patches, their light another. */
    TwinData withLight(double[] other) {
        return new TwinData(other, errorL, group, groups, paperGroup, surface);
    }

    /** The same patches, their surface of other terms. */
    TwinData withSurface(double[][] other) {
        return new TwinData(light, errorL, group, groups, paperGroup, other);
    }

    /** The patches that are evidence. */
    int[] rows() {
        return IntStream.range(0, group.length).filter(i -> group[i] >= 0).toArray();
    }

    /** Independent comparisons between twins: members beyond the first, over all groups. */
    int comparisons() {
        int[] rows = rows();
        return rows.length - (int) Arrays.stream(rows).map(i -> group[i]).distinct().count();
    }
}
