package org.printassay.layout;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.printassay.colour.Rgb8;
import org.printassay.sheet.Patch;
import org.printassay.sheet.Section;

/**
 * Puts patches into the places of one sheet's mosaic: windows first, spread evenly; then everything
 * else so that copies of one RGB are far from each other and neighbours differ in lightness. Starts
 * from a shuffled order and keeps exchanges of two patches that lower the cost; a few thousand are
 * enough. Integer and plain double arithmetic only: the same on every machine.
 */
final class Scatter {
    private static final int TRIALS = 10_000;

    /** Copies that are this many patches apart are far enough: more would sort the sheet. */
    private static final double FAR_ENOUGH = 12;

    /** How far a neighbourhood reaches, patches: about what a scanner spreads light over. */
    private static final double NEIGHBOURHOOD = 2.4;

    /** What two neighbours cost that are both white or both black. */
    private static final double LIKE_NEIGHBOURS = 1;

    /** A lighter patch at the end of a row looks like a missing one. */
    private static final double LIGHTEST_AT_EDGE = 225;

    /** Windows keep this many patches inside, so that a row does not look short. */
    private static final double WINDOW_FROM_EDGE = 1.5;

    private static final Rgb8 WHITE = Rgb8.grey(255);

    private final Grid grid;
    private final List<Cell> cells;
    private final Ink[] at;
    private final Map<Rgb8, List<double[]>> fixed = new HashMap<>();
    private final Map<Rgb8, List<Integer>> places = new HashMap<>();
    private final List<List<Integer>> neighbours = new ArrayList<>();
    private final double[] surround;

    private Scatter(Grid grid, List<Cell> cells) {
        this.grid = grid;
        this.cells = cells;
        this.at = new Ink[cells.size()];
        this.surround = new double[cells.size()];
    }

