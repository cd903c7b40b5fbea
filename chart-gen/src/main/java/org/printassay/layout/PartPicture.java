package org.printassay.layout;

import org.jspecify.annotations.Nullable;
import org.printassay.recipe.Part;
import org.printassay.sheet.Artwork;

/** Sections that are more than rows of patches; their size follows from the patch. */
enum PartPicture {
    /** The black field with greys on it, and the same greys on white beside it. */
    STRAY_LIGHT(15, MiddleBlock.ROWS) {
        @Override
        void draw(SheetBuilder sheet, int x, int top, int p) {
            MiddleBlock.greysOnBlack(sheet, x, top, p);
            int white = x + (MiddleBlock.FIELD_COLUMNS + 1) * p;
            int[] levels = {StrayLight.MID, StrayLight.DARK, StrayLight.BLACK};
            for (int i = 0; i < levels.length; i++) {
                int y = top + 2 * i * p;
                sheet.patch(StrayLight.onWhite(levels[i], 1), white, y, p, p);
                sheet.patch(StrayLight.onWhite(levels[i], 2), white + 3 * p, y + p, p, p);
            }
        }
    },
    /** Slanted edges. */
    EDGES(EdgesBlock.COLUMNS, MiddleBlock.ROWS) {
        @Override
        void draw(SheetBuilder sheet, int x, int top, int p) {
            EdgesBlock.squares(sheet, p, x, top);
        }
    },
    /** Dark, light and full gradient, one below the other. */
    VIGNETTES(16, 3) {
        @Override
        void draw(SheetBuilder sheet, int x, int top, int p) {
            int[][] levels = {{0, 48}, {255, 207}, {0, 255}};
            for (int i = 0; i < levels.length; i++) {
                sheet.draw(
                        new Artwork.Vignette(
                                sheet.rect(x, top + i * p, columns() * p, p),
                                levels[i][0],
                                levels[i][1]));
            }
        }
    };

    private final int columns;
    private final int rows;

    PartPicture(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
    }

    static @Nullable PartPicture of(Part.What what) {
        return switch (what) {
            case STRAY_LIGHT -> STRAY_LIGHT;
            case EDGES -> EDGES;
            case VIGNETTES -> VIGNETTES;
            default -> null;
        };
    }

    /** Width in patches. */
    int columns() {
        return columns;
    }

    /** Height in patches. */
    int rows() {
        return rows;
    }

    /**
     * Draws it.
     *
     * @param p side of a patch
     */
    abstract void draw(SheetBuilder sheet, int x, int top, int p);
}
