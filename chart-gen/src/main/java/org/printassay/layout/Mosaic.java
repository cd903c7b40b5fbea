package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Panels of patches laid like bricks: every other row is shifted by half a patch, so that each
 * patch touches six others and no seam runs through.
 */
final class Mosaic {
    private Mosaic() {}

    /** How many patches a panel of some rows holds. */
    static int cells(int rows, int columns) {
        return rows * columns - rows / 2;
    }

    /** The places of a panel whose top edge is at y. */
    static List<Cell> panel(Grid grid, int y, int rows) {
        List<Cell> cells = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            int shift = row % 2;
            int count = grid.columns() - shift;
            for (int i = 0; i < count; i++) {
                int x = i * grid.patch() + shift * grid.patch() / 2;
                cells.add(new Cell(x, y + row * grid.patch(), i == 0 || i == count - 1));
            }
        }
        return cells;
    }
}
