package org.printassay.layout;

import java.util.List;
import java.util.Optional;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * The printer sheet, layout version 1: one sheet whatever the page, the tints grow with it.
 *
 * <p>From top to bottom: header with the question which edge went in first; a row of evenness
 * tints; tints across the page in two halves; a row of markers and evenness tints; tints along the
 * page in two halves with columns of markers and evenness tints beside and between; thin lines; a
 * last row of markers and evenness tints. Drivers turn pages, so the tints stand both ways.
 */
public final class PrinterLayout implements ChartLayout {
    private static final int LARGEST_PATCH = 84;
    private static final int SMALLEST_PATCH = 72;

    /** White between two parts. */
    private static final int GAP = 32;

    /** Tints along the page are at least 42 mm long: most steps of the paper show twice. */
    private static final int SHORTEST_TINT = 500;

    /** Tints are at least 5 mm wide: enough pixels to average over grain. */
    private static final int NARROWEST_TINT = 57;

    private static final int WIDEST_ACROSS = 96;

    /** What the width of the tints across is of the height that both share. */
    private static final double ACROSS_SHARE = 1 / 30.0;

    private final Recipe recipe;
    private final Grid grid;
    private final int across;
    private final int along;

    /**
     * A layout that fits.
     *
     * @param across height of one of the tints across the page
     * @param along length of the tints along the page
     */
    private PrinterLayout(Recipe recipe, Grid grid, int across, int along) {
        this.recipe = recipe;
        this.grid = grid;
        this.across = across;
        this.along = along;
    }

    /** The layout of a recipe; nothing when the page is too small. */
    public static Optional<PrinterLayout> of(Recipe recipe) {
        RectMm printable = SheetLayout.printable(recipe);
        int width = SheetLayout.dotsIn(printable.width());
        int height = SheetLayout.dotsIn(printable.height());
        for (int patch = LARGEST_PATCH; patch >= SMALLEST_PATCH; patch -= 2) {
            Grid grid = new Grid(patch, width / patch, height);
            int shared = height - fixedHeight(grid);
            int across =
                    Math.min(
                            WIDEST_ACROSS,
                            Math.max(NARROWEST_TINT, (int) Math.round(shared * ACROSS_SHARE)));
            int along = shared - across * TintsBlock.TINTS;
            boolean fits =
                    along >= SHORTEST_TINT
                            && MarkedRow.fits(grid)
                            && TintsBlock.alongWidth(grid) >= NARROWEST_TINT;
            if (fits) {
                return Optional.of(new PrinterLayout(recipe, grid, across, along));
            }
        }
        return Optional.empty();
    }

    /** All but the tints. */
    private static int fixedHeight(Grid grid) {
        return PrinterHeader.HEIGHT
                + (GAP + grid.patch())
                + (GAP + Type.CAPTION)
                + (GAP + SheetLayout.MARKER_PX)
                + (GAP + Type.CAPTION)
                + (GAP + ThinLines.height(grid))
                + (GAP + SheetLayout.MARKER_PX);
    }

    @Override
    public int sheets() {
        return 1;
    }

    @Override
    public int patchDots() {
        return grid.patch();
    }

    @Override
    public List<Sheet> build(String chartId, int print, List<String> codeTexts) {
        RectMm page = new RectMm(0, 0, recipe.page().widthMm(), recipe.page().heightMm());
        RectMm printable = SheetLayout.printable(recipe);
        int left = (SheetLayout.dotsIn(printable.width()) - grid.width()) / 2;
        SheetBuilder sheet = new SheetBuilder(1, page, printable, left);
        PrinterHeader.draw(sheet, grid, recipe, chartId, print);
        EvennessTints even = new EvennessTints(sheet, grid);
        int y = PrinterHeader.HEIGHT + GAP;
        even.row(y);
        y += grid.patch() + GAP;
        TintsBlock tints = new TintsBlock(sheet, grid);
        tints.across(y, across);
        y += Type.CAPTION + TintsBlock.TINTS * across + GAP;
        MarkedRow.draw(sheet, grid, even, y);
        y += SheetLayout.MARKER_PX + GAP;
        tints.along(y, along, even);
        y += Type.CAPTION + along + GAP;
        ThinLines.draw(sheet, grid, y);
        MarkedRow.draw(sheet, grid, even, grid.height() - SheetLayout.MARKER_PX);
        return List.of(sheet.build(codeTexts.get(0)));
    }
}
