package org.printassay.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.sheet.Sheet;

/**
 * The full paper sheet, layout versions 1 and 2, which differ in the words printed on it.
 *
 * <p>From top to bottom: header, mosaic, shadow wedge, mosaic, middle block, mosaic, highlight
 * wedge, mosaic, footer. The patch is as large as lets everything stand on one sheet; where not
 * even the smallest does, the blocks are shared among further sheets.
 */
public final class PaperLayout implements ChartLayout {
    private static final int LARGEST_PATCH = 96;
    private static final int SMALLEST_PATCH = 72;

    /** On pages that need further sheets: more rows in a panel rather than larger patches. */
    private static final int LARGEST_WHEN_SPILT = 84;

    private static final int LEAST_MARKERS = 12;
    private static final int MOST_SHEETS = 4;

    /** Windows in the mosaic of a sheet, at least. */
    private static final int LEAST_WINDOWS = 10;

    private final Recipe recipe;
    private final Grid grid;
    private final List<SheetPlan> plans;

    private PaperLayout(Recipe recipe, Grid grid, List<SheetPlan> plans) {
        this.recipe = recipe;
        this.grid = grid;
        this.plans = plans;
    }

    /** The layout of a recipe; nothing when the page is too small. */
    public static Optional<PaperLayout> of(Recipe recipe) {
        RectMm printable = SheetLayout.printable(recipe);
        int width = SheetLayout.dotsIn(printable.width());
        int height = SheetLayout.dotsIn(printable.height());
        int patches = PaperContent.scattered(recipe.space()).size();
        for (int sheets = 1; sheets <= MOST_SHEETS; sheets++) {
            int largest = sheets == 1 ? LARGEST_PATCH : LARGEST_WHEN_SPILT;
            for (int patch = largest; patch >= SMALLEST_PATCH; patch -= 2) {
                Grid grid = new Grid(patch, width / patch, height);
                Optional<List<SheetPlan>> plans = plan(patches, grid, sheets);
                if (plans.isPresent()) {
                    return Optional.of(new PaperLayout(recipe, grid, plans.get()));
                }
            }
        }
        return Optional.empty();
    }

    @Override
    public int sheets() {
        return plans.size();
    }

    @Override
    public int patchDots() {
        return grid.patch();
    }

