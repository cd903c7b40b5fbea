package org.printassay.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.problem.Problem;
import org.printassay.recipe.Design;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Part;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/**
 * Sections one after the other in a frame of markers, layout version 1: for edited recipes and the
 * short sheet. What does not fit on a sheet goes on to the next; each has header, sheet code,
 * markers, windows and a black of its own.
 */
public final class FrameLayout implements ChartLayout {
    /** Room for the numbers of the rows on the short sheet, which is measured by hand. */
    private static final int ROW_NUMBERS = 28;

    private static final double ROW_NUMBER_PT = 5.8;

    /** More sheets than this have no number in the sheet code. */
    private static final int MOST_SHEETS = 9;

    private final Recipe recipe;
    private final Frame frame;
    private final List<Placed> placed;
    private final int sheets;

    private FrameLayout(Recipe recipe, Frame frame, List<Placed> placed, int sheets) {
        this.recipe = recipe;
        this.frame = frame;
        this.placed = placed;
        this.sheets = sheets;
    }

    /**
     * Some rows of a section at their place.
     *
     * @param index of the section in the design
     * @param from first of its rows, {@code to} the one after the last
     */
    private record Placed(int index, PartBlock block, int from, int to, int sheet, int x, int y) {
        int right() {
            return x + block.width();
        }

        int bottom() {
            return y + block.height(to - from);
        }

        boolean overlaps(Placed other) {
            return sheet == other.sheet
                    && x < other.right()
                    && other.x < right()
                    && y < other.bottom()
                    && other.y < bottom();
        }
    }

    /**
     * The layout of a recipe; nothing when the page is too small.
     *
     * @throws Problem usage, when sections with a place overlap or reach beyond the sheet; names
     *     the section as the recipe file does
     */
    static Optional<FrameLayout> of(Recipe recipe, Design design) throws Problem {
        refuseTooMany(design);
        Optional<Frame> fitting = Frame.of(recipe);
        if (fitting.isEmpty()) {
            return Optional.empty();
        }
        Frame frame = fitting.get();
        List<PartBlock> blocks = PartBlock.all(design, recipe.space());
        boolean fixed = design.parts().stream().anyMatch(part -> part.place() != null);
        List<Placed> placed =
                fixed
                        ? fixed(recipe, frame, design, blocks)
                        : flow(frame, left(recipe, frame), blocks);
        if (placed == null) {
            return Optional.empty();
        }
        int sheets = placed.stream().mapToInt(Placed::sheet).max().orElse(1);
        return Optional.of(new FrameLayout(recipe, frame, placed, sheets));
    }

    /** Before anything is made of them. */
    private static void refuseTooMany(Design design) throws Problem {
        long patches = design.parts().stream().mapToLong(PartContent::count).sum();
        if (patches > Design.MOST_PATCHES) {
            throw Problem.usage(
                    "/sections: hold "
                            + patches
                            + " patches; "
                            + Design.MOST_PATCHES
                            + " are the most.");
        }
    }

    /**
     * Why a recipe has no layout on its page.
     *
     * @param text a sentence that names the section as the recipe file does, where one is in the
     *     way
     * @param remedy what helps when no larger page does
     */
    public record Obstacle(String text, String remedy) {}

    /** What is in the way of a recipe that {@link #of} has no layout for. */
    public static Obstacle obstacle(Recipe recipe, Design design) {
        String page = "page " + recipe.page().name() + " less its margins";
        Optional<Frame> fitting = Frame.of(recipe);
        if (fitting.isEmpty()) {
            return new Obstacle(
                    page + " is too small for the header and the markers.", "Use smaller margins.");
        }
        Frame frame = fitting.get();
        int width = frame.right() - left(recipe, frame);
        int height = frame.bottom() - frame.top();
        List<PartBlock> blocks = PartBlock.all(design, recipe.space());
        for (int i = 0; i < blocks.size(); i++) {
            PartBlock block = blocks.get(i).inWidth(width);
            boolean wide = block.width() > width;
            if (wide || block.rowsIn(height) < 1) {
                return new Obstacle(
                        named(i, blocks)
                                + " is "
                                + length(wide ? block.width() : block.height(1))
                                + (wide ? " wide; " : " high with its caption; ")
                                + page
                                + " and markers has room for "
                                + length(wide ? width : height)
                                + ".",
                        "Make its patches smaller"
                                + (wide && block.part().columns() > 1
                                        ? ", or its columns fewer."
                                        : "."));
            }
        }
        return new Obstacle(
                "the sections take more than " + MOST_SHEETS + " sheets on " + page + ".",
                "Make the patches smaller or fewer.");
    }

    private static String length(int dots) {
        return PageSize.plain(Math.round(10 * SheetLayout.mm(dots)) / 10.0) + " mm";
    }

