package org.printassay.measurement;

import java.util.List;

/**
 * What was measured under one set of conditions.
 *
 * @param conditions never mixed with others
 * @param patches in file order, at least one
 */
public record MeasurementSet(Conditions conditions, List<MeasuredPatch> patches) {
    public MeasurementSet {
        patches = List.copyOf(patches);
    }
}
