package org.printassay.reading;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;

/**
 * All readings of one print.
 *
 * @param readings in chart order
 * @param space encoding of the codes that were printed
 * @param trust how colour was obtained
 * @param colour false when only lightness was read (grey scan)
 * @param shared causes of error that move readings together
 * @param calibration standard error of each reading by the scanner's calibration, CIELAB, in the
 *     order of the readings; empty without one
 * @param repeats how well the instrument repeats; null where patches were measured once, or scanned
 */
public record ReadingSet(
        List<Reading> readings,
        RgbSpace space,
        Trust trust,
        boolean colour,
        List<SharedError> shared,
        List<Lab> calibration,
        @Nullable Repeatability repeats) {
    public ReadingSet {
        calibration = List.copyOf(calibration);
        if (!calibration.isEmpty() && calibration.size() != readings.size()) {
            throw new IllegalArgumentException("a calibration's error needs one a reading");
        }
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
        this(readings, space, trust, colour, List.of(), List.of(), null);
    }

    /** Readings that no calibration was made for. */
    public ReadingSet(
            List<Reading> readings,
            RgbSpace space,
            Trust trust,
            boolean colour,
            List<SharedError> shared) {
        this(readings, space, trust, colour, shared, List.of(), null);
    }

    /** Readings of a scan. */
    public ReadingSet(
            List<Reading> readings,
            RgbSpace space,
            Trust trust,
            boolean colour,
            List<SharedError> shared,
            List<Lab> calibration) {
        this(readings, space, trust, colour, shared, calibration, null);
    }

    /** The same readings, each the mean of repeated measurements. */
    public ReadingSet withRepeats(@Nullable Repeatability known) {
        return new ReadingSet(readings, space, trust, colour, shared, calibration, known);
    }
}