    /** Every section where its recipe puts it. */
    private static List<Placed> fixed(
            Recipe recipe, Frame frame, Design design, List<PartBlock> blocks) throws Problem {
        List<Placed> all = new ArrayList<>();
        for (int i = 0; i < blocks.size(); i++) {
            Part.Place place = design.parts().get(i).place();
            if (place == null) {
                throw Problem.usage(
                        named(i, blocks)
                                + " has no place (atMm), but others have. Give every section one,"
                                + " or none.");
            }
            int x = frame.xOf(recipe, place.xMm());
            int y = frame.yOf(recipe, place.yMm());
            PartBlock block = blocks.get(i).inWidth(frame.right() - x);
            Placed one = new Placed(i, block, 0, block.rows(), place.sheet(), x, y);
            boolean inside =
                    x >= frame.left()
                            && y >= frame.top()
                            && one.right() <= frame.right()
                            && one.bottom() <= frame.bottom();
            if (!inside) {
                RectMm room = frame.room(recipe);
                throw Problem.usage(
                        named(i, blocks)
                                + " reaches beyond the room for patches, which goes from "
                                + PageSize.plain(room.x())
                                + " to "
                                + PageSize.plain(room.right())
                                + " mm across and "
                                + PageSize.plain(room.y())
                                + " to "
                                + PageSize.plain(room.bottom())
                                + " mm down the page.");
            }
            for (Placed other : all) {
                if (one.overlaps(other)) {
                    throw Problem.usage(
                            named(i, blocks)
                                    + " overlaps "
                                    + named(other.index, blocks)
                                    + " on sheet "
                                    + place.sheet()
                                    + ". Move one (atMm) or make it smaller.");
                }
            }
            all.add(one);
        }
        return all;
    }

    private static int left(Recipe recipe, Frame frame) {
        return frame.left() + (recipe.kind() == Recipe.Kind.SHORT ? ROW_NUMBERS : 0);
    }

    private static String named(int index, List<PartBlock> blocks) {
        return "/sections/" + index + " (" + blocks.get(index).key() + ")";
    }

    /** Beside each other where there is room, else below, else on the next sheet. */
    private static @Nullable List<Placed> flow(Frame frame, int left, List<PartBlock> blocks) {
        List<Placed> all = new ArrayList<>();
        int sheet = 1;
        int x = left;
        int y = frame.top();
        int shelf = 0;
        for (int i = 0; i < blocks.size(); i++) {
            PartBlock block = blocks.get(i).inWidth(frame.right() - left);
            int onFresh = block.rowsIn(frame.bottom() - frame.top());
            if (block.width() > frame.right() - left || onFresh < 1) {
                return null;
            }
            int start = 0;
            while (start < block.rows()) {
                int rest = block.rows() - start;
                int room = block.rowsIn(frame.bottom() - y);
                if (x + block.width() <= frame.right() && rest <= room) {
                    all.add(new Placed(i, block, start, block.rows(), sheet, x, y));
                    x += block.width() + Frame.GAP;
                    shelf = Math.max(shelf, block.height(rest));
                    start = block.rows();
                } else if (x > left) {
                    x = left;
                    y += shelf + Frame.GAP;
                    shelf = 0;
                } else {
                    boolean split = room >= 1 && (y == frame.top() || rest > onFresh);
                    if (split) {
                        all.add(new Placed(i, block, start, start + room, sheet, x, y));
                        start += room;
                    }
                    sheet++;
                    y = frame.top();
                    if (sheet > MOST_SHEETS) {
                        return null;
                    }
                }
            }
        }
        return all;
    }

    @Override
    public int sheets() {
        return sheets;
    }

    @Override
    public int patchDots() {
        return Frame.PATCH;
    }

    @Override
    public List<Sheet> build(String chartId, int print, List<String> codeTexts) {
        RectMm page = new RectMm(0, 0, recipe.page().widthMm(), recipe.page().heightMm());
        RectMm printable = SheetLayout.printable(recipe);
        List<Sheet> built = new ArrayList<>();
        for (int number = 1; number <= sheets; number++) {
            SheetBuilder sheet = new SheetBuilder(number, page, printable, frame.offset());
            frame.draw(sheet, recipe, chartId, sheets, print);
            for (Placed one : placed) {
                if (one.sheet == number) {
                    one.block.draw(sheet, one.x, one.y, one.from, one.to);
                }
            }
            if (recipe.kind() == Recipe.Kind.SHORT) {
                numberRows(sheet, number);
            }
            built.add(sheet.build(codeTexts.get(number - 1)));
        }
        return built;
    }

    /** Numbers beside the rows, in the order in which an instrument is led over them. */
    private void numberRows(SheetBuilder sheet, int number) {
        TreeMap<Integer, PartBlock> rows = new TreeMap<>();
        for (Placed one : placed) {
            for (int row = 0; one.sheet == number && row < one.to - one.from; row++) {
                rows.putIfAbsent(one.y + Type.CAPTION + row * one.block.patchHeight(), one.block);
            }
        }
        int row = 1;
        for (Map.Entry<Integer, PartBlock> entry : rows.entrySet()) {
            sheet.text(
                    left(recipe, frame) - 8,
                    entry.getKey() + entry.getValue().patchHeight() / 2.0 + 8,
                    String.valueOf(row++),
                    ROW_NUMBER_PT,
                    false,
                    1,
                    Type.DARK);
        }
    }
}
