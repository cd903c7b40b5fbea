package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Panels of patches laid like bricks: every other row is shifted by half a patch, so that each
 * patch touches six others and no seam runs through. On wide pages a panel is parted by white
 * gutters, each with a marker in its middle.
 *
 * @param columns patches in a full row of each part
 * @param lefts left edge of each part, dots
 */
record Mosaic(Grid grid, int columns, List<Integer> lefts) {
    /** Columns beyond the narrowest sheet that make room for one more gutter. */
    private static final int GUTTER_COLUMNS = 3;

    private static final int MOST_GUTTERS = 3;

    Mosaic {
        lefts = List.copyOf(lefts);
    }

    /** The parts that a grid has room for. */
    static Mosaic of(Grid grid) {
        int free = Math.max(0, grid.columns() - MiddleBlock.LEAST_COLUMNS);
        int gutters = Math.min(MOST_GUTTERS, free / GUTTER_COLUMNS);
        int columns = (grid.columns() - gutters * GUTTER_COLUMNS) / (gutters + 1);
        List<Integer> lefts = new ArrayList<>();
        int last = grid.width() - columns * grid.patch();
        for (int part = 0; part <= gutters; part++) {
            lefts.add(gutters == 0 ? 0 : last * part / gutters);
        }
        return new Mosaic(grid, columns, lefts);
    }

    /** How many patches a panel of some rows holds. */
    int cells(int rows) {
        return lefts.size() * (rows * columns - rows / 2);
    }

    /** Draws the markers of a panel whose top edge is at y and gives its places. */
    List<Cell> draw(SheetBuilder sheet, int y, int rows) {
        int p = grid.patch();
        for (int part = 1; part < lefts.size(); part++) {
            int gutter = lefts.get(part - 1) + columns * p;
            int x = (gutter + lefts.get(part) - SheetLayout.MARKER_PX) / 2;
            sheet.marker(x, y + (rows * p - SheetLayout.MARKER_PX) / 2);
        }
        List<Cell> cells = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            int shift = row % 2;
            int count = columns - shift;
            for (int part = 0; part < lefts.size(); part++) {
                for (int i = 0; i < count; i++) {
                    int x = lefts.get(part) + i * p + shift * p / 2;
                    boolean first = part == 0 && i == 0;
                    boolean last = part == lefts.size() - 1 && i == count - 1;
                    cells.add(new Cell(x, y + row * p, first || last));
                }
            }
        }
        return cells;
    }
}
