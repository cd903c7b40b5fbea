package org.printassay.sample;

/** Something that takes what it needs from the rows of a scan while they come in. */
interface RowWindow {
    /** First row that is of interest. */
    int firstRow();

    /** Last row that is of interest. */
    int lastRow();

    /**
     * Takes a row between the first and the last.
     *
     * @param row codes, channels side by side; not modified
     * @param curves linear light of every code, by channel
     */
    void take(int y, char[] row, float[][] curves);
}
