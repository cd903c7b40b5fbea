package org.printassay.calibrate;

/**
 * One way in which the neighbourhood adds to what the sensor sees of a patch.
 *
 * @param kind returned light or glare
 * @param sigmaMm width of the Gaussian that weighs the neighbourhood, millimetres
 */
record StrayTerm(Kind kind, double sigmaMm) {
    enum Kind {
        /** Light that the neighbourhood throws back onto the patch: multiplies its reflectance. */
        RETURNED,
        /** Light scattered in the optics: replaces a little of the patch by its neighbourhood. */
        GLARE
    }
}
