package org.printassay.layout;

import org.printassay.sheet.Artwork;

/** Bottom of every sheet: four markers, two windows, the vignette over all levels. */
final class FooterBlock {
    static final int MARKERS = 4;

    private final Grid grid;

    FooterBlock(Grid grid) {
        this.grid = grid;
    }

    int height() {
        return Math.max(SheetLayout.MARKER_PX, Type.CAPTION + grid.patch());
    }

    void draw(SheetBuilder sheet) {
        int p = grid.patch();
        int bottom = grid.height();
        int m = SheetLayout.MARKER_PX;
        int inner = grid.innerMarkerLeft();
        for (int x : new int[] {0, inner, grid.innerMarkerRight(), grid.width() - m}) {
            sheet.marker(x, bottom - m);
        }
        int windowLeft = m + p;
        sheet.window(windowLeft, bottom - p, p, p);
        sheet.window(grid.width() - windowLeft - p, bottom - p, p, p);
        int from = inner + m + p / 2;
        int width = grid.width() - 2 * from;
        int top = bottom - p;
        Type.caption(sheet, from, top - Type.CAPTION, sheet.captions().vignette());
        sheet.draw(new Artwork.Vignette(sheet.rect(from, top, width, p), 0, 255));
    }
}
