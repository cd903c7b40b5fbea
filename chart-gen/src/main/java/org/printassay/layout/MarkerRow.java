package org.printassay.layout;

import org.printassay.colour.Rgb8;
import org.printassay.sheet.Section;

/** A row of four markers with a window between each two, and a solid black on further sheets. */
final class MarkerRow implements Block {
    private final Grid grid;
    private final boolean black;

    /**
     * @param black whether it holds a solid black, for sheets that lack the black field
     */
    MarkerRow(Grid grid, boolean black) {
        this.grid = grid;
        this.black = black;
    }

    @Override
    public int height() {
        return SheetLayout.MARKER_PX;
    }

    @Override
    public int markers() {
        return 4;
    }

    @Override
    public void draw(SheetBuilder sheet, int y) {
        int p = grid.patch();
        int step = (grid.width() - SheetLayout.MARKER_PX) / 3;
        int top = y + (SheetLayout.MARKER_PX - p) / 2;
        for (int i = 0; i < 4; i++) {
            sheet.marker(i * step, y);
            int middle = i * step + (step + SheetLayout.MARKER_PX) / 2;
            if (i == 1 && black) {
                Ink ink = new Ink("K" + sheet.number(), Section.SOLID_BLACK, Rgb8.grey(0));
                sheet.patch(ink, middle - p, top, 2 * p, p);
            } else if (i < 3) {
                sheet.window(middle - p / 2, top, p, p);
            }
        }
    }
}
