package org.printassay.layout;

import java.util.List;
import org.printassay.chart.Artwork;
import org.printassay.chart.Section;
import org.printassay.colour.Rgb8;

/**
 * The middle of the sheet: six hue ramps, the black field with its stray-light patches, and two
 * slanted edges, with columns of markers and windows between them.
 */
final class MiddleBlock implements Block {
    static final int HUE_COLUMNS = 8;
    static final int FIELD_COLUMNS = 9;
    static final int EDGE_COLUMNS = 8;

    /** Columns of the three parts without what stands between. */
    static final int COLUMNS = HUE_COLUMNS + FIELD_COLUMNS + EDGE_COLUMNS;

    /** Fewest columns that hold the three parts with markers between. */
    static final int LEAST_COLUMNS = COLUMNS + 4;

    private static final int ROWS = 6;
    private static final double SLANT_DEGREES = 5;

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
        return 4;
    }

    @Override
    public void draw(SheetBuilder sheet, int y) {
        int p = grid.patch();
        int top = y + Type.CAPTION;
        int edgeLeft = grid.width() - EDGE_COLUMNS * p;
        int fieldLeft = (grid.width() - FIELD_COLUMNS * p) / 2;
        hues(sheet, 0, y);
        field(sheet, fieldLeft, y);
        edges(sheet, edgeLeft, y);
        int bottom = top + ROWS * p - SheetLayout.MARKER_PX;
        int windowTop = top + (ROWS * p - p) / 2;
        int windowInset = (SheetLayout.MARKER_PX - p) / 2;
        for (int x : new int[] {grid.innerMarkerLeft(), grid.innerMarkerRight()}) {
            sheet.marker(x, top);
            sheet.marker(x, bottom);
            sheet.window(x + windowInset, windowTop, p, p);
        }
    }

    private void hues(SheetBuilder sheet, int x, int y) {
        int p = grid.patch();
        Type.caption(sheet, x, y, "Colours: paper, full, black");
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
        int p = grid.patch();
        int top = y + Type.CAPTION;
        Type.caption(sheet, x, y, "Black, and greys on black");
        sheet.draw(
                new Artwork.Field(sheet.rect(x, top, FIELD_COLUMNS * p, ROWS * p), Rgb8.grey(0)));
        sheet.patch(
                new Ink("K1", Section.SOLID_BLACK, Rgb8.grey(0)),
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

    /** A dark bar on light and a light bar on dark, turned opposite ways. */
    private void edges(SheetBuilder sheet, int x, int y) {
        int p = grid.patch();
        int top = y + Type.CAPTION;
        Type.caption(sheet, x, y, "Sharpness");
        for (int side = 0; side < 2; side++) {
            int left = x + side * 4 * p;
            Rgb8 light = Rgb8.grey(200);
            Rgb8 dark = Rgb8.grey(64);
            sheet.draw(
                    new Artwork.SlantedSquare(
                            sheet.rect(left, top, 4 * p, ROWS * p),
                            sheet.rect(left + p, top + p, 2 * p, 4 * p),
                            side == 0 ? SLANT_DEGREES : -SLANT_DEGREES,
                            side == 0 ? light : dark,
                            side == 0 ? dark : light));
        }
    }
}
