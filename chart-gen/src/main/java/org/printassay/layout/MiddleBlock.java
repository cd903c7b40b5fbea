package org.printassay.layout;

import java.util.List;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Section;

/**
 * The middle of the sheet: six hue ramps, the black field with its stray-light patches and, where
 * the page is wide enough, the slanted edges, with columns of markers and windows between them.
 */
final class MiddleBlock implements Block {
    static final int HUE_COLUMNS = 8;
    static final int FIELD_COLUMNS = 9;

    /** Columns of the three parts without what stands between. */
    static final int COLUMNS = HUE_COLUMNS + FIELD_COLUMNS + EdgesBlock.COLUMNS;

    /** Fewest columns that hold all three parts with markers between. */
    static final int LEAST_COLUMNS = COLUMNS + 4;

    static final int ROWS = 6;

    private final Grid grid;

    MiddleBlock(Grid grid) {
        this.grid = grid;
    }

    @Override
    public int height() {
        return Type.CAPTION + ROWS * grid.patch();
    }

    @Override
    public int markers() {
        return holdsEdges() ? 4 : 2;
    }

    @Override
    public void draw(SheetBuilder sheet, int y) {
        int p = grid.patch();
        int top = y + Type.CAPTION;
        hues(sheet, 0, y);
        int bottom = top + ROWS * p - SheetLayout.MARKER_PX;
        int windowTop = top + (ROWS * p - p) / 2;
        int windowInset = (SheetLayout.MARKER_PX - p) / 2;
        List<Integer> columns;
        if (holdsEdges()) {
            field(sheet, (grid.width() - FIELD_COLUMNS * p) / 2, y);
            EdgesBlock.edges(sheet, p, grid.width() - EdgesBlock.COLUMNS * p, y);
            columns = List.of(grid.innerMarkerLeft(), grid.innerMarkerRight());
        } else {
            int fieldLeft = grid.width() - FIELD_COLUMNS * p;
            field(sheet, fieldLeft, y);
            columns = List.of((HUE_COLUMNS * p + fieldLeft - SheetLayout.MARKER_PX) / 2);
        }
        for (int x : columns) {
            sheet.marker(x, top);
            sheet.marker(x, bottom);
            sheet.window(x + windowInset, windowTop, p, p);
        }
    }

    /** Whether the page is wide enough for the slanted edges beside the black field. */
    private boolean holdsEdges() {
        return grid.columns() >= LEAST_COLUMNS;
    }

    private void hues(SheetBuilder sheet, int x, int y) {
        int p = grid.patch();
        Type.caption(sheet, x, y, sheet.captions().hues());
        List<List<Ink>> ramps = PaperContent.hueRamps();
        for (int row = 0; row < ramps.size(); row++) {
            for (int step = 0; step < ramps.get(row).size(); step++) {
                Ink ink = ramps.get(row).get(step);
                sheet.patch(ink, x + step * p, y + Type.CAPTION + row * p, p, p);
            }
        }
    }

    /** Black, its middle left free of everything within three patches, greys to the right. */
    private void field(SheetBuilder sheet, int x, int y) {
        Type.caption(sheet, x, y, sheet.captions().black());
        greysOnBlack(sheet, x, y + Type.CAPTION, grid.patch());
    }

    /** The black of the field; further sheets and frames have one of their own beside it. */
    private static String black(SheetBuilder sheet) {
        boolean taken = sheet.patches().stream().anyMatch(patch -> patch.id().equals("K1"));
        return taken || sheet.number() > 1 ? "K" + sheet.number() + "F" : "K1";
    }

    /** The black field with its patches, its top left corner given. */
    static void greysOnBlack(SheetBuilder sheet, int x, int top, int p) {
        sheet.draw(
                new Artwork.Field(sheet.rect(x, top, FIELD_COLUMNS * p, ROWS * p), Rgb8.grey(0)));
        sheet.patch(
                new Ink(black(sheet), Section.SOLID_BLACK, Rgb8.grey(0)),
                x + 5 * p / 2,
                top + 5 * p / 2,
                p,
                p);
        sheet.patch(StrayLight.onBlack(StrayLight.MID, 1), x + 6 * p, top + 5 * p / 2, p, p);
        sheet.patch(StrayLight.onBlack(StrayLight.DARK, 1), x + 6 * p, top + p / 2, p, p);
        sheet.patch(StrayLight.onBlack(StrayLight.DARK, 2), x + 15 * p / 2, top + 4 * p, p, p);
        sheet.patch(StrayLight.onBlack(StrayLight.MID, 2), x + 15 * p / 2, top + 3 * p / 2, p, p);
        sheet.patch(StrayLight.onBlack(StrayLight.BLACK, 1), x + 11 * p / 2, top + 9 * p / 2, p, p);
    }
}
