package org.printassay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.chart.Chart;
import org.printassay.chart.ChartFile;
import org.printassay.colour.icc.Intent;
import org.printassay.evaluation.EvaluationRequest;
import org.printassay.evaluation.Feed;
import org.printassay.evaluation.PrintDetails;
import org.printassay.metric.ToneAim;
import org.printassay.problem.Problem;
import org.printassay.promise.PrintRoute;
import org.printassay.promise.PrinterProfile;
import org.printassay.promise.PromisedTone;
import org.printassay.report.paged.PageFormat;
import picocli.CommandLine.Option;

/** What can be said about a print and how it is to be evaluated, for every command that does. */
final class EvaluationOptions {
    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "chart.json of the print, when its sheet code is not enough.")
    private @Nullable Path chart;

    @Option(names = "--paper", paramLabel = "NAME", description = "What the paper is called.")
    private @Nullable String paper;

    @Option(names = "--printer", paramLabel = "NAME", description = "What the printer is called.")
    private @Nullable String printer;

    @Option(
            names = "--route",
            paramLabel = "TEXT",
            description =
                    "How it was printed: program, profile, intent, driver settings (default: as in the"
                            + " chart file). Where it says toned or monochrome, greys are not"
                            + " expected to be neutral.")
    private @Nullable String route;

    @Option(
            names = "--dried-hours",
            paramLabel = "H",
            description = "Hours between printing and scanning.")
    private @Nullable Double driedHours;

    @Option(
            names = "--profile",
            paramLabel = "FILE",
            description = "The scanner's ICC profile, instead of the one in the scan.")
    private @Nullable Path profile;

    @Option(
            names = "--calibration",
            paramLabel = "FILE",
            description = "calibration.json of the scanner, instead of a profile.")
    private @Nullable Path calibration;

    @Option(
            names = "--scanner",
            paramLabel = "NAME",
            description = "What the scanner is called; checked against the calibration.")
    private @Nullable String scanner;

    @Option(
            names = "--family",
            paramLabel = "NAME",
            description = "Kind of paper; checked against the calibration.")
    private @Nullable String family;

    @Option(
            names = "--feed",
            paramLabel = "SIDE",
            description =
                    "Side of the sheet that ran along the printer's feed: long-side (a short edge"
                            + " went in first) or short-side. Names lines and bands.")
    private @Nullable String feed;

    @Option(
            names = "--aim",
            paramLabel = "FILE",
            description =
                    "The printer's ICC profile: says how far the print is from what it promises, and"
                            + " whether missing or doubled colour management explains it.")
    private @Nullable Path aim;

    @Option(
            names = "--intent",
            paramLabel = "NAME",
            description =
                    "With --aim: the route's rendering intent: perceptual, relative, saturation,"
                            + " absolute (default: relative).")
    private @Nullable String intent;

    @Option(
            names = "--no-black-point-compensation",
            description = "With --aim: the route had black point compensation off.")
    private boolean noBlackPointCompensation;

    @Option(
            names = "--tone-aim",
            paramLabel = "NAME",
            defaultValue = "paper",
            description =
                    "What tone is held against: paper (the file's tones onto this paper), even-steps"
                            + " (equal steps of L*) or profile (what the profile of --aim predicts)"
                            + " (default: ${DEFAULT-VALUE}).")
    private String toneAim = "paper";

    @Option(
            names = "--threshold",
            paramLabel = "DL",
            defaultValue = "0.5",
            description =
                    "Difference in L* that counts as visible: 0.5 just visible side by side, 1.0"
                            + " clearly seen (default: ${DEFAULT-VALUE}).")
    private double threshold = 0.5;

    @Option(
            names = "--space",
            paramLabel = "NAME",
            defaultValue = "srgb",
            description =
                    "RGB encoding of a measurement file without --chart (default:"
                            + " ${DEFAULT-VALUE}).")
    private String space = "srgb";

    @Option(
            names = "--report-page",
            paramLabel = "PAGE",
            description = "Pages of the PDF: A4 or Letter (default: as the chart's page).")
    private @Nullable String reportPage;

    /**
     * The request for one print.
     *
     * @param files its scans or measurement files
     * @param said what is said about this print alone, before what the options say of all
     * @throws Problem when options are out of range, or the chart file cannot be read
     */
    EvaluationRequest request(List<Path> files, PrintDetails said) throws Problem {
        if (!(threshold >= 0.1 && threshold <= 5)) {
            throw Problem.usage("--threshold must be 0.1 to 5 L*, got " + threshold + ".");
        }
        if (driedHours != null && !(driedHours >= 0 && driedHours < 1e6)) {
            throw Problem.usage("--dried-hours must be 0 or more, got " + driedHours + ".");
        }
        PrintDetails details =
                new PrintDetails(
                        first(said.paper(), paper),
                        first(said.printer(), printer),
                        said.route() == null ? route() : said.route(),
                        first(said.driedHours(), driedHours),
                        scanner,
                        family);
        return new EvaluationRequest(
                files,
                Optional.ofNullable(chart),
                Optional.ofNullable(profile),
                details,
                threshold,
                Spaces.parse(space),
                Optional.ofNullable(calibration),
                feed(),
                aim(),
                toneAim());
    }

    /** Pages of the report that is handed on; empty to take them as the chart's. */
    Optional<PageFormat> pages() throws Problem {
        return ReportPageOption.format(reportPage);
    }

    private static <T> @Nullable T first(@Nullable T one, @Nullable T other) {
        return one == null ? other : one;
    }

    /** The chart that the user names. */
    Optional<Chart> expected() throws Problem {
        return chart == null ? Optional.empty() : Optional.of(ChartFile.read(chart));
    }

    /** Files that the options name and that are there; they must not be written over. */
    List<Path> files() {
        List<Path> all = new ArrayList<>();
        for (@Nullable Path file : Arrays.asList(chart, profile, calibration, aim)) {
            if (file != null && Files.exists(file)) {
                all.add(file);
            }
        }
        return all;
    }

    private Optional<Feed> feed() throws Problem {
        if (feed == null) {
            return Optional.empty();
        }
        Optional<Feed> side = Feed.ofKey(feed);
        if (side.isEmpty()) {
            throw Problem.usage("--feed must be long-side or short-side, got " + feed + ".");
        }
        return side;
    }

    /** As said, else as the chart file keeps it. */
    private @Nullable String route() throws Problem {
        return route == null && chart != null ? ChartFile.route(chart).orElse(null) : route;
    }

    private Optional<EvaluationRequest.Aim> aim() throws Problem {
        if (aim == null && (intent != null || noBlackPointCompensation)) {
            throw Problem.usage(
                    "--intent and --no-black-point-compensation go with --aim, the printer's"
                            + " profile.");
        }
        String named = intent == null ? "relative" : intent;
        Intent by =
                switch (named.toLowerCase(Locale.ROOT)) {
                    case "perceptual" -> Intent.PERCEPTUAL;
                    case "relative" -> Intent.RELATIVE;
                    case "saturation" -> Intent.SATURATION;
                    case "absolute" -> Intent.ABSOLUTE;
                    default ->
                            throw Problem.usage(
                                    "--intent must be perceptual, relative, saturation or absolute,"
                                            + " got "
                                            + PlainText.line(named)
                                            + ".");
                };
        return Optional.ofNullable(aim)
                .map(
                        file ->
                                new EvaluationRequest.Aim(
                                        file, new PrintRoute(by, !noBlackPointCompensation)));
    }

    private ToneAim toneAim() throws Problem {
        return switch (toneAim.toLowerCase(Locale.ROOT)) {
            case "paper" -> ToneAim.PAPER;
            case "even-steps" -> ToneAim.EVEN_STEPS;
            case "profile" -> {
                EvaluationRequest.Aim by = aim().orElse(null);
                if (by == null) {
                    throw Problem.usage(
                            "--tone-aim profile needs the printer's profile: --aim FILE.");
                }
                String name = PlainText.line(String.valueOf(by.profile().getFileName()));
                yield PromisedTone.of(PrinterProfile.read(by.profile(), name), by.route());
            }
            default ->
                    throw Problem.usage(
                            "--tone-aim must be paper, even-steps or profile, got "
                                    + PlainText.line(toneAim)
                                    + ".");
        };
    }
}
