package org.printassay.calibrate;

import org.printassay.sample.SheetSamples;

/**
 * One scan of a print: a whole sheet, a part of one, or a repeat.
 *
 * @param samples what was read
 * @param colour what its codes mean
 */
public record ScanPart(SheetSamples samples, ScanColour colour) {}
