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
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Sheet;

/** Finds the sheet in a scan, or says why it cannot be read. */
public final class Locator {
    /** A single scan that holds less of the sheet's patches than this is refused. */
    public static final double LEAST_PATCHES = 0.6;

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
        return locate(scan, image, expected, LEAST_PATCHES);
    }

    /**
     * Finds the sheet, or a part of it.
     *
     * @param expected the chart that the user names, or another part told; without it the sheet
     *     code tells
     * @param leastShare share of the sheet's patches that must lie in the scan
     * @throws Problem as above
     */
    public static LocatedSheet locate(
            ScanInfo scan, LocatingImage image, Optional<Chart> expected, double leastShare)
            throws Problem {
        String name = scan.name();
        GrayU8 grey = image.grey();
        List<FoundMarker> markers = MarkerSearch.in(grey, image.factor());
        List<SheetCodeReader.Read> codes = SheetCodeReader.read(grey, image.factor(), markers);
        if (codes.stream().noneMatch(SheetCodeReader.Read::besideMarker)) {
            refuseMirrored(name, grey, markers);
        }
        Refusals.coarse(name, markers);
        SeveralPrints.refuseCodes(name, codes);
        Optional<SheetCodeReader.Read> code = codes.stream().findFirst();
        if (code.isEmpty() && expected.isEmpty()) {
            refuseBlurred(name, grey, image.factor(), markers);
            throw Problem.chart(
                    name,
                    markers.size() < Refusals.FEWEST_MARKERS
                            ? "no printassay chart found. Scan the whole printed sheet, printed side"
                                    + " down, with automatic corrections off."
                            : "markers of a chart were found but its sheet code cannot be read. Scan"
                                    + " the whole sheet, or name its chart file with --chart.");
        }
        Optional<String> text = code.map(SheetCodeReader.Read::text);
        Chart chart =
                text.isPresent()
                        ? Charts.fromSheetCode(name, text.get(), expected)
                        : expected.get();
        if (expected.isPresent() && !expected.get().id().equals(chart.id())) {
            throw Problem.chart(
                    name,
                    "shows chart "
                            + chart.id()
                            + ", but the chart file is of chart "
                            + expected.get().id()
                            + ". Leave --chart away, or name the right file.");
        }
        int number = text.isPresent() ? Charts.sheetNumber(name, text.get()) : commonSheet(markers);
        if (number < 1 || number > chart.sheets().size()) {
            throw Problem.chart(name, "no sheet of chart " + chart.id() + " was found.");
        }
        Sheet sheet = chart.sheets().get(number - 1);
        MarkerGroups.Groups groups = MarkerGroups.of(sheet, markers);
        SeveralPrints.refuseMarkers(name, chart, number, groups.others(), markers);
        List<FoundMarker> ours = groups.ours();
        Refusals.few(name, chart, sheet, markers, ours);
        PagePlacement.Fit fit = PagePlacement.fit(sheet, ours);
        if (code.isPresent()) {
            Refusals.strayCode(name, sheet, fit.placement(), code.get());
        }
        Placement placement = RefinedPlacement.of(scan, image, sheet, fit.placement());
        StepCheck.Result steps = StepCheck.of(image, sheet, chart.space(), placement);
        Refusals.misplaced(name, chart, steps);
        if (code.isEmpty()) {
            Refusals.otherChart(name, chart, CodeOrder.of(image, sheet, placement, steps.unlike()));
        }
        Refusals.parts(scan, sheet, placement, ours.size(), steps.unlike(), leastShare);
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
                code.isPresent(),
                steps.unlike(),
                outline);
    }

    /** Markers are read through more blur than the code is. */
    private static void refuseBlurred(
            String name, GrayU8 grey, double factor, List<FoundMarker> markers) throws Problem {
        double widthMm = MarkerBlur.widthMm(grey, factor, markers);
        if (markers.size() >= Refusals.FEWEST_MARKERS && MarkerBlur.hidesCode(widthMm)) {
            throw Problem.chart(
                    name,
                    String.format(
                            Locale.ROOT,
                            "is too blurred to read its sheet code: edges of its markers are %.1f mm"
                                    + " wide. Scan again at 300 with the sheet flat on the glass, in"
                                    + " focus, descreening and noise reduction off; or name its"
                                    + " chart file with --chart.",
                            widthMm));
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
    private static void refuseMirrored(String name, GrayU8 grey, List<FoundMarker> upright)
            throws Problem {
        GrayU8 mirrored = grey.clone();
        GImageMiscOps.flipHorizontal(mirrored);
        int flipped = onOneSheet(MarkerSearch.in(mirrored, 1));
        if (flipped >= Refusals.FEWEST_MARKERS && flipped > onOneSheet(upright)) {
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
