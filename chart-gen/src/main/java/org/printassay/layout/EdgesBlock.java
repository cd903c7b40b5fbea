package org.printassay.layout;

import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;

/** The slanted edges in a row of their own with a marker at either end, for narrow pages. */
final class EdgesBlock implements Block {
    /** Columns that the edges take. */
    static final int COLUMNS = 8;

    /** ISO 12233 uses edges turned by about 5 degrees. */
    private static final double SLANT_DEGREES = 5;

    /** Levels of medium contrast, so that neither side is lost in the ends of the scale. */
    private static final Rgb8 LIGHT = Rgb8.grey(200);

    private static final Rgb8 DARK = Rgb8.grey(64);

    private final Grid grid;

    EdgesBlock(Grid grid) {
        this.grid = grid;
    }

    @Override
    public int height() {
        return Type.CAPTION + MiddleBlock.ROWS * grid.patch();
    }

    @Override
    public int markers() {
        return 2;
    }

    @Override
    public void draw(SheetBuilder sheet, int y) {
        edges(sheet, grid.patch(), (grid.width() - COLUMNS * grid.patch()) / 2, y);
        int middle =
                y + Type.CAPTION + (MiddleBlock.ROWS * grid.patch() - SheetLayout.MARKER_PX) / 2;
        sheet.marker(0, middle);
        sheet.marker(grid.width() - SheetLayout.MARKER_PX, middle);
    }

    /** A dark bar on light and a light bar on dark, turned opposite ways. */
    static void edges(SheetBuilder sheet, int p, int x, int y) {
        Type.caption(sheet, x, y, sheet.captions().edges());
        squares(sheet, p, x, y + Type.CAPTION);
    }

    /** The two without words. */
    static void squares(SheetBuilder sheet, int p, int x, int top) {
        for (int side = 0; side < 2; side++) {
            int left = x + side * 4 * p;
            boolean darkBar = side == 0;
            sheet.draw(
                    new Artwork.SlantedSquare(
                            sheet.rect(left, top, 4 * p, MiddleBlock.ROWS * p),
                            sheet.rect(left + p, top + p, 2 * p, 4 * p),
                            darkBar ? SLANT_DEGREES : -SLANT_DEGREES,
                            darkBar ? LIGHT : DARK,
                            darkBar ? DARK : LIGHT));
        }
    }
}
