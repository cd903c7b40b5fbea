package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanPart;
import org.printassay.calibrate.ScanReadings;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.locate.LocatedSheet;
import org.printassay.locate.Placement;
import org.printassay.locate.PointPx;
import org.printassay.metric.Judgement;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.sample.SheetSamples;
import org.printassay.scan.ScanInfo;
import org.printassay.sheet.Patch;
import org.printassay.sheet.PointMm;

/** Scans of one print to an evaluation. */
final class ScanEvaluation {
    /** Declared resolutions further off than this are wrong, not a print of another size. */
    private static final double WRONG_RESOLUTION = 0.1;

    private static final double LOW_SAMPLES_PER_INCH = 250;

    private ScanEvaluation() {}

    static Evaluator.Result evaluate(EvaluationRequest request, Progress progress) throws Problem {
        Optional<Chart> expected = Optional.empty();
        if (request.chart().isPresent()) {
            expected = Optional.of(ChartFile.read(request.chart().get()));
        }
        Optional<CalibrationUse> calibration = CalibrationUse.of(request);
        ScanParts.Meaning meaning =
                calibration.isPresent()
                        ? calibration.get().meaning()
                        : ScanParts.profiled(request.profile());
        ScanParts.Read scans = ScanParts.read(request.files(), meaning, expected, progress);
        List<ScanPart> parts = scans.parts();
        List<Warning> warnings = new ArrayList<>(scans.warnings());
        List<PlacementSummary> placements = new ArrayList<>();
        String named =
                request.profile().isPresent()
                        ? InputFiles.describe(request.profile().get()).sha256()
                        : null;
        for (ScanPart part : parts) {
            placements.add(
                    placement(part.samples(), expected.isPresent(), warnings)
                            .through(profile(part, named)));
        }
        ScanReadings read = ScanReadings.of(parts);
        calibration.ifPresent(use -> warnings.addAll(use.warnings(parts, read.readings())));
        if (read.different().isPresent()) {
            ScanReadings.Different two = read.different().get();
            ToldApart names = ToldApart.of(request.files());
            throw Problem.chart(
                    names.name(two.second()),
                    two.why()
                            + " than "
                            + names.name(two.first())
                            + ". Evaluate each print on its own.");
        }
        warnings.addAll(0, read.warnings());
        LocatedSheet first = parts.get(0).samples().located();
        List<ScanPart> fine =
                parts.stream().filter(part -> part.samples().enlargement().isEmpty()).toList();
        CompletableFuture<PrintSurface> found =
                CompletableFuture.supplyAsync(
                        () -> SurfaceJudge.judge(parts, fine, read.readings(), request.feed()));
        ReadingSet readings =
                calibration.map(use -> use.widened(read.readings())).orElse(read.readings());
        Judgement judged = Judgement.of(readings, request.threshold(), request.toneAim());
        PrintSurface surface = found.join();
        warnings.addAll(coarse(parts, fine));
        warnings.addAll(SurfaceWarnings.of(parts, fine, surface));
        Evaluation evaluation =
                Assembly.evaluation(
                        readings,
                        judged,
                        Evaluation.builder(readings.trust(), readings.space().key())
                                .chartId(first.chart().id())
                                .sheets(sheets(parts))
                                .print(first.chart().print())
                                .details(request.details())
                                .fromScan(true)
                                .files(scans.files())
                                .placements(placements)
                                .strayLight(read.strayLight())
                                .warnings(warnings)
                                .calibration(
                                        calibration.map(use -> use.summary(readings)).orElse(null))
                                .surface(surface),
                        new Assembly.Light(read.falloffPercent(), read.unevenness()));
        return new Evaluator.Result(evaluation, parts.stream().map(ScanPart::samples).toList());
    }

    /** That lines, bands and grain are told by the other scans of a sheet. */
    private static List<Warning> coarse(List<ScanPart> parts, List<ScanPart> fine) {
        List<Warning> warnings = new ArrayList<>();
        for (ScanPart part : parts) {
            int sheet = part.samples().located().sheet().number();
            boolean others =
                    fine.stream()
                            .anyMatch(
                                    p ->
                                            p.samples().located().sheet().number() == sheet
                                                    && !p.samples().surface().traces().isEmpty());
            if (others && !fine.contains(part)) {
                warnings.add(
                        new Warning(
                                WarningCode.RESOLUTION_LOW,
                                part.samples().scan().name()
                                        + " holds too little detail for lines, bands and grain:"
                                        + " they are judged by the other scans alone."));
            }
        }
        return warnings;
    }

    private static List<Integer> sheets(List<ScanPart> parts) {
        return parts.stream()
                .map(part -> part.samples().located().sheet().number())
                .distinct()
                .sorted()
                .toList();
    }

    /** The profile that a scan was read through; null when it was read without. */
    private static @Nullable String profile(ScanPart part, @Nullable String named) {
        return part.colour().trust() != Trust.PROFILED_SCAN
                ? null
                : named != null
                        ? named
                        : part.samples().scan().iccProfile().map(InputFiles::sha256).orElse(null);
    }

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

    private static PlacementSummary placement(
            SheetSamples samples, boolean chartGiven, List<Warning> warnings) {
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
        missing(samples, warnings);
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

    private static void missing(SheetSamples samples, List<Warning> warnings) {
        List<Patch> unlike = samples.located().unlike();
        String name = samples.scan().name();
        int outside =
                samples.located().sheet().patches().size()
                        - samples.samples().size()
                        - unlike.size();
        if (outside > 0) {
            warnings.add(
                    new Warning(
                            WarningCode.PATCHES_MISSING,
                            name
                                    + ": "
                                    + (outside == 1
                                            ? "1 patch lies outside the scan and was"
                                            : outside + " patches lie outside the scan and were")
                                    + " not read. Scan the whole sheet, or name a scan of the rest"
                                    + " too."));
        }
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
        if (Math.abs(x - 1) > 0.006 || Math.abs(y - 1) > 0.006) {
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
