package org.printassay.layout;

import java.util.List;

/** The evenness grid: the same three tints, edge to edge, in many places of the sheet. */
final class EvennessTints {
    /** Tints at each place. */
    static final int TINTS = 3;

    /** White on either side of a window. */
    private static final int QUIET = 24;

    private static final int MOST_IN_A_ROW = 5;

    private final SheetBuilder sheet;
    private final Grid grid;
    private int places;

    EvennessTints(SheetBuilder sheet, Grid grid) {
        this.sheet = sheet;
        this.grid = grid;
    }

    /** Side by side. */
    void across(int x, int y) {
        place(x, y, grid.patch(), 0);
    }

    /** One below the other. */
    void down(int x, int y) {
        place(x, y, 0, grid.patch());
    }

    private void place(int x, int y, int right, int below) {
        List<Ink> inks = PrinterContent.evenness(sheet.number(), ++places);
        for (int i = 0; i < inks.size(); i++) {
            sheet.patch(inks.get(i), x + i * right, y + i * below, grid.patch(), grid.patch());
        }
    }

    /** A row over the whole width with a window between each two places. */
    void row(int y) {
        int p = grid.patch();
        int count = MOST_IN_A_ROW;
        while (count * TINTS * p + (count - 1) * (p + 2 * QUIET) > grid.width()) {
            count--;
        }
        for (int i = 0; i < count; i++) {
            int x = i * (grid.width() - TINTS * p) / (count - 1);
            across(x, y);
            if (i < count - 1) {
                int next = (i + 1) * (grid.width() - TINTS * p) / (count - 1);
                sheet.window((x + TINTS * p + next - p) / 2, y, p, p);
            }
        }
    }

    /**
     * A column as wide as a marker: places and markers in turn with windows where there is room.
     *
     * @param top of the room it has, and {@code height}
     */
    void column(int x, int top, int height) {
        int p = grid.patch();
        int m = SheetLayout.MARKER_PX;
        int inset = (m - p) / 2;
        int tall = TINTS * p;
        int one = m + tall + 2 * (p + 2 * QUIET);
        int markers = Math.max(1, (height - tall) / one);
        int white = height - markers * m - (markers + 1) * tall;
        if (white < 2 * QUIET) {
            sheet.window(x + inset, top, p, p);
            sheet.marker(x, top + (height - m) / 2);
            sheet.window(x + inset, top + height - p, p, p);
            return;
        }
        int gaps = 2 * markers;
        int y = top;
        for (int i = 0; i <= gaps; i++) {
            boolean marker = i % 2 == 1;
            if (marker) {
                sheet.marker(x, y);
            } else {
                down(x + inset, y);
            }
            y += marker ? m : tall;
            int gap = white * (i + 1) / gaps - white * i / gaps;
            if (i < gaps && gap >= p + 2 * QUIET) {
                sheet.window(x + inset, y + (gap - p) / 2, p, p);
            }
            y += gap;
        }
    }
}
