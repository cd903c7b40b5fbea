package org.printassay.sample;

/**
 * Tells what a scanner's blur or glare brings over the edges of a patch from dirt on it. Both lie
 * far from the patch's own light, but blur runs all along an edge, row of cells by row of cells
 * from the border inwards; dust, hairs and scratches do not.
 */
final class PatchEdges {
    /** Rows of cells from a border that blur may reach: deeper ones are dirt again. */
    private static final int DEEPEST = 8;

    /** Share of a row's cells that must be far; noise spares some where blur has nearly ended. */
    private static final double ALL_ALONG = 0.75;

    private PatchEdges() {}

    /**
     * Far cells in rows along the borders that are far as a whole.
     *
     * @param far for each cell, not modified
     */
    static boolean[] far(PatchCells cells, boolean[] far) {
        boolean[] blurred = new boolean[far.length];
        int columns = cells.columns();
        int rows = cells.rows();
        side(cells, far, blurred, 0, 1, columns, columns, rows);
        side(cells, far, blurred, (rows - 1) * columns, 1, columns, -columns, rows);
        side(cells, far, blurred, 0, columns, rows, 1, columns);
        side(cells, far, blurred, columns - 1, columns, rows, -1, columns);
        return blurred;
    }

    /**
     * Rows along one border.
     *
     * @param first cell of the border
     * @param next from cell to cell along it, {@code along} cells
     * @param inwards from a row to the one deeper in the patch, {@code across} rows
     */
    private static void side(
            PatchCells cells,
            boolean[] far,
            boolean[] blurred,
            int first,
            int next,
            int along,
            int inwards,
            int across) {
        int deepest = Math.min(DEEPEST, across / 3);
        for (int row = 0; row < deepest; row++) {
            int begin = first + row * inwards;
            int count = 0;
            int out = 0;
            for (int k = 0; k < along; k++) {
                int cell = begin + k * next;
                boolean whole = 2 * cells.size(cell) >= cells.fullSize();
                count += whole ? 1 : 0;
                out += whole && far[cell] ? 1 : 0;
            }
            // Of the outermost row a sheet that lies a little turned leaves a part, or nothing.
            if (out < ALL_ALONG * count) {
                return;
            }
            for (int k = 0; k < along; k++) {
                int cell = begin + k * next;
                blurred[cell] |= far[cell];
            }
        }
    }
}
