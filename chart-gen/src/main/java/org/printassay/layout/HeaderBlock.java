package org.printassay.layout;

import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Artwork;

/**
 * Top of every sheet: marker and sheet code, what the sheet is, lines to write on, and the white
 * counterparts of the stray-light patches.
 */
final class HeaderBlock {
    static final int HEIGHT = 540;
    static final int MARKERS = 2;

    private static final int TITLE_LEFT = SheetLayout.CODE_RIGHT_PX + SheetLayout.CODE_PX + 60;

    /** Widest lines to write on, in patches. */
    private static final int FORM_COLUMNS = 16;

    /** Columns that are kept for the greys on white beside the lines. */
    private static final int GREY_COLUMNS = 13;

    /** Width of a character of bold type, dots a point, about. */
    private static final double DOTS_PER_POINT = 2.6;

    /** Sheets less wide have no room beside the title for how to look at them. */
    private static final int VIEWING_WIDTH = 1600;

    private final Grid grid;
    private final Recipe recipe;
    private final String chartId;

    HeaderBlock(Grid grid, Recipe recipe, String chartId) {
        this.grid = grid;
        this.recipe = recipe;
        this.chartId = chartId;
    }

    /**
     * Draws it.
     *
     * @param strayLight whether the sheet has the black field, whose counterparts stand here
     */
    void draw(SheetBuilder sheet, int sheets, int print, boolean strayLight) {
        int p = grid.patch();
        top(sheet, grid, recipe, chartId, sheets, print);

        int formRight = formColumns() * p;
        field(sheet, 0, formRight, 318, "Paper");
        field(sheet, 0, formRight, 388, "Printer");
        field(sheet, 0, formRight, 458, "Route");
        int third = formRight / 3;
        field(sheet, 0, third - 20, 528, "Date");
        field(sheet, third, 2 * third - 20, 528, "Time");
        field(sheet, 2 * third, formRight, 528, "Edge fed first");
        if (strayLight) {
            strayLight(sheet);
        }
    }

    /** Marker, sheet code and marker with windows below, and what the sheet is. */
    static void top(
            SheetBuilder sheet, Grid grid, Recipe recipe, String chartId, int sheets, int print) {
        int p = grid.patch();
        int right = grid.width() - SheetLayout.MARKER_PX;
        sheet.marker(0, 0);
        sheet.code(SheetLayout.CODE_RIGHT_PX, 0);
        sheet.marker(right, 0);
        int inset = (SheetLayout.MARKER_PX - p) / 2;
        sheet.window(inset, 158, p, p);
        sheet.window(right + inset, 158, p, p);

        String title = recipe.title();
        double room = (right - TITLE_LEFT) / (DOTS_PER_POINT * title.length());
        sheet.text(TITLE_LEFT, 34, title, Math.min(11, room), true, -1, Type.DARK);
        line(sheet, 84, "Chart " + chartId + ", sheet " + sheet.number() + " of " + sheets);
        line(sheet, 117, "Print " + print + ", colours in " + recipe.space().title());
        line(sheet, 150, "Print at 100 %, no scaling");
        line(sheet, 183, "Same route as your pictures");
        arrow(sheet, TITLE_LEFT + 8, 204, 232);
        sheet.text(TITLE_LEFT + 28, 230, "This edge up", 6.6, false, -1, Type.DARK);
        List<String> viewing = sheet.captions().viewing();
        for (int i = 0; i < viewing.size() && grid.width() >= VIEWING_WIDTH; i++) {
            int y = 26 + 28 * i;
            sheet.text(right - 32, y, viewing.get(i), Type.CAPTION_PT, false, 1, Type.GREY);
        }
    }

    private int formColumns() {
        return Math.min(FORM_COLUMNS, grid.columns() - GREY_COLUMNS);
    }

    /** Two rows, far from and near to the mosaic, staggered like its bricks. */
    private void strayLight(SheetBuilder sheet) {
        int p = grid.patch();
        int left = (formColumns() + 2) * p;
        int right = grid.width() - SheetLayout.MARKER_PX / 2 - p / 2;
        int step = (right - left) * 2 / 7;
        int low = HEIGHT - p - p / 4;
        Type.caption(sheet, left, 112, "Greys on white");
        int[] levels = {StrayLight.MID, StrayLight.DARK, StrayLight.BLACK};
        for (int i = 0; i < levels.length; i++) {
            sheet.patch(StrayLight.onWhite(levels[i], 1), left + i * step, 158, p, p);
            sheet.patch(StrayLight.onWhite(levels[i], 2), left + i * step + step / 2, low, p, p);
        }
    }

    private static void line(SheetBuilder sheet, int baseline, String text) {
        sheet.text(TITLE_LEFT, baseline, text, 6.6, false, -1, Type.DARK);
    }

    /** A line to write on, with what to write. */
    static void field(SheetBuilder sheet, int left, int right, int y, String label) {
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
