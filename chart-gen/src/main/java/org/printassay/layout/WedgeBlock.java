package org.printassay.layout;

import java.util.List;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Section;

/**
 * One wedge in order, edge to edge, with its levels in small numbers, a vignette over the same
 * levels to compare with, and a marker at either end.
 */
final class WedgeBlock implements Block {
    private static final int NUMBERS = 24;
    private static final int LONG_ROW = 25;
    private static final int SHORT_ROW = 19;

    /** Fewest columns that hold the wedge in two rows with markers at the ends. */
    static final int LEAST_COLUMNS = SHORT_ROW + 4;

    private final Section section;
    private final Grid grid;

    WedgeBlock(Section section, Grid grid) {
        this.section = section;
        this.grid = grid;
    }

    @Override
    public int height() {
        int vignetteRow = firstRow() == LONG_ROW ? 0 : grid.patch();
        return Type.CAPTION + NUMBERS + 2 * grid.patch() + NUMBERS + vignetteRow;
    }

    @Override
    public int markers() {
        return 2;
    }

    /** Patches of the first row; the other levels stand in the second. */
    private int firstRow() {
        return grid.columns() - 4 >= LONG_ROW ? LONG_ROW : SHORT_ROW;
    }

    @Override
    public void draw(SheetBuilder sheet, int y) {
        boolean dark = section == Section.SHADOWS;
        int p = grid.patch();
        List<Ink> inks = PaperContent.wedge(section, 0);
        int first = firstRow();
        int left = (grid.width() - first * p) / 2;
        int top = y + Type.CAPTION + NUMBERS;
        Type.caption(
                sheet, left, y, dark ? sheet.captions().shadows() : sheet.captions().highlights());
        for (int i = 0; i < inks.size(); i++) {
            boolean upper = i < first;
            int x = left + (upper ? i : i - first) * p;
            sheet.patch(inks.get(i), x, upper ? top : top + p, p, p);
            int baseline = upper ? top - 7 : top + 2 * p + 20;
            String level = String.valueOf(inks.get(i).rgb().g());
            sheet.text(x + p / 2.0, baseline, level, Type.NUMBER_PT, false, 0, Type.GREY);
        }
        int second = inks.size() - first;
        int from = dark ? 0 : 255;
        int to = dark ? 48 : 207;
        if (first == LONG_ROW) {
            int x = left + second * p;
            int width = (first - second) * p;
            sheet.draw(new Artwork.Vignette(sheet.rect(x, top + p, width, p), from, to));
            smooth(sheet, x + width, top + 2 * p + 20);
        } else {
            int below = top + 2 * p + NUMBERS;
            sheet.draw(new Artwork.Vignette(sheet.rect(left, below, first * p, p), from, to));
        }
        int markerTop = top + p - SheetLayout.MARKER_PX / 2;
        sheet.marker(0, markerTop);
        sheet.marker(grid.width() - SheetLayout.MARKER_PX, markerTop);
    }

    private void smooth(SheetBuilder sheet, int right, int baseline) {
        String text = section == Section.SHADOWS ? "0 to 48, smooth" : "255 to 207, smooth";
        sheet.text(right, baseline, text, Type.NUMBER_PT, false, 1, Type.GREY);
    }
}
