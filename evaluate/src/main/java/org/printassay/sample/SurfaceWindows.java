package org.printassay.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Rgb8;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.Locator;
import org.printassay.locate.Placement;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Artwork;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;
import org.printassay.surface.Along;
import org.printassay.surface.TintTrace;
import org.printassay.texture.EdgeResponse;
import org.printassay.texture.PixelTile;

/** All windows of one sheet that lines, bands, grain, edges and vignettes are read through. */
final class SurfaceWindows {
    /** Tints at least this long are looked at for lines and bands. */
    static final double LONG_MM = 35;

    private static final double NARROWEST_MM = 2.5;

    /** A long tint is also traced across, for lines along it, when it is at least so wide. */
    private static final double WIDE_MM = 4;

    private static final double INSET_MM = 0.5;

    /** What lies so near to a covered patch may be covered too. */
    private static final double TOUCHING_MM = 1;

    /** Lines and bands need 600 samples an inch; sheets may be printed as small as at 93 %. */
    private static final double FINE_PER_MM = 555 / 25.4;

    private static final double EDGES_PER_MM = 280 / 25.4;
    private static final double VIGNETTES_PER_MM = 140 / 25.4;

    /** Bare margins are used where they are at least this wide. */
    private static final double MARGIN_MM = 6;

    /** Kept away from the sheet's edge, which may lie elsewhere by so much. */
    private static final double SHEET_EDGE_MM = 2.5;

    private static final Rgb8 BARE = Rgb8.grey(255);

    /** Id of traces of the bare margin. */
    private static final String MARGIN = "margin-";

    private final ScanInfo info;
    private final LocatedSheet located;
    private final List<TraceWindow> tints = new ArrayList<>();
    private final List<GrainWindow> areas = new ArrayList<>();
    private final List<SlantWindow> edges = new ArrayList<>();
    private final Map<Integer, TraceWindow> vignettes = new TreeMap<>();
    private final List<TraceWindow> paper = new ArrayList<>();

    private SurfaceWindows(LocatedSheet located, ScanInfo info) {
        this.located = located;
        this.info = info;
    }

    static SurfaceWindows of(LocatedSheet located, ScanInfo info) {
        SurfaceWindows windows = new SurfaceWindows(located, info);
        double perMm = located.placement().samplesPerMm();
        if (located.photographed()) {
            return windows;
        }
        if (perMm >= FINE_PER_MM) {
            windows.tints();
            if (!info.lossy()) {
                windows.areas();
            }
        }
        List<Artwork> artwork = located.sheet().artwork();
        for (int i = 0; i < artwork.size(); i++) {
            Artwork piece = artwork.get(i);
            if (piece instanceof Artwork.SlantedSquare slanted
                    && perMm >= EDGES_PER_MM
                    && windows.isInside(slanted.area())) {
                windows.edges.addAll(SlantWindow.of(slanted, located.placement(), info));
            }
            if (piece instanceof Artwork.Vignette vignette
                    && perMm >= VIGNETTES_PER_MM
                    && windows.isInside(vignette.area())
                    && !windows.isByWhatIsCovered(vignette.area())) {
                RectMm area = vignette.area().inset(INSET_MM);
                Rgb8 grey = Rgb8.grey(128);
                windows.vignettes.put(i, windows.trace("vignette", grey, area, List.of(Along.X)));
            }
        }
        if (!windows.vignettes.isEmpty()) {
            windows.paper.addAll(windows.margins(Along.X));
        }
        return windows;
    }

    /** Whether a patch is a long tint, for lines and bands. */
    static boolean isLong(Patch patch) {
        return !axes(patch.area().inset(INSET_MM)).isEmpty();
    }

    private static List<Along> axes(RectMm area) {
        List<Along> axes = new ArrayList<>();
        double longer = Math.max(area.width(), area.height());
        double shorter = Math.min(area.width(), area.height());
        if (longer < LONG_MM || shorter < NARROWEST_MM) {
            return axes;
        }
        if (area.width() >= WIDE_MM) {
            axes.add(Along.X);
        }
        if (area.height() >= WIDE_MM) {
            axes.add(Along.Y);
        }
        return axes;
    }

    private boolean isInside(RectMm area) {
        return Locator.isInside(info, located.placement(), area);
    }

    /** Whether a patch that is covered or misplaced touches it, so that it may be covered too. */
    private boolean isByWhatIsCovered(RectMm area) {
        return located.unlike().stream().anyMatch(patch -> patch.area().isNear(area, TOUCHING_MM));
    }

