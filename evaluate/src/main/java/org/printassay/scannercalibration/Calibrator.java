package org.printassay.scannercalibration;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.printassay.calibrate.ScanColour;
import org.printassay.calibrate.ScanLights;
import org.printassay.calibrate.ScanPart;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.evaluation.InputFiles;
import org.printassay.evaluation.Progress;
import org.printassay.evaluation.ScanParts;
import org.printassay.evaluation.SourceFile;
import org.printassay.measurement.MeasurementFile;
import org.printassay.measurement.MeasurementReader;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.Circumstances;
import org.printassay.scannermodel.CodeCurves;
import org.printassay.scannermodel.ScannerCalibration;
import org.printassay.scannermodel.Straightening;
import org.printassay.scannermodel.TrainingPatch;

/**
 * Calibrates a scanner with a print that was scanned and measured. The scan is read as its profile
 * says, else as sRGB; where the greys show that its channels are not linear they are straightened
 * and the scan is read again, because uneven and stray light can be removed from linear light only.
 */
public final class Calibrator {
    /** Readings of the scan, at most: two rounds of straightening settle. */
    private static final int READINGS = 3;

    private Calibrator() {}

    /**
     * A calibration and what the user must know about its scans.
     *
     * @param calibration the calibration
     * @param warnings about the scans that it was made from
     */
    public record Result(ScannerCalibration calibration, List<Warning> warnings) {
        public Result {
            warnings = List.copyOf(warnings);
        }
    }

    /** What a reading of the scans gave. */
    private record Seen(
            CodeLight codes,
            ScanInfo scan,
            ScanLights lights,
            List<TrainingPatch> patches,
            List<SourceFile> files,
            List<Warning> warnings) {}

    /**
     * Calibrates.
     *
     * @throws Problem when a file cannot be read, or the files do not belong together
     */
    public static Result calibrate(CalibrationRequest request, Progress progress) throws Problem {
        if (request.scans().isEmpty()) {
            throw Problem.usage("name at least one scan of the print with --scan.");
        }
        MeasurementFile measured = MeasurementReader.read(request.measurement());
        Matching matching = new Matching(measured);
        Optional<Chart> chart = Optional.empty();
        if (request.chart().isPresent()) {
            chart = Optional.of(ChartFile.read(request.chart().get()));
        }
        Seen seen =
                read(
                        request.scans(),
                        ScanParts.profiled(Optional.empty()),
                        chart,
                        matching,
                        share -> progress.reached(share / READINGS));
        for (int reading = 1; reading < READINGS; reading++) {
            Straightening straight = Straightening.of(seen.patches());
            if (straight == null) {
                break;
            }
            CodeCurves curves = CodeCurves.of(seen.codes(), straight);
            double done = (double) reading / READINGS;
            seen =
                    read(
                            request.scans(),
                            scan -> ScanColour.straightened(curves),
                            chart,
                            matching,
                            share -> progress.reached(done + share / READINGS));
        }
        Training training = Training.of(measured.name(), seen.patches());
        List<Circumstances.Source> files = new ArrayList<>();
        seen.files().forEach(f -> files.add(new Circumstances.Source(f.name(), f.sha256())));
        SourceFile measurement = InputFiles.describe(request.measurement());
        files.add(new Circumstances.Source(measurement.name(), measurement.sha256()));
        ScanInfo scan = seen.scan();
        return new Result(
                new ScannerCalibration(
                        CodeCurves.of(seen.codes()),
                        training.fit().model(),
                        training.fit().error(),
                        training.fit().colours(),
                        seen.lights().paper(),
                        training.leftOut(),
                        seen.lights().strayLightKnown(),
                        new Circumstances(
                                request.scanner(),
                                request.printer(),
                                request.paper(),
                                request.family(),
                                scan.samplesPerInch().map(ScanInfo.Resolution::x).orElse(null),
                                scan.bits(),
                                scan.iccProfile().map(InputFiles::sha256).orElse(null),
                                measured.condition().map(Enum::name).orElse(null),
                                files)),
                seen.warnings());
    }

    private static Seen read(
            List<Path> scans,
            ScanParts.Meaning meaning,
            Optional<Chart> chart,
            Matching matching,
            Progress progress)
            throws Problem {
        ScanParts.Read read = ScanParts.read(scans, Calibrator.inColour(meaning), chart, progress);
        List<ScanPart> parts = read.parts();
        for (ScanPart part : parts) {
            if (part.samples().located().photographed()) {
                throw Problem.input(
                        part.samples().scan().name(),
                        "is a photograph, or the sheet did not lie flat. Scan it on the flatbed that"
                                + " is to be calibrated.");
            }
        }
        ScanLights lights = ScanLights.of(parts);
        if (lights.paperClipped()) {
            throw Problem.input(
                    parts.get(0).samples().scan().name(),
                    "paper is at the end of the scanner's range, so it cannot be calibrated. Switch"
                            + " automatic exposure off and scan again.");
        }
        List<Warning> warnings = new ArrayList<>(read.warnings());
        warnings.addAll(lights.warnings());
        return new Seen(
                parts.get(0).colour().codeLight(),
                parts.get(0).samples().scan(),
                lights,
                matching.of(lights),
                read.files(),
                warnings);
    }

    private static ScanParts.Meaning inColour(ScanParts.Meaning meaning) {
        return scan -> {
            if (scan.channels() != 3) {
                throw Problem.input(scan.name(), "is grey. Scan the print in colour.");
            }
            return meaning.of(scan);
        };
    }
}
