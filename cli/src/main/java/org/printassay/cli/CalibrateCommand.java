package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.printassay.locate.PointPx;
import org.printassay.problem.Problem;
import org.printassay.reading.Warning;
import org.printassay.scannercalibration.CalibrationRequest;
import org.printassay.scannercalibration.Calibrator;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.LeaveOneOut;
import org.printassay.scannermodel.ScannerCalibration;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a calibration of a scanner from a print that was scanned and measured. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description =
                "Calibrates a scanner for one printer and kind of paper, with a print that was"
                        + " scanned and measured.",
        footer = {
            "",
            "Example:",
            "  printassay calibrate --scan scan.tif --measurement measured.txt --paper \"Paper A\"",
            "  printassay evaluate other.tif --calibration scan.tif-calibration/calibration.json"
        })
final class CalibrateCommand implements Callable<Integer> {
    private static final String NAME = "calibration.json";

    @Option(
            names = "--scan",
            required = true,
            arity = "1..*",
            paramLabel = "FILE",
            description = "Scans of one print of a chart, automatic corrections off.")
    private List<Path> scans = new ArrayList<>();

    @Option(
            names = "--measurement",
            required = true,
            paramLabel = "FILE",
            description = "An instrument's measurement of that same print.")
    private @SuppressWarnings("NullAway.Init") Path measurement;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "chart.json of the print, when its sheet code is not enough.")
    private @Nullable Path chart;

    @Option(
            names = "--target",
            paramLabel = "FILE",
            description =
                    "Layout of a reference target (printassay/target/1); --measurement is then its"
                            + " data file (ISO 12641).")
    private @Nullable Path target;

    @Option(
            names = "--corners",
            paramLabel = "PX",
            split = ",",
            description =
                    "Where the layout's four corners are in the scan, clockwise from the top left:"
                            + " x1,y1,x2,y2,x3,y3,x4,y4 in pixels.")
    private List<Double> corners = new ArrayList<>();

    @Option(names = "--scanner", paramLabel = "NAME", description = "What the scanner is called.")
    private @Nullable String scanner;

    @Option(names = "--printer", paramLabel = "NAME", description = "What the printer is called.")
    private @Nullable String printer;

    @Option(names = "--paper", paramLabel = "NAME", description = "What the paper is called.")
    private @Nullable String paper;

    @Option(
            names = "--family",
            paramLabel = "NAME",
            description =
                    "Kind of paper that the calibration is for; without it, for this paper only.")
    private @Nullable String family;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write (default: the first scan's name with -calibration).")
    private @Nullable Path out;

    @Option(names = "--force", description = "Write over another calibration.")
    private boolean force;

    @Option(names = "--json", description = "Print calibration.json.")
    private boolean json;

    @Spec
    private @SuppressWarnings("NullAway.Init") CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        OutputFolder folder = new OutputFolder(out == null ? defaultFolder() : out, inputs());
        if (!force && Files.exists(folder.path().resolve(NAME))) {
            throw Problem.output(
                    folder.path().toString(),
                    "holds a calibration already. Name another folder with --out, or write over it"
                            + " with --force.");
        }
        folder.refuseUnwritable();
        Calibrator.Result result;
        try (ProgressLine progress = new ProgressLine("Reading")) {
            result =
                    Calibrator.calibrate(
                            new CalibrationRequest(
                                    scans,
                                    measurement,
                                    Optional.ofNullable(chart),
                                    scanner,
                                    printer,
                                    paper,
                                    family,
                                    target()),
                            progress);
        }
        String text = CalibrationFile.write(result.calibration());
        folder.write(part -> Files.writeString(part.resolve(NAME), text));
        if (json) {
            for (Warning warning : result.warnings()) {
                spec.commandLine().getErr().println("- " + PlainText.line(warning.text()));
            }
            spec.commandLine().getErr().flush();
            spec.commandLine().getOut().print(text);
            spec.commandLine().getOut().flush();
        } else {
            print(result, folder.path());
        }
        return 0;
    }

    private Optional<CalibrationRequest.Target> target() throws Problem {
        if (target == null) {
            if (!corners.isEmpty()) {
                throw Problem.usage("--corners go with --target.");
            }
            return Optional.empty();
        }
        if (corners.size() != 8) {
            throw Problem.usage(
                    "--target needs --corners x1,y1,x2,y2,x3,y3,x4,y4: eight numbers, got "
                            + corners.size()
                            + ".");
        }
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < corners.size(); i += 2) {
            points.add(new PointPx(corners.get(i), corners.get(i + 1)));
        }
        return Optional.of(new CalibrationRequest.Target(target, points));
    }

    private List<Path> inputs() {
        List<Path> all = new ArrayList<>(scans);
        all.add(measurement);
        if (chart != null) {
            all.add(chart);
        }
        if (target != null) {
            all.add(target);
        }
        all.removeIf(file -> !Files.exists(file));
        return all;
    }

    private Path defaultFolder() {
        Path first = scans.get(0).toAbsolutePath().normalize();
        return first.resolveSibling(first.getFileName() + "-calibration");
    }

    private void print(Calibrator.Result result, Path folder) {
        ScannerCalibration calibration = result.calibration();
        LeaveOneOut error = calibration.error();
        for (Warning warning : result.warnings()) {
            say(warning.text());
        }
        say(
                String.format(
                        Locale.ROOT,
                        "Made from %d patches of %d colours. Each predicted without its colour:"
                                + " dE00 %.2f in the mean, 95 of 100 below %.2f, largest %.1f.",
                        error.patches(),
                        error.colours(),
                        error.meanDeltaE00(),
                        error.p95DeltaE00(),
                        error.maxDeltaE00()));
        Double light = calibration.lightDeltaE00();
        if (light != null) {
            say(
                    String.format(
                            Locale.ROOT,
                            "Expect dE00 %.2f in the mean on another print: the light of this scan is"
                                    + " known to %.2f, and so will be that of the next.",
                            calibration.expectedDeltaE00(),
                            light));
        }
        if (!calibration.leftOut().isEmpty()) {
            say(
                    "Left out, as scan and measurement show different colours: "
                            + String.join(", ", calibration.leftOut())
                            + ".");
        }
        if (!calibration.strayLightKnown()) {
            say("Stray light could not be told from this scan; it is part of the calibration.");
        }
        say("It holds for this scanner with these settings, this printer and this kind of paper.");
        spec.commandLine().getOut().println("Calibration: " + PlainText.path(folder.resolve(NAME)));
    }

    private void say(String text) {
        spec.commandLine().getOut().println("- " + PlainText.line(text));
    }
}
