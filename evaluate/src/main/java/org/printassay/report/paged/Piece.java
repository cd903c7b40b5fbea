package org.printassay.report.paged;

/**
 * What stays in one piece; heights in points.
 *
 * @param before space above it, which is left out at the top of a page
 * @param loose whether that space may be stretched or shrunk to fill a page
 * @param height of what is painted
 * @param more what is added to the height where a page begins with it, such as repeated heads
 * @param turn what it costs to turn the page before it; see {@link Turn}
 * @param painter paints it
 */
record Piece(
        double before, boolean loose, double height, double more, double turn, Painter painter) {
    /** Paints a piece from the flow's place down. */
    @FunctionalInterface
    interface Painter {
        /**
         * Paints it.
         *
         * @param top whether a page begins with it
         */
        void paint(boolean top);
    }

    double heightAt(boolean top) {
        return top ? more + height : height;
    }
}
