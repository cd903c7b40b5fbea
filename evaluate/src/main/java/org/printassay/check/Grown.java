package org.printassay.check;

/**
 * A line or band of the baseline that is there again.
 *
 * @param before as the baseline has it
 * @param after as the print has it
 * @param outcome what follows from how much stronger it is now
 */
public record Grown<T>(T before, T after, Outcome outcome) {}
