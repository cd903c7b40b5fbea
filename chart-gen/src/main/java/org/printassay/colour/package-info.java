/**
 * Colour arithmetic that every other package shares: CIELAB, XYZ, RGB encodings, differences,
 * density, ICC profiles, spectra. Depends on nothing else of the project.
 *
 * <p>Units: XYZ has Y = 100 for the perfect reflecting diffuser; CIELAB is D50, 2 degree observer;
 * RGB codes are 0-255, RGB fractions 0-1. Read {@link org.printassay.colour.RgbSpace} first.
 */
package org.printassay.colour;
