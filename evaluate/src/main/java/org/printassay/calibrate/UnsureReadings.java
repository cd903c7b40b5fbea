package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.SharedError;

/**
 * Readings whose colour is not known well, though neither their patch nor its twins show it: what
 * moves many of them together, stray light above all, moves dark colours by more than light ones. A
 * reading's own error says nothing of it.
 */
final class UnsureReadings {
    /** Two standard errors, dE00, from which a colour is unsure (common practice, no source). */
    private static final double MOST = 2;

    private UnsureReadings() {}

    /**
     * The same readings, those flagged that are unsure.
     *
     * @param shared causes of error, with a shift a reading
     * @param colour false where lightness alone was read
     */
    static List<Reading> flagged(List<Reading> readings, List<SharedError> shared, boolean colour) {
        List<Reading> flagged = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            Reading reading = readings.get(i);
            double squares = 0;
            for (SharedError cause : shared) {
                squares += Math.pow(moved(reading.best(), cause.shifts().get(i), colour), 2);
            }
            flagged.add(squares > MOST * MOST ? unsure(reading) : reading);
        }
        return flagged;
    }

    /** What two standard errors of a cause do to a colour, dE00. */
    private static double moved(Lab lab, Lab shift, boolean colour) {
        double hue = colour ? 2 : 0;
        Lab there =
                new Lab(
                        lab.l() + 2 * shift.l(),
                        lab.a() + hue * shift.a(),
                        lab.b() + hue * shift.b());
        return DeltaE.ciede2000(lab, there);
    }

    private static Reading unsure(Reading reading) {
        Set<ReadingFlag> flags = EnumSet.of(ReadingFlag.UNSURE);
        flags.addAll(reading.flags());
        return reading.withFlags(flags);
    }
}
