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
 * @param sets one for each set of conditions, at least one, the preferred first: M1, M0, M2, M3
 *     (D50 with its ultraviolet is what prints are looked at under: ISO 3664), unknown last
 * @param keywords header lines, key to value, in file order
 * @param notes which columns and scales were used and what was doubtful, whole sentences
 */
public record MeasurementFile(
        String name, List<MeasurementSet> sets, Map<String, String> keywords, List<String> notes) {
    public MeasurementFile {
        sets = List.copyOf(sets);
        keywords = Collections.unmodifiableMap(new LinkedHashMap<>(keywords));
        notes = List.copyOf(notes);
    }

    /** Patches of the preferred set, in file order. */
    public List<MeasuredPatch> patches() {
        return sets.get(0).patches();
    }

    /** Conditions of the preferred set. */
    public Conditions conditions() {
        return sets.get(0).conditions();
    }

    /** Measurement condition of the preferred set, where stated. */
    public Optional<Condition> condition() {
        return conditions().mode();
    }

    /** The set measured under a condition, if there is one. */
    public Optional<MeasurementSet> under(Condition condition) {
        return sets.stream()
                .filter(set -> set.conditions().mode().equals(Optional.of(condition)))
                .findFirst();
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
