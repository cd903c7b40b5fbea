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

    /** The code's place is known roughly where it was read by the marker beside it alone. */
    private static final double CODE_OFF_MM = 10;

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
        List<SheetCodeReader.Read> codes = SheetCodeReader.read(grey, image.factor(), markers);
        if (codes.stream().noneMatch(SheetCodeReader.Read::besideMarker)) {
            refuseMirrored(name, grey, detector, markers);
        }
        refuseCoarse(name, markers);
        SeveralPrints.refuseCodes(name, codes);
        Optional<SheetCodeReader.Read> code = codes.stream().findFirst();
        if (code.isEmpty() && expected.isEmpty()) {
            throw Problem.chart(
                    name,
                    markers.size() < FEWEST_MARKERS
                            ? "no printassay chart found. Scan the whole printed sheet, printed side"
                                    + " down, with automatic corrections off."
                            : "markers of a chart were found but its sheet code cannot be read. Scan"
                                    + " the whole sheet, or name its chart file with --chart.");
        }
        Optional<String> text = code.map(SheetCodeReader.Read::text);
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
        MarkerGroups.Groups groups = MarkerGroups.of(sheet, markers);
        SeveralPrints.refuseMarkers(name, chart, number, groups.others(), markers);
        List<FoundMarker> ours = groups.ours();
        refuseFew(name, chart, sheet, markers, ours);
        PagePlacement.Fit fit = PagePlacement.fit(sheet, ours);
        if (code.isPresent()) {
            refuseStrayCode(name, sheet, fit.placement(), code.get());
        }
        Placement placement = RefinedPlacement.of(scan, image, sheet, fit.placement());
        refuseParts(scan, sheet, placement, ours.size());
        Map<Integer, PointPx> centres = new TreeMap<>();
        fit.used().forEach((id, marker) -> centres.put(id, marker.centre()));
        List<PointPx> outline = new ArrayList<>();
        for (PointMm corner : PagePlacement.corners(sheet.page())) {
            outline.add(placement.toScan(corner));
        }
        return new LocatedSheet(
                chart,
                sheet,
                placement,
                centres,
                fit.residualMm(placement),
                fit.perspective(sheet.page()),
                outline);
    }

    private static void refuseFew(
            String name,
            Chart chart,
            Sheet sheet,
            List<FoundMarker> markers,
            List<FoundMarker> ours)
            throws Problem {
        if (ours.size() >= FEWEST_MARKERS) {
            return;
        }
        long known =
                markers.stream()
                        .filter(m -> sheet.markers().stream().anyMatch(k -> k.id() == m.id()))
                        .count();
        throw Problem.chart(
                name,
                known < FEWEST_MARKERS
                        ? "only "
                                + known
                                + " of "
                                + sheet.markers().size()
                                + " markers were found. Scan the whole sheet, flat and sharp."
                        : "the markers do not stand as on chart "
                                + chart.id()
                                + ". Scan the whole sheet, flat, and name the right chart file if"
                                + " you name one.");
    }

    /** A code that stands elsewhere is another print's, or none. */
    private static void refuseStrayCode(
            String name, Sheet sheet, Placement placement, SheetCodeReader.Read code)
            throws Problem {
        PointMm read = placement.toPage(code.middle());
        PointMm wanted = sheet.code().centre();
        if (Math.hypot(read.x() - wanted.x(), read.y() - wanted.y()) > CODE_OFF_MM) {
            throw Problem.chart(
                    name,
                    "the sheet code does not stand where the markers say: parts of two prints seem"
                            + " to be in the scan. Scan them one by one, or crop the scan to one.");
        }
    }

    private static int commonSheet(List<FoundMarker> markers) {
        return votes(markers).entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    private static Map<Integer, Integer> votes(List<FoundMarker> markers) {
        Map<Integer, Integer> votes = new TreeMap<>();
        for (FoundMarker marker : markers) {
            votes.merge(SheetLayout.sheetOfMarker(marker.id()), 1, Integer::sum);
        }
        return votes;
    }

    /**
     * A mirrored page shows markers of scattered numbers, or none; its code alone is read either
     * way.
     */
    private static void refuseMirrored(
            String name, GrayU8 grey, MarkerDetector detector, List<FoundMarker> upright)
            throws Problem {
        GrayU8 mirrored = grey.clone();
        GImageMiscOps.flipHorizontal(mirrored);
        int flipped = onOneSheet(detector.detect(mirrored, 1));
        if (flipped >= FEWEST_MARKERS && flipped > onOneSheet(upright)) {
            throw Problem.chart(
                    name,
                    "is mirrored. Switch mirroring off in the scanner or printer settings, or flip"
                            + " the scan.");
        }
    }

    /** The most markers that have the numbers of one sheet. */
    private static int onOneSheet(List<FoundMarker> markers) {
        return votes(markers).values().stream().max(Integer::compare).orElse(0);
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
