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
 * @param codingSteps step in L* in which lossy coding, or an edit in 8 bits, kept even areas of
 *     each reading's lightness, in the order of the readings; empty where nothing did
 * @param contrast what is not known of differences of lightness because tones were edited
 */
public record ReadingSet(
        List<Reading> readings,
        RgbSpace space,
        Trust trust,
        boolean colour,
        List<SharedError> shared,
        List<Lab> calibration,
        @Nullable Repeatability repeats,
        List<Double> codingSteps,
        ContrastDoubt contrast) {
    public ReadingSet {
        calibration = List.copyOf(calibration);
        if (!calibration.isEmpty() && calibration.size() != readings.size()) {
            throw new IllegalArgumentException("a calibration's error needs one a reading");
        }
        codingSteps = List.copyOf(codingSteps);
        if (!codingSteps.isEmpty() && codingSteps.size() != readings.size()) {
            throw new IllegalArgumentException("steps of coding need one a reading");
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
        this(
                readings,
                space,
                trust,
                colour,
                List.of(),
                List.of(),
                null,
                List.of(),
                ContrastDoubt.NONE);
    }

    /** Readings that no calibration was made for. */
    public ReadingSet(
            List<Reading> readings,
            RgbSpace space,
            Trust trust,
            boolean colour,
            List<SharedError> shared) {
        this(
                readings,
                space,
                trust,
                colour,
                shared,
                List.of(),
                null,
                List.of(),
                ContrastDoubt.NONE);
    }

    /** Readings of a scan. */
    public ReadingSet(
            List<Reading> readings,
            RgbSpace space,
            Trust trust,
            boolean colour,
            List<SharedError> shared,
            List<Lab> calibration) {
        this(
                readings,
                space,
                trust,
                colour,
                shared,
                calibration,
                null,
                List.of(),
                ContrastDoubt.NONE);
    }

    /** The same readings, each the mean of repeated measurements. */
    public ReadingSet withRepeats(@Nullable Repeatability known) {
        return new ReadingSet(
                readings, space, trust, colour, shared, calibration, known, codingSteps, contrast);
    }

    /** The same readings with another error of the scanner's calibration. */
    public ReadingSet withCalibration(List<Lab> errors) {
        return new ReadingSet(
                readings, space, trust, colour, shared, errors, repeats, codingSteps, contrast);
    }

    /** The same readings, from scans that keep lightness in steps. */
    public ReadingSet withCodingSteps(List<Double> steps) {
        return new ReadingSet(
                readings, space, trust, colour, shared, calibration, repeats, steps, contrast);
    }

    /** The same readings, from scans whose tones may have been edited. */
    public ReadingSet withContrast(ContrastDoubt doubt) {
        return new ReadingSet(
                readings, space, trust, colour, shared, calibration, repeats, codingSteps, doubt);
    }
}
