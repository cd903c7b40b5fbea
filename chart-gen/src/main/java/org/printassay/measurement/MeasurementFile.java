package org.printassay.measurement;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a measurement file says.
 *
 * @param name file name without folders
 * @param patches in file order, at least one
 * @param condition measurement condition, when the header names one
 * @param keywords header lines, key to value, in file order
 * @param notes which columns and scales were used and what was doubtful, whole sentences
 */
public record MeasurementFile(
        String name,
        List<MeasuredPatch> patches,
        Optional<Condition> condition,
        Map<String, String> keywords,
        List<String> notes) {
    public MeasurementFile {
        patches = List.copyOf(patches);
        keywords = Collections.unmodifiableMap(new LinkedHashMap<>(keywords));
        notes = List.copyOf(notes);
    }

    /** Measurement conditions of ISO 13655; never mixed in one comparison. */
    public enum Condition {
        /** Illuminant A like lamp, ultraviolet not defined. */
        M0,
        /** D50 with its ultraviolet. */
        M1,
        /** Ultraviolet cut. */
        M2,
        /** Ultraviolet cut and polarised. */
        M3
    }
}
