package org.printassay.evaluation;

import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;

/**
 * Where a sheet lies in its scan, at which size and how finely, and what of it was not found: in
 * figures, and in warnings where something is amiss.
 */
final class PlacementCheck {
    /** Declared resolutions further off than this are wrong, not a print of another size. */
    private static final double WRONG_RESOLUTION = 0.1;

    /**
     * Fewer are told: less than a nominal 250, whatever the print's own size makes of them (common
     * practice, no source).
     */
    private static final double LOW_SAMPLES_PER_INCH = 240;

    private PlacementCheck() {}

    /** Dirt is not alone in hiding markers: lines that the printer leaves cut them as well. */
    static Warning markersMissing(String scan, int missing, int expected) {
        return new Warning(
                WarningCode.MARKERS_MISSING,
                scan
                        + ": "
                        + missing
                        + " of "
                        + expected
                        + " markers were not found: outside the scan, covered or dirty, or cut by a"
                        + " line that the printer left (a missing nozzle). Patches near them may be"
                        + " placed less well.");
    }

    /**
     * The placement of one scan.
     *
     * @param chartGiven whether the user named the chart
     * @param warnings what the reader should know of it is added here
     */
    static PlacementSummary of(SheetSamples samples, boolean chartGiven, List<Warning> warnings) {
        LocatedSheet located = samples.located();
        ScanInfo scan = samples.scan();
        Placement placement = located.placement();
        Double scaleX = null;
        Double scaleY = null;
        if (scan.samplesPerInch().isEmpty()) {
            warnings.add(
                    new Warning(
                            WarningCode.RESOLUTION_MISSING,
                            scan.name()
                                    + " does not say its resolution, so the printed size was not"
                                    + " checked."));
        } else {
            ScanInfo.Resolution declared = scan.samplesPerInch().get();
            PointMm middle = located.sheet().page().centre();
            double x = scale(placement, middle, 1, 0, declared);
            double y = scale(placement, middle, 0, 1, declared);
            if (Math.abs(x - 1) > WRONG_RESOLUTION || Math.abs(y - 1) > WRONG_RESOLUTION) {
                warnings.add(
                        new Warning(
                                WarningCode.RESOLUTION_WRONG,
                                String.format(
                                        Locale.ROOT,
                                        "%s says %.0f samples an inch, its markers say %.0f; the"
                                                + " printed size was not checked.",
                                        scan.name(),
                                        declared.x(),
                                        placement.samplesPerMm() * 25.4)));
            } else {
                scaleX = x;
                scaleY = y;
                scaleWarning(scan, x, y, warnings);
            }
        }
        if (placement.samplesPerMm() * 25.4 < LOW_SAMPLES_PER_INCH) {
            addOnce(
                    warnings,
                    WarningCode.RESOLUTION_LOW,
                    scan.name() + " is coarse. Scan at 300 samples an inch.");
        }
        int expected = located.sheet().markers().size();
        int found = located.markerCentres().size();
        if (found < expected) {
            warnings.add(markersMissing(scan.name(), expected - found, expected));
        }
        if (!located.codeRead()) {
            warnings.add(
                    new Warning(
                            WarningCode.SHEET_CODE_UNREAD,
                            scan.name()
                                    + ": the sheet code cannot be read; chart and print number are"
                                    + " taken from "
                                    + (chartGiven ? "the chart file." : "the other scans.")));
        }
        covered(samples, warnings);
        return new PlacementSummary(
                scan.name(),
                located.sheet().number(),
                found,
                expected,
                located.residualMm(),
                scaleX,
                scaleY,
                placement.rotationDegrees(),
                placement.samplesPerMm());
    }

