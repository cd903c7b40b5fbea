package org.printassay.layout;

/** A part of a sheet, as wide as the content, that stands between two panels of the mosaic. */
interface Block {
    /** Height in dots. */
    int height();

    /** How many markers it holds. */
    int markers();

    /** Draws it with its top edge at y. */
    void draw(SheetBuilder sheet, int y);
}
