package org.printassay.layout;

import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;

/**
 * Facts that hold on every sheet of every page size, for whoever looks for a sheet in a scan. The
 * sheet code always stands in the same place beside the sheet's first marker, so that one marker is
 * enough to find and straighten it.
 */
public final class SheetLayout {
    /** Dots per inch of the layout grid. */
    public static final int DOTS_PER_INCH = 300;

    /** Modules along a marker's side, black border included. */
    public static final int MARKER_MODULES = 8;

    /** Side of a marker's black square in dots: 14 a module. */
    static final int MARKER_PX = 14 * MARKER_MODULES;

    /** Side of a marker's black square, about 9.5 mm. */
    public static final double MARKER_MM = mm(MARKER_PX);

    /** Modules along the side of the sheet code: always version 3 of ISO/IEC 18004. */
    public static final int CODE_MODULES = 29;

    /** Version of the symbol (ISO/IEC 18004) that has {@link #CODE_MODULES}. */
    public static final int CODE_VERSION = 3;

    /** Side of the sheet code in dots: 8 a module. */
    static final int CODE_PX = 8 * CODE_MODULES;

    /** Side of the sheet code without its quiet zone, about 19.6 mm. */
    public static final double CODE_MM = mm(CODE_PX);

    /** From the left edge of the first marker to the left edge of the code, dots. */
    static final int CODE_RIGHT_PX = MARKER_PX + 64;

    /** From the left edge of the sheet's first marker to the left edge of the sheet code. */
    public static final double CODE_RIGHT_OF_MARKER_MM = mm(CODE_RIGHT_PX);

    /** From the top edge of the sheet's first marker to the top edge of the sheet code. */
    public static final double CODE_BELOW_MARKER_MM = 0;

    /** Sheet n has the marker ids from n times this. */
    public static final int MARKER_IDS_PER_SHEET = 100;

    /** Place, among the ids of its sheet, of the marker that the sheet code stands beside. */
    public static final int CODE_MARKER_ID_OFFSET = 0;

    private SheetLayout() {}

    /** The marker id of a place on a sheet (1 to 9). */
    public static int markerId(int sheet, int place) {
        return sheet * MARKER_IDS_PER_SHEET + place;
    }

    /** The sheet that a marker id belongs to; 0 or more than a chart has when it is not ours. */
    public static int sheetOfMarker(int id) {
        return id / MARKER_IDS_PER_SHEET;
    }

    /** Whether the sheet code stands beside this marker. */
    public static boolean isCodeMarker(int id) {
        return id >= MARKER_IDS_PER_SHEET && id % MARKER_IDS_PER_SHEET == CODE_MARKER_ID_OFFSET;
    }

    /** The page less its margins, in whole dots. */
    static RectMm printable(Recipe recipe) {
        double width = recipe.page().widthMm() - recipe.margins().left() - recipe.margins().right();
        double height =
                recipe.page().heightMm() - recipe.margins().top() - recipe.margins().bottom();
        return new RectMm(
                recipe.margins().left(),
                recipe.margins().top(),
                mm(dotsIn(Math.max(0, width))),
                mm(dotsIn(Math.max(0, height))));
    }

    /** Millimetres of dots. */
    static double mm(double dots) {
        return dots * 25.4 / DOTS_PER_INCH;
    }

    /** Dots of millimetres, not rounded. */
    static double dots(double mm) {
        return mm * DOTS_PER_INCH / 25.4;
    }

    /** Whole dots that fit into millimetres; a hair of slack so that 25.4 mm are 300 dots. */
    static int dotsIn(double mm) {
        return (int) Math.floor(mm * DOTS_PER_INCH / 25.4 + 1e-6);
    }
}
