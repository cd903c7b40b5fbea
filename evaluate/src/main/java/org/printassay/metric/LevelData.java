package org.printassay.metric;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;

/**
 * All readings of one neutral level together.
 *
 * @param level 8-bit code
 * @param fileL L* of the code in its RGB encoding
 * @param mean mean colour of the readings that were kept
 * @param count how many
 * @param kept the readings' colours
 * @param shared what one standard error of each shared cause does to the mean
 * @param calibration standard error by the scanner's calibration; null without one
 */
record LevelData(
        int level,
        double fileL,
        Lab mean,
        int count,
        List<Lab> kept,
        List<Lab> shared,
        @Nullable Lab calibration) {

    /** Standard error of a value of the mean by the causes that move readings together. */
    double sharedError(ToDoubleFunction<Lab> value) {
        double squares = 0;
        for (Lab shift : shared) {
            squares += Math.pow(value.applyAsDouble(shift), 2);
        }
        return Math.sqrt(squares);
    }
}
