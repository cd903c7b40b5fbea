package org.printassay.locate;

import java.util.List;
import java.util.Locale;
import org.printassay.chart.Chart;
import org.printassay.layout.SheetLayout;
import org.printassay.problem.Problem;
import org.printassay.robust.Median;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Sheet;

/** Why a scan of one sheet cannot be read, in words. Each throws where that is so. */
final class Refusals {
    /** Fewer markers than this do not place a sheet. */
    static final int FEWEST_MARKERS = 4;

    /** Coarser scans than this, samples an inch, are refused. */
    private static final double COARSEST = 120;

    /** Steps between patches that must be as printed, as a share of so many at least. */
    private static final double LEAST_STEPS = 0.65;

    private static final int FEWEST_STEPS = 20;

    /** The code's place is known roughly where it was read by the marker beside it alone. */
    private static final double CODE_OFF_MM = 10;

    private Refusals() {}

    static void few(
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
    static void strayCode(String name, Sheet sheet, Placement placement, SheetCodeReader.Read code)
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

    static void coarse(String name, List<FoundMarker> markers) throws Problem {
        if (markers.size() < FEWEST_MARKERS) {
            return;
        }
        double side = Median.upper(markers.stream().mapToDouble(FoundMarker::sidePx).toArray());
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

    static void parts(
            ScanInfo scan,
            Sheet sheet,
            Placement placement,
            int markers,
            List<Patch> unlike,
            double leastShare)
            throws Problem {
        int inside = 0;
        for (Patch patch : sheet.patches()) {
            boolean seen = !unlike.contains(patch);
            inside += seen && Locator.isInside(scan, placement, patch.area()) ? 1 : 0;
        }
        if (inside < leastShare * sheet.patches().size()) {
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

    static void misplaced(String name, Chart chart, StepCheck.Result steps) throws Problem {
        if (steps.tested() >= FEWEST_STEPS && steps.share() < LEAST_STEPS) {
            throw Problem.chart(
                    name,
                    String.format(
                            Locale.ROOT,
                            "patches are not where the markers of chart %s say: %d of %d steps"
                                    + " between neighbours are as printed. The sheet is covered, not"
                                    + " flat, or of another chart. Scan it flat and whole.",
                            chart.id(),
                            steps.agreeing(),
                            steps.tested()));
        }
    }

    /** Where no sheet code speaks for a chart, its patches must. */
    static void otherChart(String name, Chart chart, CodeOrder.Result order) throws Problem {
        if (order.isOtherChart()) {
            throw Problem.chart(
                    name,
                    String.format(
                            Locale.ROOT,
                            "does not look like chart %s: its sheet code cannot be read, and %d of %d"
                                    + " patches look unlike others of the same or nearly the same"
                                    + " code. Name the right chart file, or scan so that the sheet"
                                    + " code is seen.",
                            chart.id(),
                            order.compared() - order.left() + order.odd(),
                            order.compared()));
        }
    }
}
