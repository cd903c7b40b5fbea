package org.printassay.calibrate;

/** The ways in which the neighbourhood adds to what the sensor sees of a patch. */
enum Kind {
    /** Light that the neighbourhood throws back onto the patch: multiplies its reflectance. */
    RETURNED,
    /** Light scattered in the optics: replaces a little of the patch by its neighbourhood. */
    GLARE
}
