package org.printassay.sample;

import java.util.List;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Patch;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;
import org.printassay.texture.EdgeResponse;
import org.printassay.texture.PixelTile;

/**
 * What one scan tells about lines, bands, grain, edges and vignettes, at full resolution.
 *
 * @param traces of long tints and of bare margins; their lightness is not known yet
 * @param areas pixels of flat patches
 * @param edges responses of slanted edges
 * @param vignettes light along vignettes
 * @param paper light along the bare margins above and below them
 */
public record SurfaceSamples(
        List<TintTrace> traces,
        List<Area> areas,
        List<Edge> edges,
        List<Gradient> vignettes,
        List<TintTrace> paper) {
    /** Nothing looked at. */
    public static final SurfaceSamples NONE =
            new SurfaceSamples(List.of(), List.of(), List.of(), List.of(), List.of());

    public SurfaceSamples {
        traces = List.copyOf(traces);
        areas = List.copyOf(areas);
        edges = List.copyOf(edges);
        vignettes = List.copyOf(vignettes);
        paper = List.copyOf(paper);
    }

    /** Whether a patch is a long tint, which lines and bands are looked for in. */
    public static boolean isLong(Patch patch) {
        return SurfaceWindows.isLong(patch);
    }

    /**
     * Pixels of a flat patch.
     *
     * @param left column of the scan that its pixels begin at
     * @param top row of the scan that they begin at
     */
    public record Area(Patch patch, PixelTile tile, int left, int top) {}

    /** The response of one edge whose light changes along an axis of the page. */
    public record Edge(Along along, EdgeResponse response) {}

    /** Light along a vignette. */
    public record Gradient(Artwork.Vignette vignette, TintTrace trace) {}
}