    /**
     * Patches that lie in none of the scans of their sheet.
     *
     * @param warnings they are told here
     */
    static void outside(List<SheetSamples> scans, List<Warning> warnings) {
        Map<Integer, List<SheetSamples>> bySheet =
                scans.stream()
                        .collect(
                                Collectors.groupingBy(
                                        scan -> scan.located().sheet().number(),
                                        TreeMap::new,
                                        Collectors.toList()));
        for (List<SheetSamples> of : bySheet.values()) {
            Set<String> seen = new HashSet<>();
            for (SheetSamples scan : of) {
                scan.samples().forEach(sample -> seen.add(sample.patch().id()));
                scan.located().unlike().forEach(patch -> seen.add(patch.id()));
            }
            int outside = of.get(0).located().sheet().patches().size() - seen.size();
            if (outside > 0) {
                String names =
                        of.stream()
                                .map(scan -> scan.scan().name())
                                .collect(Collectors.joining(", "));
                warnings.add(
                        new Warning(
                                WarningCode.PATCHES_MISSING, outside(names, of.size(), outside)));
            }
        }
    }

    private static String outside(String names, int scans, int patches) {
        return names
                + ": "
                + (patches == 1 ? "1 patch lies" : patches + " patches lie")
                + (scans == 1 ? " outside the scan" : " in none of these scans")
                + (patches == 1 ? " and was" : " and were")
                + " not read. Scan the whole sheet, or name a scan of the rest too.";
    }

    private static void covered(SheetSamples samples, List<Warning> warnings) {
        List<Patch> unlike = samples.located().unlike();
        String name = samples.scan().name();
        if (!unlike.isEmpty()) {
            boolean one = unlike.size() == 1;
            DoubleSummaryStatistics across =
                    unlike.stream().mapToDouble(p -> p.area().centre().x()).summaryStatistics();
            DoubleSummaryStatistics down =
                    unlike.stream().mapToDouble(p -> p.area().centre().y()).summaryStatistics();
            warnings.add(
                    new Warning(
                            WarningCode.PATCHES_MISSING,
                            String.format(
                                    Locale.ROOT,
                                    "%s: %s covered, or not where %s should be, %s from the left and"
                                            + " %s from the top of the page; %s left out.",
                                    name,
                                    one ? "1 patch is" : unlike.size() + " patches are",
                                    one ? "it" : "they",
                                    millimetres(across),
                                    millimetres(down),
                                    one ? "it was" : "they were")));
        }
    }

    private static String millimetres(DoubleSummaryStatistics places) {
        long from = Math.round(places.getMin());
        long to = Math.round(places.getMax());
        return from == to ? from + " mm" : from + " to " + to + " mm";
    }

    private static void scaleWarning(ScanInfo scan, double x, double y, List<Warning> warnings) {
        if (PlacementSummary.resized(x, y)) {
            warnings.add(
                    new Warning(
                            WarningCode.PRINTED_SCALE,
                            String.format(
                                    Locale.ROOT,
                                    PlacementSummary.unequal(x, y)
                                            ? "%s: the sheet measures %.1f %% across and %.1f %% down"
                                                    + " in the scan: it was stretched by the scanner,"
                                                    + " by a resize or by the printer's feed."
                                            : "%s: printed at %.1f %% across and %.1f %% down instead"
                                                    + " of 100 %%.",
                                    scan.name(),
                                    100 * x,
                                    100 * y)));
        }
    }

    private static void addOnce(List<Warning> warnings, WarningCode code, String text) {
        if (warnings.stream().noneMatch(warning -> warning.code() == code)) {
            warnings.add(new Warning(code, text));
        }
    }

    /** Printed over intended size along a direction of the page. */
    private static double scale(
            Placement placement,
            PointMm middle,
            double dx,
            double dy,
            ScanInfo.Resolution declared) {
        double reach = 60;
        PointPx from =
                placement.toScan(new PointMm(middle.x() - reach * dx, middle.y() - reach * dy));
        PointPx to =
                placement.toScan(new PointMm(middle.x() + reach * dx, middle.y() + reach * dy));
        double mm =
                Math.hypot(
                        (to.x() - from.x()) / declared.x() * 25.4,
                        (to.y() - from.y()) / declared.y() * 25.4);
        return mm / (2 * reach);
    }
}