    private TraceWindow trace(String id, Rgb8 rgb, RectMm area, List<Along> axes) {
        return new TraceWindow(id, rgb, area, axes, located.placement(), info);
    }

    private void tints() {
        for (Patch patch : located.sheet().patches()) {
            RectMm area = patch.area().inset(INSET_MM);
            if (isLong(patch) && isInside(area) && !located.unlike().contains(patch)) {
                tints.add(trace(patch.id(), patch.rgb(), area, axes(area)));
            }
        }
        if (!tints.isEmpty()) {
            tints.addAll(margins(Along.Y));
            tints.addAll(margins(Along.X));
        }
    }

    /** Bare paper on both sides, traced along an axis: what shows there is no matter of ink. */
    private List<TraceWindow> margins(Along along) {
        RectMm page = located.sheet().page();
        RectMm printable = located.sheet().printable();
        double least = SHEET_EDGE_MM + INSET_MM;
        List<TraceWindow> margins = new ArrayList<>();
        if (along == Along.Y) {
            double height = page.height() - 2 * least;
            double left = printable.x() - least;
            double right = page.right() - printable.right() - least;
            double after = printable.right() + INSET_MM;
            margin("left", left, new RectMm(SHEET_EDGE_MM, least, left, height), along)
                    .ifPresent(margins::add);
            margin("right", right, new RectMm(after, least, right, height), along)
                    .ifPresent(margins::add);
        } else {
            double width = page.width() - 2 * least;
            double top = printable.y() - least;
            double bottom = page.bottom() - printable.bottom() - least;
            double below = printable.bottom() + INSET_MM;
            margin("top", top, new RectMm(least, SHEET_EDGE_MM, width, top), along)
                    .ifPresent(margins::add);
            margin("bottom", bottom, new RectMm(least, below, width, bottom), along)
                    .ifPresent(margins::add);
        }
        return margins;
    }

    private Optional<TraceWindow> margin(String side, double wide, RectMm area, Along along) {
        return wide >= MARGIN_MM - SHEET_EDGE_MM - INSET_MM && isInside(area)
                ? Optional.of(trace(MARGIN + side, BARE, area, List.of(along)))
                : Optional.empty();
    }

    private void areas() {
        Placement placement = located.placement();
        for (Patch patch : located.sheet().patches()) {
            boolean flat =
                    patch.section() == Section.NEUTRAL_RAMP
                            || patch.section() == Section.PAPER
                            || isLong(patch);
            RectMm middle = PatchSampler.middle(patch.area());
            boolean grey = patch.rgb().r() == patch.rgb().g() && patch.rgb().g() == patch.rgb().b();
            if (flat && grey && isInside(middle) && !located.unlike().contains(patch)) {
                areas.add(new GrainWindow(patch, middle, placement, info));
            }
        }
    }

    /** Everything that wants rows. */
    List<RowWindow> all() {
        List<RowWindow> all = new ArrayList<>(tints);
        all.addAll(areas);
        all.addAll(edges);
        all.addAll(vignettes.values());
        all.addAll(paper);
        return all;
    }

    private static Optional<SurfaceSamples.Edge> response(SlantWindow window) {
        @Nullable EdgeResponse response = window.response();
        return Optional.ofNullable(response).map(r -> new SurfaceSamples.Edge(window.along(), r));
    }

    /** What they saw. */
    SurfaceSamples result() {
        List<TintTrace> traces = new ArrayList<>();
        tints.forEach(window -> traces.addAll(window.traces()));
        List<SurfaceSamples.Area> flat = new ArrayList<>();
        for (GrainWindow window : areas) {
            @Nullable PixelTile tile = window.tile();
            if (tile != null) {
                flat.add(
                        new SurfaceSamples.Area(
                                window.patch(), tile, window.left(), window.firstRow()));
            }
        }
        List<SurfaceSamples.Edge> responses =
                edges.parallelStream().flatMap(window -> response(window).stream()).toList();
        List<SurfaceSamples.Gradient> gradients = new ArrayList<>();
        vignettes.forEach(
                (i, window) ->
                        gradients.add(
                                new SurfaceSamples.Gradient(
                                        (Artwork.Vignette) located.sheet().artwork().get(i),
                                        window.traces().get(0))));
        List<TintTrace> bare = paper.stream().flatMap(window -> window.traces().stream()).toList();
        return new SurfaceSamples(traces, flat, responses, gradients, bare);
    }
}
