package org.printassay.scannercalibration;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanLights;
import org.printassay.calibrate.ScanReadings;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.colour.LinearRgb;
import org.printassay.evaluation.InputFiles;
import org.printassay.evaluation.InstrumentFiles;
import org.printassay.evaluation.Progress;
import org.printassay.evaluation.ScanParts;
import org.printassay.evaluation.SourceFile;
import org.printassay.evaluation.ToldApart;
import org.printassay.measurement.MeasurementFile;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.CodeLight;
import org.printassay.scan.ScanFiles;
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
            List<TrainingPatch> patches,
            LinearRgb paper,
            boolean strayLightKnown,
            @Nullable Double lightDeltaE00,
            List<Warning> warnings) {}

    /** Reads the scans again, codes taken to mean other light. */
    @FunctionalInterface
    private interface Reader {
        Seen read(ScanParts.Meaning meaning, Progress progress) throws Problem;
    }

    /**
     * Calibrates.
     *
     * @throws Problem when a file cannot be read, or the files do not belong together
     */
    public static Result calibrate(CalibrationRequest request, Progress progress) throws Problem {
        if (request.scans().isEmpty()) {
            throw Problem.usage("name at least one scan of the print with --scan.");
        }
        if (request.target().isPresent() && request.scans().size() > 1) {
            throw Problem.usage("name one scan of a reference target.");
        }
        List<Circumstances.Source> files = new ArrayList<>();
        for (Path file : request.scans()) {
            files.add(source(file));
        }
        files.add(source(request.measurement()));
        Print print = new Print(request);
        Reader reader = request.target().isPresent() ? target(request) : print;
        Seen seen =
                reader.read(
                        ScanParts.profiled(Optional.empty()),
                        share -> progress.reached(share / READINGS));
        for (int reading = 1; reading < READINGS; reading++) {
            Straightening straight = Straightening.of(seen.patches());
            if (straight == null) {
                break;
            }
            CodeCurves curves = CodeCurves.of(seen.codes(), straight);
            double done = (double) reading / READINGS;
            seen =
                    reader.read(
                            scan -> ScanColour.straightened(curves),
                            share -> progress.reached(done + share / READINGS));
        }
        String name = ScanFiles.displayName(request.measurement());
        Training training = Training.of(name, seen.patches());
        ScanInfo scan = seen.scan();
        return new Result(
                new ScannerCalibration(
                        CodeCurves.of(seen.codes()),
                        training.fit().model(),
                        training.fit().error(),
                        training.fit().colours(),
                        seen.paper(),
                        training.leftOut(),
                        seen.strayLightKnown(),
                        seen.lightDeltaE00(),
                        new Circumstances(
                                request.scanner(),
                                request.printer(),
                                request.paper(),
                                request.family(),
                                scan.samplesPerInch().map(ScanInfo.Resolution::x).orElse(null),
                                scan.bits(),
                                scan.iccProfile().map(InputFiles::sha256).orElse(null),
                                print.condition(),
                                files)),
                seen.warnings());
    }

    private static Circumstances.Source source(Path file) throws Problem {
        SourceFile source = InputFiles.describe(file);
        return new Circumstances.Source(source.name(), source.sha256());
    }

    private static Reader target(CalibrationRequest request) throws Problem {
        CalibrationRequest.Target target = request.target().orElseThrow();
        TargetReading reading =
                TargetReading.of(
                        request.scans().get(0),
                        target.layout(),
                        target.corners(),
                        request.measurement());
        return (meaning, progress) -> {
            ScanInfo scan = reading.scan().info();
            CodeLight codes = meaning.of(scan).codeLight();
            TargetReading.Read read = reading.read(codes);
            LinearRgb paper = TargetReading.paper(read.patches());
            List<Warning> warnings = new ArrayList<>();
            reading.missing().ifPresent(warnings::add);
            warnings.add(light(scan.name(), read.light()));
            return new Seen(codes, scan, read.patches(), paper, false, null, warnings);
        };
    }

    private static Warning light(String name, Optional<BackgroundLight> light) {
        String text =
                light.map(
                                by ->
                                        String.format(
                                                Locale.ROOT,
                                                "the scanner's light differs by %.1f %% over the"
                                                        + " target; its background evened it out.",
                                                by.falloffPercent()))
                        .orElse(
                                "how even the scanner's light is could not be told: what is uneven"
                                        + " stays in the calibration. Name \"background\" areas of"
                                        + " one colour, spread over the target, in its layout.");
        return new Warning(WarningCode.UNEVEN_LIGHT, name + ": " + text);
    }

    /** Scans and measurement of a print of a chart. */
    private static final class Print implements Reader {
        private final CalibrationRequest request;
        private @Nullable MeasurementFile measured;
        private Optional<Warning> identity = Optional.empty();

        Print(CalibrationRequest request) {
            this.request = request;
        }

        @Nullable String condition() {
            return measured == null ? null : measured.condition().map(Enum::name).orElse(null);
        }

        @Override
        public Seen read(ScanParts.Meaning meaning, Progress progress) throws Problem {
            Optional<Chart> chart = Optional.empty();
            if (request.chart().isPresent()) {
                chart = Optional.of(ChartFile.read(request.chart().get()));
            }
            ScanParts.Read read =
                    ScanParts.read(request.scans(), inColour(meaning), chart, progress);
            List<ScanPart> parts = read.parts();
            for (ScanPart part : parts) {
                if (part.samples().located().photographed()) {
                    throw Problem.input(
                            part.samples().scan().name(),
                            "is a photograph, or the sheet did not lie flat. Scan it on the flatbed"
                                    + " that is to be calibrated.");
                }
            }
            refuseOtherProfiles(parts);
            ScanLights lights = ScanLights.of(parts);
            if (lights.different().isPresent()) {
                ScanReadings.Different two = lights.different().get();
                ToldApart names = ToldApart.of(request.scans());
                throw Problem.chart(
                        names.name(two.second()),
                        two.why()
                                + " than "
                                + names.name(two.first())
                                + ". Name scans of one print.");
            }
            if (lights.paperClipped()) {
                throw Problem.input(
                        parts.get(0).samples().scan().name(),
                        "paper is at the end of the scanner's range, so it cannot be calibrated."
                                + " Switch automatic exposure off and scan again.");
            }
            Chart shown = parts.get(0).samples().located().chart();
            MeasurementFile file = InstrumentFiles.read(request.measurement(), Optional.of(shown));
            Matching matching = new Matching(file);
            if (measured == null) {
                identity = identity(parts.get(0), lights, matching, file.name());
            }
            measured = file;
            List<Warning> warnings = new ArrayList<>(read.warnings());
            identity.ifPresent(warnings::add);
            warnings.addAll(lights.warnings());
            return new Seen(
                    parts.get(0).colour().codeLight(),
                    parts.get(0).samples().scan(),
                    matching.of(lights),
                    lights.paper(),
                    lights.strayLightKnown(),
                    lights.lightDeltaE00(),
                    warnings);
        }
    }

    /** Colours are those by the scan's own profile, as only a first reading has them. */
    private static Optional<Warning> identity(
            ScanPart part, ScanLights lights, Matching matching, String measurement)
            throws Problem {
        ScanColour colour = part.colour();
        return SamePrint.of(matching.pairs(lights, colour), colour.trust() == Trust.PROFILED_SCAN)
                .judged(measurement, part.samples().scan().name());
    }

    /** What codes mean is learnt once for all scans. */
    private static void refuseOtherProfiles(List<ScanPart> parts) throws Problem {
        ScanInfo first = parts.get(0).samples().scan();
        for (ScanPart part : parts) {
            ScanInfo scan = part.samples().scan();
            if (!Arrays.equals(scan.iccProfile().orElse(null), first.iccProfile().orElse(null))) {
                throw Problem.input(
                        scan.name(),
                        "carries another colour profile than "
                                + first.name()
                                + ". Scan again with the same settings, or name one of the two.");
            }
        }
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
