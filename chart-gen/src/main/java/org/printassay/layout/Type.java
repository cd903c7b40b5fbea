package org.printassay.layout;

/** Sizes and shades of the small printed text. */
final class Type {
    /** Height of a caption with the room below it, dots. */
    static final int CAPTION = 34;

    /** Levels beside the wedges, points. */
    static final double NUMBER_PT = 4.4;

    /** Captions and labels, points. */
    static final double CAPTION_PT = 5.8;

    /** Level of text that is not to draw the eye. */
    static final int GREY = 96;

    /** Level of headings. */
    static final int DARK = 40;

    /** Level of lines to write on. */
    static final int LINE = 150;

    private Type() {}

    /** A caption whose block begins at y. */
    static void caption(SheetBuilder sheet, int x, int y, String text) {
        sheet.text(x, y + 22, text, CAPTION_PT, false, -1, GREY);
    }
}
