package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanReadings;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.locate.LocatedSheet;
import org.printassay.metric.Judgement;
import org.printassay.problem.Problem;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;

/** Scans of one print to an evaluation. */
final class ScanEvaluation {
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
                    PlacementCheck.of(part.samples(), expected.isPresent(), warnings)
                            .through(profile(part, named)));
        }
        PlacementCheck.outside(parts.stream().map(ScanPart::samples).toList(), warnings);
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
                        () ->
                                SurfaceJudge.judge(
                                        parts,
                                        fine,
                                        read.scattered(),
                                        read.readings(),
                                        request.feed()));
        ReadingSet readings =
                calibration.map(use -> use.widened(read.readings())).orElse(read.readings());
        Judgement judged = Judgement.of(readings, request.threshold(), request.toneAim());
        PrintSurface surface = found.join();
        warnings.addAll(coarse(parts, fine));
        warnings.addAll(SurfaceWarnings.of(parts, fine, read.scattered(), surface));
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
}
