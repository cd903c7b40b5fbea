package org.printassay.layout;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.printassay.colour.RgbSpace;
import org.printassay.recipe.Design;
import org.printassay.recipe.Part;

/**
 * One section of an edited recipe: its patches in rows, edge to edge, below a caption; or a
 * picture, which is one row that cannot be parted.
 *
 * @param inks in order; empty for a picture
 * @param columns patches in a row; 0 when not decided
 * @param patchWidth dots, of a picture its whole width
 * @param patchHeight dots, of a picture its whole height
 */
record PartBlock(Part part, List<Ink> inks, int columns, int patchWidth, int patchHeight) {
    PartBlock {
        inks = List.copyOf(inks);
    }

    /** The sections of a design, ids unique among them. */
    static List<PartBlock> all(Design design, RgbSpace space) {
        Map<Part.What, Integer> seen = new EnumMap<>(Part.What.class);
        List<PartBlock> blocks = new ArrayList<>();
        for (Part part : design.parts()) {
            int nth = seen.merge(part.what(), 1, Integer::sum);
            int width = (int) Math.round(SheetLayout.dots(part.patchWidthMm()));
            int height = (int) Math.round(SheetLayout.dots(part.patchHeightMm()));
            PartPicture picture = PartPicture.of(part.what());
            if (picture != null) {
                blocks.add(
                        new PartBlock(
                                part,
                                List.of(),
                                1,
                                picture.columns() * width,
                                picture.rows() * height));
            } else {
                List<Ink> inks = PartContent.inks(part, nth, space);
                blocks.add(new PartBlock(part, inks, part.columns(), width, height));
            }
        }
        return blocks;
    }

    String key() {
        return part.what().key();
    }

    /** The same with as many columns as fit, rows about equally long; unless it has its own. */
    PartBlock inWidth(int room) {
        if (columns > 0) {
            return this;
        }
        int most = Math.max(1, Math.min(inks.size(), room / patchWidth));
        int rows = (inks.size() + most - 1) / most;
        int even = (inks.size() + rows - 1) / rows;
        return new PartBlock(part, inks, even, patchWidth, patchHeight);
    }

    int rows() {
        return inks.isEmpty() ? 1 : (inks.size() + columns - 1) / columns;
    }

    int width() {
        return Math.max(1, columns) * patchWidth;
    }

    /** Height of so many of its rows, caption included. */
    int height(int rows) {
        return Type.CAPTION + rows * patchHeight;
    }

    /** How many rows fit into a height. */
    int rowsIn(int room) {
        return Math.max(0, (room - Type.CAPTION) / patchHeight);
    }

    /** Draws some of its rows, from and to (excluded). */
    void draw(SheetBuilder sheet, int x, int y, int from, int to) {
        String look = PartContent.look(part.what());
        String caption = PartContent.caption(part.what());
        String both = caption + ". " + look;
        boolean room = !look.isEmpty() && Captions.fits(both, width());
        Type.caption(sheet, x, y, room ? both : caption);
        int top = y + Type.CAPTION;
        PartPicture picture = PartPicture.of(part.what());
        if (picture != null) {
            picture.draw(sheet, x, top, patchWidth / picture.columns());
            return;
        }
        int end = Math.min(inks.size(), to * columns);
        for (int i = from * columns; i < end; i++) {
            int column = i % columns;
            int row = i / columns - from;
            sheet.patch(
                    inks.get(i),
                    x + column * patchWidth,
                    top + row * patchHeight,
                    patchWidth,
                    patchHeight);
        }
    }
}
