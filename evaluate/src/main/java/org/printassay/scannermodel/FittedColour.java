package org.printassay.scannermodel;

import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;

/**
 * A colour that a model was made from.
 *
 * @param name what was printed
 * @param neutral whether it is a grey
 * @param light mean linear device light of its patches
 * @param lab measured
 * @param off predicted minus measured, CIELAB, by a model made without it
 * @param patches how many patches
 */
public record FittedColour(
        String name, boolean neutral, LinearRgb light, Lab lab, Lab off, int patches) {}
