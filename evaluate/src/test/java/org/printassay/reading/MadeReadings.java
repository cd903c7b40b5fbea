package org.printassay.reading;

import java.util.Optional;
import java.util.Set;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/** Simulated readings, made by hand: only what a test is about. */
public final class MadeReadings {
    private MadeReadings() {}

    /** A neutral that reads neutral, at no place of a sheet. */
    public static Reading neutral(String id, int level, double l, ReadingFlag... flags) {
        Lab lab = new Lab(l, 0, 0);
        Rgb8 code = Rgb8.grey(level);
        return new Reading(
                id, Optional.empty(), code, lab, lab, null, null, Set.of(flags), null, 1);
    }
}
