package org.printassay.sample;

/**
 * Tells straight lines along a page's sides from dirt: a nozzle that does not print, or a dirty
 * spot on a sensor, changes cells from one side of a patch to the other and none beside them, while
 * specks end and hairs bend or lie askew.
 */
final class CrossingLines {
    /** Share of the cells on a straight line that must lie far from the others. */
    private static final double FULL = 0.7;

    /** Share of all far cells, with their neighbours, that must lie on such lines. */
    private static final double MOST = 0.5;

    /** Fewer cells than this across a patch draw no line. */
    private static final int FEWEST = 8;

    private CrossingLines() {}

    /**
     * Whether the cells that lie far from the others are lines.
     *
     * @param turn direction of the page's x in the scan, radians from its rows
     */
    static boolean are(PatchCells cells, CellJudge judge, double turn) {
        return along(cells, judge, turn) || along(cells, judge, turn + Math.PI / 2);
    }

    private static boolean along(PatchCells cells, CellJudge judge, double turn) {
        // From the corner that lies farthest before the first line.
        int reach = cells.columns() + cells.rows();
        int[] all = new int[2 * reach + 1];
        int[] standing = new int[all.length];
        int far = 0;
        for (int i = 0; i < cells.columns() * cells.rows(); i++) {
            if (2 * cells.size(i) < cells.fullSize() || judge.isBlurred(i)) {
                continue;
            }
            int column = i % cells.columns();
            int row = i / cells.columns();
            int line = reach + (int) Math.round(row * Math.cos(turn) - column * Math.sin(turn));
            all[line]++;
            if (judge.isFar(i)) {
                standing[line]++;
                far++;
            }
        }
        int onLines = 0;
        for (int line = 0; line < all.length; line++) {
            boolean full = all[line] >= FEWEST && standing[line] >= FULL * all[line];
            onLines += full ? standing[line] : 0;
        }
        return far > 0 && onLines >= MOST * far;
    }
}