    private static Optional<List<SheetPlan>> plan(int patches, Grid grid, int sheets) {
        if (grid.columns() < WedgeBlock.LEAST_COLUMNS) {
            return Optional.empty();
        }
        List<Block> parts = parts(grid);
        List<SheetPlan> plans = new ArrayList<>();
        for (int sheet = 0; sheet < sheets; sheet++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < parts.size(); i++) {
                if (i * Math.min(sheets, parts.size()) / parts.size() == sheet) {
                    blocks.add(parts.get(i));
                }
            }
            SheetPlan plan = new SheetPlan(grid, blocks);
            while (plan.markers() < LEAST_MARKERS) {
                boolean needsBlack =
                        blocks.stream().noneMatch(block -> block instanceof MarkerRow)
                                && !plan.holdsField();
                blocks.add(new MarkerRow(grid, needsBlack));
                plan = new SheetPlan(grid, blocks);
            }
            plans.add(plan);
        }
        int wanted = patches + LEAST_WINDOWS * sheets;
        while (plans.stream().mapToInt(SheetPlan::cells).sum() < wanted) {
            SheetPlan roomiest =
                    plans.stream().max(Comparator.comparingInt(SheetPlan::spare)).orElseThrow();
            roomiest.addRow();
            if (roomiest.spare() < 0) {
                return Optional.empty();
            }
        }
        boolean fits = plans.stream().allMatch(plan -> plan.spare() >= 0 && plan.rows() > 0);
        return fits ? Optional.of(plans) : Optional.empty();
    }

    private static List<Block> parts(Grid grid) {
        List<Block> parts = new ArrayList<>();
        parts.add(new WedgeBlock(Section.SHADOWS, grid));
        parts.add(new MiddleBlock(grid));
        if (grid.columns() < MiddleBlock.LEAST_COLUMNS) {
            parts.add(new EdgesBlock(grid));
        }
        parts.add(new WedgeBlock(Section.HIGHLIGHTS, grid));
        return parts;
    }

    @Override
    public List<Sheet> build(String chartId, int print, List<String> codeTexts) {
        RectMm page = new RectMm(0, 0, recipe.page().widthMm(), recipe.page().heightMm());
        RectMm printable = SheetLayout.printable(recipe);
        int left = (SheetLayout.dotsIn(printable.width()) - grid.width()) / 2;
        HeaderBlock header = new HeaderBlock(grid, recipe, chartId);
        List<List<Ink>> shares = shares();
        List<Sheet> sheets = new ArrayList<>();
        for (int i = 0; i < plans.size(); i++) {
            SheetBuilder sheet =
                    new SheetBuilder(
                            i + 1, page, printable, left, Captions.ofPaper(recipe.layoutVersion()));
            header.draw(sheet, plans.size(), print, plans.get(i).holdsField());
            List<Cell> cells = plans.get(i).drawBlocks(sheet);
            mosaic(sheet, cells, shares.get(i));
            sheets.add(sheet.build(codeTexts.get(i)));
        }
        return sheets;
    }

    private void mosaic(SheetBuilder sheet, List<Cell> cells, List<Ink> inks) {
        double leftMm = sheet.origin().x();
        double topMm = sheet.origin().y();
        List<Patch> before = sheet.patches();
        List<double[]> taken = new ArrayList<>();
        for (Patch patch : before) {
            if (patch.section() == Section.PAPER) {
                taken.add(
                        new double[] {
                            SheetLayout.dots(patch.area().x() - leftMm),
                            SheetLayout.dots(patch.area().y() - topMm)
                        });
            }
        }
        List<Cell> windows = Scatter.windows(grid, cells, cells.size() - inks.size(), taken);
        List<Cell> rest = new ArrayList<>(cells);
        rest.removeAll(windows);
        Ink[] placed =
                Scatter.place(grid, rest, inks, windows, Scatter.ordered(before, leftMm, topMm));
        for (int i = 0; i < placed.length; i++) {
            Cell cell = rest.get(i);
            sheet.patch(placed[i], cell.x(), cell.y(), grid.patch(), grid.patch());
        }
        for (Cell cell : windows) {
            sheet.window(cell.x(), cell.y(), grid.patch(), grid.patch());
        }
    }

    /**
     * Which patches go to which sheet. One copy of both wedges stays together, and so do twins; a
     * group goes where most room is left, so that every sheet holds dark, light and coloured
     * patches.
     */
    private List<List<Ink>> shares() {
        List<List<Ink>> shares = new ArrayList<>();
        for (int i = 0; i < plans.size(); i++) {
            shares.add(new ArrayList<>());
        }
        Map<String, Integer> homes = new HashMap<>();
        for (Ink ink : PaperContent.scattered(recipe.space())) {
            int home = homes.computeIfAbsent(group(ink), key -> roomiest(shares));
            int sheet = room(home, shares) > 0 ? home : roomiest(shares);
            shares.get(sheet).add(ink);
        }
        return shares;
    }

    private static String group(Ink ink) {
        String id = ink.id();
        return switch (ink.section()) {
            case SHADOWS, HIGHLIGHTS -> id.substring(id.length() - 1);
            case NEUTRAL_RAMP, SKIN -> id.substring(0, id.length() - 1);
            default -> id;
        };
    }

    private int roomiest(List<List<Ink>> shares) {
        int roomiest = 0;
        for (int i = 1; i < plans.size(); i++) {
            if (room(i, shares) > room(roomiest, shares)) {
                roomiest = i;
            }
        }
        return roomiest;
    }

    private int room(int sheet, List<List<Ink>> shares) {
        return plans.get(sheet).cells() - LEAST_WINDOWS - shares.get(sheet).size();
    }
}
