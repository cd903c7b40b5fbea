package org.printassay.layout;

import java.util.Optional;
import org.printassay.colour.Rgb8;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/**
 * What surrounds the sections of a sheet: header, a column of markers, windows and one black at
 * either side, a row of markers at the bottom.
 *
 * @param grid of the windows; its height is that of the printable area
 * @param offset dots from the printable area's left edge to the content
 */
record Frame(Grid grid, int offset) {
    /** Side of windows and of the black, about 6 mm. */
    static final int PATCH = 72;

    /** White between two sections. */
    static final int GAP = 32;

    /** White beside a marker, more than one of its modules. */
    private static final int QUIET = 24;

    private static final int MARKER = SheetLayout.MARKER_PX;

    /** The header's text has room from this width on: about 86 mm. */
    private static final int NARROWEST = 1020;

    /** Four markers in each side column need this height. */
    private static final int LOWEST = 1500;

    /** Sheets lower than this have one line to write on instead of two. */
    private static final int LOW = 2000;

    /** Distance between markers of a side column, about. */
    private static final double MARKER_STEP = 650;

    private static final int FEWEST_BETWEEN = 3;
    private static final double BOTTOM_STEP = 900;

    static Optional<Frame> of(Recipe recipe) {
        RectMm printable = SheetLayout.printable(recipe);
        int width = SheetLayout.dotsIn(printable.width());
        int height = SheetLayout.dotsIn(printable.height());
        Grid grid = new Grid(PATCH, width / PATCH, height);
        return grid.width() < NARROWEST || height < LOWEST
                ? Optional.empty()
                : Optional.of(new Frame(grid, (width - grid.width()) / 2));
    }

    int left() {
        return MARKER + QUIET;
    }

    int right() {
        return grid.width() - left();
    }

    int top() {
        return headerHeight() + GAP;
    }

    int bottom() {
        return grid.height() - MARKER - GAP;
    }

    private int headerHeight() {
        return isLow() ? 330 : 400;
    }

    private boolean isLow() {
        return grid.height() < LOW;
    }

    /** Dots of a place on the page, to the nearest. */
    int xOf(Recipe recipe, double mm) {
        return (int) Math.round(SheetLayout.dots(mm - recipe.margins().left())) - offset;
    }

    /** Dots of a place on the page, to the nearest. */
    int yOf(Recipe recipe, double mm) {
        return (int) Math.round(SheetLayout.dots(mm - recipe.margins().top()));
    }

    /** The room for sections on the page. */
    RectMm room(Recipe recipe) {
        return new RectMm(
                recipe.margins().left() + SheetLayout.mm(offset + left()),
                recipe.margins().top() + SheetLayout.mm(top()),
                SheetLayout.mm(right() - left()),
                SheetLayout.mm(bottom() - top()));
    }

    void draw(SheetBuilder sheet, Recipe recipe, String chartId, int sheets, int print) {
        HeaderBlock.top(sheet, grid, recipe, chartId, sheets, print);
        int end = right();
        int middle = (left() + end) / 2;
        HeaderBlock.field(sheet, left(), middle - 20, 308, "Paper");
        if (isLow()) {
            HeaderBlock.field(sheet, middle, end, 308, "Printer, date");
        } else {
            HeaderBlock.field(sheet, middle, end, 308, "Printer");
            HeaderBlock.field(sheet, left(), middle - 20, 378, "Route");
            HeaderBlock.field(sheet, middle, end, 378, "Date and time");
        }
        int last = grid.height() - MARKER;
        int steps = Math.max(FEWEST_BETWEEN + 1, (int) Math.round(last / MARKER_STEP));
        int inset = (MARKER - PATCH) / 2;
        int far = grid.width() - MARKER;
        for (int i = 1; i < steps; i++) {
            int y = last * i / steps;
            sheet.marker(0, y);
            sheet.marker(far, y);
        }
        for (int i = 1; i < steps; i++) {
            int y = (last * i / steps + MARKER + last * (i + 1) / steps - PATCH) / 2;
            if (i == 1) {
                Ink black = new Ink("K" + sheet.number(), Section.SOLID_BLACK, Rgb8.grey(0));
                sheet.patch(black, inset, y, PATCH, PATCH);
            } else {
                sheet.window(inset, y, PATCH, PATCH);
            }
            sheet.window(far + inset, y, PATCH, PATCH);
        }
        int across = Math.max(3, (int) Math.round(far / BOTTOM_STEP));
        for (int i = 0; i <= across; i++) {
            sheet.marker(far * i / across, last);
            if (i < across) {
                int between = (far * i / across + MARKER + far * (i + 1) / across - PATCH) / 2;
                sheet.window(between, last + inset, PATCH, PATCH);
            }
        }
    }
}
