package org.printassay.scan;

import org.printassay.problem.Problem;

/**
 * A scan file that can be streamed, top row first, as often as wanted. Nothing is kept in memory.
 */
public interface ScanImage {
    /** What the header says. */
    ScanInfo info();

    /**
     * Streams all rows in order.
     *
     * @throws Problem when the file is damaged or ends early; names the file, where, and what to do
     */
    void stream(RowSink sink) throws Problem;

    /** Takes one row after the other. */
    @FunctionalInterface
    interface RowSink {
        /**
         * One row.
         *
         * @param y row number from 0 at the top
         * @param samples channel-interleaved codes, {@code width * channels} of them, on the 16 bit
         *     scale whatever the file's depth (an 8 bit code times 257); the array is reused for
         *     the next row; not modified by the sink
         */
        void row(int y, char[] samples);

        /**
         * Whether a row is needed. Readers that can pass over rows do so, others hand over every
         * row, so a sink looks itself.
         */
        default boolean wants(int y) {
            return true;
        }
    }
}