    /**
     * Places for windows: each as far as can be from the ones there are, none at the ends of a row.
     */
    static List<Cell> windows(Grid grid, List<Cell> cells, int count, List<double[]> taken) {
        List<double[]> points = new ArrayList<>(taken);
        List<Cell> chosen = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            Cell best = cells.get(0);
            double bestDistance = -1;
            for (Cell cell : cells) {
                int fromEdge = Math.min(cell.x(), grid.width() - grid.patch() - cell.x());
                if (fromEdge < WINDOW_FROM_EDGE * grid.patch()) {
                    continue;
                }
                double nearest = Double.POSITIVE_INFINITY;
                for (double[] point : points) {
                    nearest = Math.min(nearest, square(cell.x() - point[0], cell.y() - point[1]));
                }
                if (nearest > bestDistance) {
                    bestDistance = nearest;
                    best = cell;
                }
            }
            chosen.add(best);
            points.add(new double[] {best.x(), best.y()});
        }
        return chosen;
    }

    /**
     * Places inks into cells.
     *
     * @param inks as many as cells
     * @param windows places of the mosaic that stay white
     * @param ordered where copies stand already that are not in the mosaic, dots, by RGB
     */
    static Ink[] place(
            Grid grid,
            List<Cell> cells,
            List<Ink> inks,
            List<Cell> windows,
            Map<Rgb8, List<double[]>> ordered) {
        Scatter scatter = new Scatter(grid, cells);
        scatter.fixed.putAll(ordered);
        scatter.findNeighbours(windows);
        scatter.start(inks, new Shuffle(1));
        scatter.improve(new Shuffle(2));
        return scatter.at;
    }

    /** Copies at their places, keyed by RGB, of patches that stand outside the mosaic. */
    static Map<Rgb8, List<double[]>> ordered(
            Collection<Patch> patches, double leftMm, double topMm) {
        Map<Rgb8, List<double[]>> result = new HashMap<>();
        for (Patch patch : patches) {
            double x = SheetLayout.dots(patch.area().x() - leftMm);
            double y = SheetLayout.dots(patch.area().y() - topMm);
            result.computeIfAbsent(patch.rgb(), key -> new ArrayList<>()).add(new double[] {x, y});
        }
        return result;
    }

    /** Ends of rows get what no metric of place depends on; all else is shuffled. */
    private void start(List<Ink> inks, Shuffle shuffle) {
        List<Ink> inner = new ArrayList<>();
        List<Ink> outer = new ArrayList<>();
        for (Ink ink : inks) {
            (edgeMay(ink) ? outer : inner).add(ink);
        }
        shuffle(outer, shuffle);
        int next = 0;
        for (int i = 0; i < at.length; i++) {
            if (cells.get(i).edge() && next < outer.size()) {
                at[i] = outer.get(next++);
            }
        }
        inner.addAll(outer.subList(next, outer.size()));
        shuffle(inner, shuffle);
        next = 0;
        for (int i = 0; i < at.length; i++) {
            if (at[i] == null) {
                at[i] = inner.get(next++);
            }
            places.computeIfAbsent(at[i].rgb(), key -> new ArrayList<>()).add(i);
        }
    }

    private void findNeighbours(List<Cell> windows) {
        double reach = square(NEIGHBOURHOOD * grid.patch(), 0);
        for (int i = 0; i < cells.size(); i++) {
            Cell one = cells.get(i);
            List<Integer> near = new ArrayList<>();
            for (int j = 0; j < cells.size(); j++) {
                Cell other = cells.get(j);
                if (j != i && square(one.x() - other.x(), one.y() - other.y()) < reach) {
                    near.add(j);
                }
            }
            neighbours.add(near);
            for (Cell window : windows) {
                if (square(one.x() - window.x(), one.y() - window.y()) < reach) {
                    surround[i] += tone(WHITE);
                }
            }
        }
    }

    private void improve(Shuffle shuffle) {
        for (int trial = 0; trial < TRIALS; trial++) {
            int i = shuffle.next(at.length);
            int j = shuffle.next(at.length);
            if (at[i].rgb().equals(at[j].rgb()) || !may(i, j) || !may(j, i)) {
                continue;
            }
            double before = cost(i) + cost(j);
            swap(i, j);
            if (cost(i) + cost(j) >= before) {
                swap(i, j);
            }
        }
    }

    private boolean may(int from, int to) {
        return edgeMay(at[from]) || !cells.get(to).edge();
    }

    private static boolean edgeMay(Ink ink) {
        boolean placeMatters = ink.section() != Section.CUBE && ink.section() != Section.SKIN;
        return !placeMatters && light(ink.rgb()) < LIGHTEST_AT_EDGE;
    }

    private void swap(int i, int j) {
        Ink one = at[i];
        Ink other = at[j];
        List<Integer> ones = places.getOrDefault(one.rgb(), List.of());
        ones.set(ones.indexOf(i), j);
        List<Integer> others = places.getOrDefault(other.rgb(), List.of());
        others.set(others.indexOf(j), i);
        at[i] = other;
        at[j] = one;
    }

    private double cost(int i) {
        Cell cell = cells.get(i);
        Rgb8 rgb = at[i].rgb();
        double cost = 0;
        for (int j : places.getOrDefault(rgb, List.of())) {
            if (j != i) {
                Cell other = cells.get(j);
                cost += near(square(cell.x() - other.x(), cell.y() - other.y()));
            }
        }
        for (double[] other : fixed.getOrDefault(rgb, List.of())) {
            cost += near(square(cell.x() - other[0], cell.y() - other[1]));
        }
        double like = surround[i];
        for (int j : neighbours.get(i)) {
            like += tone(at[j].rgb());
        }
        cost += LIKE_NEIGHBOURS * tone(rgb) * like;
        return cost;
    }

    /** What two copies cost at a squared distance. */
    private double near(double square) {
        return Math.max(0, square(FAR_ENOUGH * grid.patch(), 0) / square - 1);
    }

    /** Dark to light as -1 to 1. */
    private static double tone(Rgb8 rgb) {
        return light(rgb) / 127.5 - 1;
    }

    private static double light(Rgb8 rgb) {
        return (3 * rgb.r() + 6 * rgb.g() + rgb.b()) / 10.0;
    }

    private static double square(double x, double y) {
        return x * x + y * y;
    }

    private static void shuffle(List<Ink> inks, Shuffle shuffle) {
        for (int i = inks.size() - 1; i > 0; i--) {
            int j = shuffle.next(i + 1);
            Ink held = inks.get(i);
            inks.set(i, inks.get(j));
            inks.set(j, held);
        }
    }
}
