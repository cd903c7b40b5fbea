package org.printassay.colour.icc;

/**
 * One step of a way through a profile. Takes its values from the start of an array of {@link #ROOM}
 * numbers and leaves its results there. Steps keep no state between calls: any number of threads
 * may use the same one, each with an array of its own.
 */
@FunctionalInterface
interface Step {
    /** Most values that a step takes or leaves. */
    int MOST_VALUES = 4;

    /** Numbers an array of values must have room for. */
    int ROOM = 16;

    /**
     * Replaces values by results.
     *
     * @param values modified
     */
    void apply(double[] values);
}
