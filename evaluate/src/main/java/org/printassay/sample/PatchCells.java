package org.printassay.sample;

/**
 * Light of one patch summed up in small square cells along the scan's rows. A cell is wide enough
 * that the grain of a print and the noise of a scanner average out, and narrow enough that a speck
 * of dust stands out in it.
 */
final class PatchCells {
    /** Wider than printed dots, narrower than what lies on a glass; common practice, no source. */
    private static final double CELL_MM = 0.15;

    private final int channels;
    private final int cellPx;
    private final int columns;
    private final int rows;
    private final int perBlock;
    private final int[] sizes;
    private final double[][] sums;
    private int count;
    private int clipped;

    /**
     * Empty cells.
     *
     * @param widthPx pixels that the patch spans across
     * @param heightPx pixels that it spans down
     * @param channels 1 or 3
     */
    PatchCells(int widthPx, int heightPx, double samplesPerMm, int channels) {
        this.channels = channels;
        this.cellPx = Math.max(1, (int) Math.round(CELL_MM * samplesPerMm));
        this.columns = (widthPx + cellPx - 1) / cellPx;
        this.rows = (heightPx + cellPx - 1) / cellPx;
        this.perBlock = Math.max(1, (int) Math.round(samplesPerMm / cellPx));
        this.sizes = new int[columns * rows];
        this.sums = new double[channels][columns * rows];
    }

    /**
     * Adds pixels of one row.
     *
     * @param samples the whole row of the scan, not modified
     * @param begin first pixel, and {@code end} the one after the last
     * @param left pixel of the scan at which the cells begin
     * @param down how many rows below the top of the cells
     * @param curves linear light of each 16-bit code, for each channel
     */
    void add(char[] samples, int begin, int end, int left, int down, float[][] curves) {
        int base = down / cellPx * columns;
        int column = (begin - left) / cellPx;
        for (int x = begin; x < end; column++) {
            int stop = Math.min(end, left + (column + 1) * cellPx);
            int cell = base + column;
            if (channels == 1) {
                addGrey(samples, x, stop, cell, curves[0]);
            } else {
                addColour(samples, x, stop, cell, curves);
            }
            sizes[cell] += stop - x;
            x = stop;
        }
        count += Math.max(0, end - begin);
    }

    private void addGrey(char[] samples, int from, int stop, int cell, float[] curve) {
        double sum = 0;
        for (int x = from; x < stop; x++) {
            char code = samples[x];
            sum += curve[code];
            clipped += code == 0 || code == 0xffff ? 1 : 0;
        }
        sums[0][cell] += sum;
    }

    private void addColour(char[] samples, int from, int stop, int cell, float[][] curves) {
        double r = 0;
        double g = 0;
        double b = 0;
        for (int at = 3 * from; at < 3 * stop; at += 3) {
            char red = samples[at];
            char green = samples[at + 1];
            char blue = samples[at + 2];
            r += curves[0][red];
            g += curves[1][green];
            b += curves[2][blue];
            int least = Math.min(red, Math.min(green, blue));
            int most = Math.max(red, Math.max(green, blue));
            clipped += least == 0 || most == 0xffff ? 1 : 0;
        }
        sums[0][cell] += r;
        sums[1][cell] += g;
        sums[2][cell] += b;
    }

    int channels() {
        return channels;
    }

    /** Cells across. */
    int columns() {
        return columns;
    }

    /** Cells down. */
    int rows() {
        return rows;
    }

    /** Cells on the side of a block of about a millimetre. */
    int perBlock() {
        return perBlock;
    }

    /** Pixels of a cell that lies wholly in the patch. */
    int fullSize() {
        return cellPx * cellPx;
    }

    int size(int cell) {
        return sizes[cell];
    }

    /** Sum of linear light over the pixels of a cell. */
    double sum(int channel, int cell) {
        return sums[channel][cell];
    }

    /** All pixels. */
    int count() {
        return count;
    }

    /** Pixels with a channel at an end of the codes. */
    int clipped() {
        return clipped;
    }
}
