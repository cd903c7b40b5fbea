package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;

/** What stands on one sheet from top to bottom, before patches are put into the mosaic. */
final class SheetPlan {
    /** Least white between two parts, dots. */
    private static final int LEAST_GAP = 32;

    private final Grid grid;
    private final Mosaic mosaic;
    private final List<Block> blocks;
    private int rows;

    SheetPlan(Grid grid, List<Block> blocks) {
        this.grid = grid;
        this.mosaic = Mosaic.of(grid);
        this.blocks = List.copyOf(blocks);
    }

    /** Height left over with the rows of the mosaic so far; negative when it does not fit. */
    int spare() {
        int used = HeaderBlock.HEIGHT + new FooterBlock(grid).height() + rows * grid.patch();
        for (Block block : blocks) {
            used += block.height();
        }
        return grid.height() - used - LEAST_GAP * gaps();
    }

    void addRow() {
        rows++;
    }

    /** Whether the black field stands here. */
    boolean holdsField() {
        return blocks.stream().anyMatch(MiddleBlock.class::isInstance);
    }

    int rows() {
        return rows;
    }

    int cells() {
        int cells = 0;
        for (int panel : panels()) {
            cells += mosaic.cells(panel);
        }
        return cells;
    }

    /** Rows of each panel; one panel above every block and one below the last. */
    List<Integer> panels() {
        int count = blocks.size() + 1;
        List<Integer> panels = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            panels.add(rows / count + (i < rows % count ? 1 : 0));
        }
        return panels;
    }

    /** Markers without those that gutters of the mosaic add. */
    int markers() {
        return HeaderBlock.MARKERS
                + FooterBlock.MARKERS
                + blocks.stream().mapToInt(Block::markers).sum();
    }

    private int gaps() {
        return (int) panels().stream().filter(panel -> panel > 0).count() + blocks.size() + 1;
    }

    /** Draws all blocks, spare height shared evenly between them, and gives the mosaic's places. */
    List<Cell> drawBlocks(SheetBuilder sheet) {
        List<Cell> cells = new ArrayList<>();
        int gaps = gaps();
        int height = spare() + LEAST_GAP * gaps;
        int y = HeaderBlock.HEIGHT;
        int passed = 0;
        int given = 0;
        List<Integer> panels = panels();
        for (int i = 0; i < panels.size(); i++) {
            if (panels.get(i) > 0) {
                passed++;
                int gap = height * passed / gaps - given;
                given += gap;
                y += gap;
                cells.addAll(mosaic.draw(sheet, y, panels.get(i)));
                y += panels.get(i) * grid.patch();
            }
            if (i < blocks.size()) {
                passed++;
                int gap = height * passed / gaps - given;
                given += gap;
                y += gap;
                blocks.get(i).draw(sheet, y);
                y += blocks.get(i).height();
            }
        }
        new FooterBlock(grid).draw(sheet);
        return cells;
    }
}
