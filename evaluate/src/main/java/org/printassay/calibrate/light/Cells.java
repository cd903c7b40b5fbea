package org.printassay.calibrate.light;

/** A grid of square cells; maps over it hold one number a cell, row by row, NaN where unknown. */
interface Cells {
    int columns();

    int rows();

    /** Width of a cell. */
    double cellMm();
}
