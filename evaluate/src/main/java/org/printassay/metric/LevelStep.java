package org.printassay.metric;

import org.printassay.colour.Lab;

/**
 * One tested level of a wedge.
 *
 * @param level 8-bit code, 0-255
 * @param difference how far it is from black (shadows) or paper (highlights), dL*, best estimate,
 *     which its interval holds
 * @param low lower bound of the difference: one-sided 95 % for chance and coding, for verdicts ask
 *     on one side; two-sided 95 % for what levels share
 * @param high upper bound, likewise
 * @param aim the same difference on the aim
 * @param verdict against the threshold
 * @param colour mean measured colour, for drawing
 * @param twins how many patches it was read from
 */
public record LevelStep(
        int level,
        double difference,
        double low,
        double high,
        double aim,
        Verdict verdict,
        Lab colour,
        int twins) {
    /** Each bound is the closest of so many, by the level itself and by its neighbours. */
    public static final int WINDOWS = 1 + WedgeBounds.LONGER_WINDOWS.length;
}
