package org.printassay.scannermodel;

import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;

/**
 * One patch that was both scanned and measured.
 *
 * @param id its name
 * @param colour what was printed there: patches with the same are twins and are left out together
 * @param neutral whether it was printed, or is, as a grey
 * @param light linear device light, free of uneven and stray light
 * @param lab measured, D50, 2 degrees
 */
public record TrainingPatch(String id, String colour, boolean neutral, LinearRgb light, Lab lab) {}
