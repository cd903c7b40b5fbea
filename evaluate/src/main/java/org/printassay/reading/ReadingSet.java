package org.printassay.reading;

import java.util.List;
import org.printassay.colour.RgbSpace;

/**
 * All readings of one print.
 *
 * @param readings in chart order
 * @param space encoding of the codes that were printed
 * @param trust how colour was obtained
 * @param colour false when only lightness was read (grey scan)
 * @param shared causes of error that move readings together
 */
public record ReadingSet(
        List<Reading> readings,
        RgbSpace space,
        Trust trust,
        boolean colour,
        List<SharedError> shared) {
    public ReadingSet {
        readings = List.copyOf(readings);
        shared = List.copyOf(shared);
        for (SharedError cause : shared) {
            if (cause.shifts().size() != readings.size()) {
                throw new IllegalArgumentException("a shared error needs a shift a reading");
            }
        }
    }

    /** Readings that share no cause of error. */
    public ReadingSet(List<Reading> readings, RgbSpace space, Trust trust, boolean colour) {
        this(readings, space, trust, colour, List.of());
    }
}
