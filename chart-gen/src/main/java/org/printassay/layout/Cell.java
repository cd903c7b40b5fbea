package org.printassay.layout;

/**
 * A place for one patch in the mosaic.
 *
 * @param x left edge, dots
 * @param y top edge, dots
 * @param edge whether it stands at the left or right edge of the content
 */
record Cell(int x, int y, boolean edge) {}
