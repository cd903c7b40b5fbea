package org.printassay.layout;

/** A row of four markers with three evenness tints between each two. */
final class MarkedRow {
    private static final int MARKERS = 4;

    /** White beside a marker, more than one of its modules. */
    private static final int QUIET = 24;

    private MarkedRow() {}

    /** Whether the row is wide enough. */
    static boolean fits(Grid grid) {
        int between = step(grid) - SheetLayout.MARKER_PX;
        return between >= EvennessTints.TINTS * grid.patch() + 2 * QUIET;
    }

    static void draw(SheetBuilder sheet, Grid grid, EvennessTints even, int y) {
        int step = step(grid);
        for (int i = 0; i < MARKERS; i++) {
            int x = i * step;
            sheet.marker(i == MARKERS - 1 ? grid.width() - SheetLayout.MARKER_PX : x, y);
            if (i < MARKERS - 1) {
                int middle = x + (step + SheetLayout.MARKER_PX) / 2;
                int top = y + (SheetLayout.MARKER_PX - grid.patch()) / 2;
                even.across(middle - EvennessTints.TINTS * grid.patch() / 2, top);
            }
        }
    }

    private static int step(Grid grid) {
        return (grid.width() - SheetLayout.MARKER_PX) / (MARKERS - 1);
    }
}
