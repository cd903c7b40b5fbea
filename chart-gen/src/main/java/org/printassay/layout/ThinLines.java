package org.printassay.layout;

import org.printassay.colour.Rgb8;
import org.printassay.sheet.Artwork;

/**
 * Thin lines for the eye: four widths, level and upright, black on paper and paper in black. Lines
 * begin on whole dots of 1/300 inch, so that only the thinnest is softened in a 300 dpi picture.
 */
final class ThinLines {
    private static final double[] WIDTHS = {0.5, 1, 2, 3};
    private static final String[] NAMES = {"1/600", "1/300", "2/300", "3/300"};
    private static final int GROUPS = 4 * WIDTHS.length;
    private static final int LINES = 5;
    private static final int BETWEEN = 26;
    private static final int LARGEST = 108;
    private static final int NUMBERS = 26;

    private ThinLines() {}

    static int height(Grid grid) {
        return Type.CAPTION + side(grid) + NUMBERS;
    }

    private static int side(Grid grid) {
        return Math.min(LARGEST, (grid.width() + BETWEEN) / GROUPS - BETWEEN);
    }

    static void draw(SheetBuilder sheet, Grid grid, int y) {
        int side = side(grid);
        int step = side + BETWEEN;
        int left = (grid.width() - GROUPS * step + BETWEEN) / 2;
        int top = y + Type.CAPTION;
        Type.caption(sheet, left, y, "Thin lines, in parts of an inch. Which are whole?");
        for (int i = 0; i < GROUPS; i++) {
            int which = i / 2 % WIDTHS.length;
            boolean inverse = i >= GROUPS / 2;
            int x = left + i * step;
            if (inverse) {
                sheet.draw(new Artwork.Field(sheet.rect(x, top, side, side), Rgb8.grey(0)));
            }
            lines(sheet, x, top, side, WIDTHS[which], i % 2 == 0, inverse ? 255 : 0);
            if (i % 2 == 0) {
                double middle = x + side + BETWEEN / 2.0;
                int base = top + side + 20;
                sheet.text(middle, base, NAMES[which], Type.NUMBER_PT, false, 0, Type.GREY);
            }
        }
    }

    private static void lines(
            SheetBuilder sheet, int x, int y, int side, double width, boolean level, int grey) {
        int step = side / (LINES + 1);
        double mm = SheetLayout.mm(width);
        for (int i = 1; i <= LINES; i++) {
            double at = i * step + width / 2;
            if (level) {
                sheet.rule(x, y + at, x + side, y + at, mm, grey);
            } else {
                sheet.rule(x + at, y, x + at, y + side, mm, grey);
            }
        }
    }
}
