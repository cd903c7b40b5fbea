package org.printassay.reading;

import org.printassay.colour.Lab;

/**
 * How well an instrument repeats itself on one patch. It says nothing of how evenly a printer
 * prints: twins tell that.
 *
 * @param each standard error of a reading, the mean of its repeats, on average over the patches
 * @param freedom degrees of freedom it rests on, at least 1
 */
public record Repeatability(Lab each, int freedom) {}
