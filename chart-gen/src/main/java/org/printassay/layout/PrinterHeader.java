package org.printassay.layout;

import org.printassay.recipe.Recipe;

/** Top of the printer sheet: what it is, lines to write on, and the question which edge went in. */
final class PrinterHeader {
    static final int HEIGHT = 540;

    /** Share of the width that the lines to write on take. */
    private static final double FORM_SHARE = 0.55;

    private static final int PAGE_WIDTH = 110;
    private static final int PAGE_HEIGHT = 140;
    private static final int BOX = 30;
    private static final int BOX_GAP = 8;

    private PrinterHeader() {}

    static void draw(SheetBuilder sheet, Grid grid, Recipe recipe, String chartId, int print) {
        HeaderBlock.top(sheet, grid, recipe, chartId, 1, print);
        int right = (int) (grid.width() * FORM_SHARE);
        HeaderBlock.field(sheet, 0, right, 318, "Paper");
        HeaderBlock.field(sheet, 0, right, 388, "Printer");
        HeaderBlock.field(sheet, 0, right, 458, "Route");
        HeaderBlock.field(sheet, 0, right / 2 - 20, 528, "Date");
        HeaderBlock.field(sheet, right / 2, right, 528, "Time");
        feed(sheet, right + 60);
    }

    /** A small page, a box to tick beside each of its edges. */
    private static void feed(SheetBuilder sheet, int left) {
        text(sheet, left, 296, "Which edge of this sheet went");
        text(sheet, left, 324, "into the printer first?");
        text(sheet, left, 352, "Tick its box.");
        int x = left + 330;
        int y = 318;
        box(sheet, x, y, PAGE_WIDTH, PAGE_HEIGHT, Type.DARK);
        sheet.text(x + PAGE_WIDTH / 2.0, y + 56, "this", Type.CAPTION_PT, false, 0, Type.GREY);
        sheet.text(x + PAGE_WIDTH / 2.0, y + 84, "edge up", Type.CAPTION_PT, false, 0, Type.GREY);
        int middle = x + (PAGE_WIDTH - BOX) / 2;
        int centre = y + (PAGE_HEIGHT - BOX) / 2;
        box(sheet, middle, y - BOX_GAP - BOX, BOX, BOX, Type.DARK);
        box(sheet, middle, y + PAGE_HEIGHT + BOX_GAP, BOX, BOX, Type.DARK);
        box(sheet, x - BOX_GAP - BOX, centre, BOX, BOX, Type.DARK);
        box(sheet, x + PAGE_WIDTH + BOX_GAP, centre, BOX, BOX, Type.DARK);
    }

    private static void text(SheetBuilder sheet, int x, int y, String text) {
        sheet.text(x, y, text, Type.CAPTION_PT, false, -1, Type.DARK);
    }

    private static void box(SheetBuilder sheet, int x, int y, int width, int height, int level) {
        double line = 0.2;
        sheet.rule(x, y, x + width, y, line, level);
        sheet.rule(x, y + height, x + width, y + height, line, level);
        sheet.rule(x, y, x, y + height, line, level);
        sheet.rule(x + width, y, x + width, y + height, line, level);
    }
}
