package org.printassay.layout;

import java.util.List;

/** Long plain tints, edge to edge, in two halves with markers between. */
final class TintsBlock {
    /** Tints of each half. */
    static final int TINTS = 7;

    /** White beside a marker, more than one of its modules. */
    private static final int QUIET = 24;

    private static final int MARKER = SheetLayout.MARKER_PX;

    /** Between the halves. */
    private static final int GUTTER = MARKER + 2 * QUIET;

    /** Column of markers at the edge of the sheet. */
    private static final int EDGE = MARKER + QUIET;

    private final SheetBuilder sheet;
    private final Grid grid;

    TintsBlock(SheetBuilder sheet, Grid grid) {
        this.sheet = sheet;
        this.grid = grid;
    }

    /** Width of a tint along the page. */
    static int alongWidth(Grid grid) {
        return (half(grid) - EDGE) / TINTS;
    }

    private static int half(Grid grid) {
        return (grid.width() - GUTTER) / 2;
    }

    /** Tints across the page below a caption, each so high. */
    void across(int y, int height) {
        int p = grid.patch();
        caption(0, y, "Tints across the page. Do fine lines run down through several?");
        int top = y + Type.CAPTION;
        int half = half(grid);
        List<Ink> left = PrinterContent.neutrals("A");
        List<Ink> right = PrinterContent.colours("A");
        for (int i = 0; i < TINTS; i++) {
            sheet.patch(left.get(i), 0, top + i * height, half, height);
            sheet.patch(right.get(i), grid.width() - half, top + i * height, half, height);
        }
        int middle = (grid.width() - MARKER) / 2;
        int inset = (MARKER - p) / 2;
        int whole = TINTS * height;
        sheet.window(middle + inset, top, p, p);
        sheet.marker(middle, top + (whole - MARKER) / 2);
        sheet.window(middle + inset, top + whole - p, p, p);
    }

    /** With how to look at it where there is room. */
    private void caption(int x, int y, String text) {
        String both = text + " Look from 25 cm in 2000 lux.";
        boolean room = Captions.fits(both, grid.width() - 2 * EDGE);
        Type.caption(sheet, x, y, room ? both : text);
    }

    /** Tints along the page below a caption, each so long. */
    void along(int y, int length, EvennessTints even) {
        int width = alongWidth(grid);
        int rest = half(grid) - EDGE - width * TINTS;
        int first = EDGE + rest / 2;
        caption(first, y, "Tints along the page. Do fine lines or bands run across several?");
        int top = y + Type.CAPTION;
        List<Ink> left = PrinterContent.neutrals("L");
        List<Ink> right = PrinterContent.colours("L");
        int second = grid.width() - half(grid) + rest / 2;
        for (int i = 0; i < TINTS; i++) {
            sheet.patch(left.get(i), first + i * width, top, width, length);
            sheet.patch(right.get(i), second + i * width, top, width, length);
        }
        even.column(0, top, length);
        even.column((grid.width() - MARKER) / 2, top, length);
        even.column(grid.width() - MARKER, top, length);
    }
}
