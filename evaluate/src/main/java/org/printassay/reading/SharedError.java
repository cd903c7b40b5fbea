package org.printassay.reading;

import java.util.List;
import org.printassay.colour.Lab;

/**
 * One cause of error that moves many readings together, so that a mean over them does not lose it:
 * the light of a scan, known no better than its twins tell. Causes are independent of each other.
 *
 * @param shifts what one standard error of the cause does to each reading, CIELAB; in the order of
 *     the readings
 * @param assumed whether the cause stands for what could not be estimated, so that twins need not
 *     show it: whoever tells levels apart must allow for it
 */
public record SharedError(List<Lab> shifts, boolean assumed) {
    public SharedError {
        shifts = List.copyOf(shifts);
    }

    /** A cause that was estimated. */
    public SharedError(List<Lab> shifts) {
        this(shifts, false);
    }
}
