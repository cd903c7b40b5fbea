package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.sample.SurfaceSamples;
import org.printassay.surface.FoundLine;
import org.printassay.texture.PixelTile;

/** Flat areas without what lines cross: a line is told as one and is no grain. */
final class LinesOut {
    /** Parts at least so wide and high tell grain of all sizes. */
    private static final double WHOLE_MM = 2.75;

    /** The least that tells of grain, taken where nothing larger is left. */
    private static final double LEAST_MM = 1.4;

    /** Kept away from a line beside its blur: places are known to so much. */
    private static final double AROUND_MM = 0.25;

    private static final double SIGMAS = 3;

    private LinesOut() {}

    /** Columns and rows of a tile; {@code right} and {@code bottom} are not in it. */
    private record Part(int left, int top, int right, int bottom) {
        int least() {
            return Math.min(right - left, bottom - top);
        }
    }

    /**
     * Pixels that no line crosses.
     *
     * @param view what the scan shows of lines; null when none were looked for
     * @return the same tiles where no line crosses; empty when lines leave nothing
     */
    static List<PixelTile> of(List<SurfaceSamples.Area> areas, @Nullable SurfaceView view) {
        if (view == null || (view.lines().isEmpty() && view.streaks().isEmpty())) {
            return areas.stream().map(SurfaceSamples.Area::tile).toList();
        }
        for (double least : new double[] {WHOLE_MM, LEAST_MM}) {
            List<PixelTile> tiles = new ArrayList<>();
            for (SurfaceSamples.Area area : areas) {
                add(tiles, area, view, least);
            }
            if (!tiles.isEmpty()) {
                return tiles;
            }
        }
        return List.of();
    }

    private static void add(
            List<PixelTile> tiles, SurfaceSamples.Area area, SurfaceView view, double leastMm) {
        PixelTile tile = area.tile();
        Part whole = new Part(0, 0, tile.columns(), tile.rows());
        List<Part> parts = List.of(whole);
        for (FoundLine line : view.lines()) {
            parts = without(parts, area, view, line, false);
        }
        for (FoundLine line : view.streaks()) {
            parts = without(parts, area, view, line, true);
        }
        for (Part part : parts) {
            if (part.equals(whole)) {
                tiles.add(tile);
            } else if (part.least() >= leastMm * tile.samplesPerMm()) {
                tiles.add(
                        tile.part(
                                part.left(),
                                part.top(),
                                part.right() - part.left(),
                                part.bottom() - part.top()));
            }
        }
    }

    private static List<Part> without(
            List<Part> parts,
            SurfaceSamples.Area area,
            SurfaceView view,
            FoundLine line,
            boolean streak) {
        boolean upright = view.alongColumns(line.along());
        int from = upright ? area.top() : area.left();
        int length = upright ? area.tile().rows() : area.tile().columns();
        double[] run = view.run(line, streak, from, from + length);
        double away =
                (line.widthMm() / 2 + SIGMAS * view.sigmaMm() + AROUND_MM)
                        * area.tile().samplesPerMm();
        int begin = upright ? area.left() : area.top();
        int low = (int) Math.floor(run[0] - away) - begin;
        int high = (int) Math.ceil(run[1] + away) - begin;
        List<Part> left = new ArrayList<>();
        for (Part one : parts) {
            int first = upright ? one.left() : one.top();
            int last = upright ? one.right() : one.bottom();
            if (high <= first || low >= last) {
                left.add(one);
                continue;
            }
            if (low > first) {
                left.add(
                        upright
                                ? new Part(one.left(), one.top(), low, one.bottom())
                                : new Part(one.left(), one.top(), one.right(), low));
            }
            if (high < last) {
                left.add(
                        upright
                                ? new Part(high, one.top(), one.right(), one.bottom())
                                : new Part(one.left(), high, one.right(), one.bottom()));
            }
        }
        return left;
    }
}
