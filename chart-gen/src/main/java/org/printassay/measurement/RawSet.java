package org.printassay.measurement;

import java.util.List;

/** Patches of a file under one set of conditions, not yet matched to a chart. */
record RawSet(Conditions conditions, List<RawPatch> patches) {
    RawSet {
        patches = List.copyOf(patches);
    }
}
