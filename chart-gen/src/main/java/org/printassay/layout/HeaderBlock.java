package org.printassay.layout;

import org.printassay.chart.Artwork;
import org.printassay.colour.Rgb8;
import org.printassay.recipe.Recipe;

/**
 * Top of every sheet: marker and sheet code, what the sheet is, lines to write on, and the white
 * counterparts of the stray-light patches.
 */
final class HeaderBlock {
    static final int HEIGHT = 500;
    static final int MARKERS = 2;

    private static final int TITLE_LEFT = SheetLayout.CODE_RIGHT_PX + SheetLayout.CODE_PX + 60;

    /** Lines to write on end here, in patches. */
    private static final int FORM_COLUMNS = 16;

    private final Grid grid;
    private final Recipe recipe;
    private final String chartId;

    HeaderBlock(Grid grid, Recipe recipe, String chartId) {
        this.grid = grid;
        this.recipe = recipe;
        this.chartId = chartId;
    }

    void draw(SheetBuilder sheet, int sheets, int print) {
        int p = grid.patch();
        int right = grid.width() - SheetLayout.MARKER_PX;
        sheet.marker(0, 0);
        sheet.code(SheetLayout.CODE_RIGHT_PX, 0);
        sheet.marker(right, 0);
        int inset = (SheetLayout.MARKER_PX - p) / 2;
        sheet.window(inset, 158, p, p);
        sheet.window(right + inset, 158, p, p);

        sheet.text(TITLE_LEFT, 34, "Full paper sheet", 11, true, -1, Type.DARK);
        line(sheet, 82, "Chart " + chartId + "   Sheet " + sheet.number() + " of " + sheets);
        line(sheet, 118, "Print " + print + "   Colours: " + recipe.space().title());
        line(sheet, 154, "Print at 100 %, no scaling, like your pictures");
        line(sheet, 190, "This edge up");
        arrow(sheet, TITLE_LEFT + 190, 164, 190);

        int formRight = FORM_COLUMNS * p;
        field(sheet, 0, formRight, 300, "Paper");
        field(sheet, 0, formRight, 362, "Printer");
        field(sheet, 0, formRight, 424, "Route");
        int third = formRight / 3;
        field(sheet, 0, third - 20, 486, "Date");
        field(sheet, third, 2 * third - 20, 486, "Time");
        field(sheet, 2 * third, formRight, 486, "Edge fed first");
        if (sheet.number() == 1) {
            strayLight(sheet);
        }
    }

    private void strayLight(SheetBuilder sheet) {
        int p = grid.patch();
        int left = (FORM_COLUMNS + 2) * p;
        int step = (grid.width() - left - 2 * p) * 2 / 7;
        int low = HEIGHT - p - p / 2;
        int[] levels = {StrayLight.MID, StrayLight.DARK, StrayLight.BLACK};
        for (int i = 0; i < levels.length; i++) {
            sheet.patch(StrayLight.onWhite(levels[i], 1), left + i * step, 150, p, p);
            sheet.patch(StrayLight.onWhite(levels[i], 2), left + i * step + step / 2, low, p, p);
        }
    }

    private static void line(SheetBuilder sheet, int baseline, String text) {
        sheet.text(TITLE_LEFT, baseline, text, 6.6, false, -1, Type.DARK);
    }

    private static void field(SheetBuilder sheet, int left, int right, int y, String label) {
        sheet.text(left, y - 5, label, Type.CAPTION_PT, false, -1, Type.GREY);
        sheet.rule(left, y + 4, right, y + 4, 0.15, Type.LINE);
    }

    private static void arrow(SheetBuilder sheet, int x, int top, int bottom) {
        Rgb8 rgb = Rgb8.grey(Type.DARK);
        double width = 0.25;
        sheet.draw(new Artwork.Rule(sheet.point(x, top), sheet.point(x, bottom), width, rgb));
        sheet.draw(new Artwork.Rule(sheet.point(x, top), sheet.point(x - 8, top + 10), width, rgb));
        sheet.draw(new Artwork.Rule(sheet.point(x, top), sheet.point(x + 8, top + 10), width, rgb));
    }
}
