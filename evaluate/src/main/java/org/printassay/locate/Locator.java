package org.printassay.locate;

import boofcv.alg.misc.GImageMiscOps;
import boofcv.struct.image.GrayU8;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.printassay.chart.Chart;
import org.printassay.chart.Charts;
import org.printassay.chart.SheetCode;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Marker;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/** Finds the sheet in a scan, or says why it cannot be read. */
public final class Locator {
    /** Fewer markers than this do not place a sheet. */
    private static final int FEWEST_MARKERS = 4;

    /** A scan that holds less of the sheet's patches than this is refused. */
    private static final double LEAST_PATCHES = 0.6;

    /** Coarser scans than this, samples an inch, are refused. */
    private static final double COARSEST = 120;

    private Locator() {}

    /**
     * Finds the sheet.
     *
     * @param expected the chart that the user names; without it the sheet code tells
     * @throws Problem chart, when there is no sheet, the wrong one, more than one, a mirrored one
     *     or too little of one; input, when the scan is too coarse
     */
    public static LocatedSheet locate(ScanInfo scan, LocatingImage image, Optional<Chart> expected)
            throws Problem {
        String name = scan.name();
        GrayU8 grey = image.grey();
        MarkerDetector detector = new MarkerDetector();
        List<FoundMarker> markers = detector.detect(grey, image.factor());
        Optional<String> text = SheetCodeReader.read(grey, image.factor(), markers);
        if (text.isEmpty()) {
            refuseMirrored(name, grey, detector);
        }
        refuseCoarse(name, markers);
        if (text.isEmpty() && expected.isEmpty()) {
            throw Problem.chart(
                    name,
                    markers.size() < FEWEST_MARKERS
                            ? "no printassay chart found. Scan the whole printed sheet, printed side"
                                    + " down, with automatic corrections off."
                            : "markers of a chart were found but its sheet code cannot be read. Scan"
                                    + " the whole sheet, or name its chart file with --chart.");
        }
        Chart chart = text.isPresent() ? Charts.fromSheetCode(name, text.get()) : expected.get();
        if (expected.isPresent() && !expected.get().id().equals(chart.id())) {
            throw Problem.chart(
                    name,
                    "shows chart "
                            + chart.id()
                            + ", but the chart file is of chart "
                            + expected.get().id()
                            + ". Leave --chart away, or name the right file.");
        }
        int number =
                text.isPresent() ? SheetCode.parse(name, text.get()).sheet() : commonSheet(markers);
        if (number < 1 || number > chart.sheets().size()) {
            throw Problem.chart(name, "no sheet of chart " + chart.id() + " was found.");
        }
        Sheet sheet = chart.sheets().get(number - 1);
        List<FoundMarker> ours = ours(name, sheet, markers);
        PagePlacement.Fit fit = PagePlacement.fit(sheet, ours);
        Placement placement = RefinedPlacement.of(scan, image, sheet, fit.placement());
        refuseParts(scan, sheet, placement, ours.size());
        Map<Integer, PointPx> centres = new TreeMap<>();
        fit.used().forEach((id, marker) -> centres.put(id, marker.centre()));
        List<PointPx> outline = new ArrayList<>();
        for (PointMm corner : PagePlacement.corners(sheet.page())) {
            outline.add(placement.toScan(corner));
        }
        return new LocatedSheet(
                chart, sheet, placement, centres, fit.residualMm(placement), outline);
    }

    /** The sheet's own markers, each once. */
    private static List<FoundMarker> ours(String name, Sheet sheet, List<FoundMarker> markers)
            throws Problem {
        Map<Integer, FoundMarker> byId = new TreeMap<>();
        int doubled = 0;
        for (Marker wanted : sheet.markers()) {
            for (FoundMarker marker : markers) {
                if (marker.id() == wanted.id() && byId.put(wanted.id(), marker) != null) {
                    doubled++;
                }
            }
        }
        if (doubled >= 3) {
            throw Problem.chart(
                    name, "holds more than one print. Scan them one by one, or crop the scan.");
        }
        if (byId.size() < FEWEST_MARKERS) {
            throw Problem.chart(
                    name,
                    "only "
                            + byId.size()
                            + " of "
                            + sheet.markers().size()
                            + " markers were found. Scan the whole sheet, flat and sharp.");
        }
        return new ArrayList<>(byId.values());
    }

    private static int commonSheet(List<FoundMarker> markers) {
        Map<Integer, Integer> votes = new TreeMap<>();
        for (FoundMarker marker : markers) {
            votes.merge(SheetLayout.sheetOfMarker(marker.id()), 1, Integer::sum);
        }
        return votes.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    /** A mirrored page shows other markers, or none; only its code tells for sure. */
    private static void refuseMirrored(String name, GrayU8 grey, MarkerDetector detector)
            throws Problem {
        GrayU8 mirrored = grey.clone();
        GImageMiscOps.flipHorizontal(mirrored);
        List<FoundMarker> markers = detector.detect(mirrored, 1);
        if (markers.size() >= FEWEST_MARKERS
                && SheetCodeReader.read(mirrored, 1, markers).isPresent()) {
            throw Problem.chart(
                    name,
                    "is mirrored. Switch mirroring off in the scanner or printer settings, or flip"
                            + " the scan.");
        }
    }

    private static void refuseCoarse(String name, List<FoundMarker> markers) throws Problem {
        if (markers.size() < FEWEST_MARKERS) {
            return;
        }
        double side =
                markers.stream()
                        .mapToDouble(FoundMarker::sidePx)
                        .sorted()
                        .toArray()[markers.size() / 2];
        double perInch = side / SheetLayout.MARKER_MM * 25.4;
        if (perInch < COARSEST) {
            throw Problem.input(
                    name,
                    String.format(
                            Locale.ROOT,
                            "has about %.0f samples an inch by its markers, too few to read"
                                    + " patches. Scan at 300.",
                            perInch));
        }
    }

    private static void refuseParts(ScanInfo scan, Sheet sheet, Placement placement, int markers)
            throws Problem {
        int inside = 0;
        for (Patch patch : sheet.patches()) {
            inside += isInside(scan, placement, patch.area()) ? 1 : 0;
        }
        if (inside < LEAST_PATCHES * sheet.patches().size()) {
            throw Problem.chart(
                    scan.name(),
                    "holds only part of the sheet: "
                            + inside
                            + " of "
                            + sheet.patches().size()
                            + " patches and "
                            + markers
                            + " of "
                            + sheet.markers().size()
                            + " markers. Scan the whole sheet.");
        }
    }

    /** Whether an area of the page lies wholly in the scan. */
    public static boolean isInside(ScanInfo scan, Placement placement, RectMm area) {
        for (PointMm corner : PagePlacement.corners(area)) {
            PointPx at = placement.toScan(corner);
            if (at.x() < 0 || at.y() < 0 || at.x() > scan.width() || at.y() > scan.height()) {
                return false;
            }
        }
        return true;
    }
}
