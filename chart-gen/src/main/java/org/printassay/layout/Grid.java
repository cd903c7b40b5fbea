package org.printassay.layout;

/**
 * The grid that everything on a sheet stands on.
 *
 * @param patch side of a patch in dots, even so that half a patch is whole
 * @param columns patches across the content
 * @param height height of the printable area in dots
 */
record Grid(int patch, int columns, int height) {
    /** Width of the content in dots. */
    int width() {
        return patch * columns;
    }

    /** Free columns between the three parts of the middle block. */
    int markerColumns() {
        return (columns - MiddleBlock.COLUMNS) / 2;
    }

    /** Left edge of the inner markers in the left half. */
    int innerMarkerLeft() {
        if (columns < MiddleBlock.LEAST_COLUMNS) {
            return (width() - SheetLayout.MARKER_PX) / 3;
        }
        int free = markerColumns() * patch;
        return MiddleBlock.HUE_COLUMNS * patch + (free - SheetLayout.MARKER_PX) / 2;
    }

    /** Left edge of the inner markers in the right half: the mirror. */
    int innerMarkerRight() {
        return width() - innerMarkerLeft() - SheetLayout.MARKER_PX;
    }
}
