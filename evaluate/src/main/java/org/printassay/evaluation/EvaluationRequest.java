package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.ToneAim;
import org.printassay.promise.PrintRoute;

/**
 * What to evaluate, and how.
 *
 * @param files scans of one print, or one measurement file; told apart by content
 * @param chart chart file of the print, when the sheet code is not enough
 * @param profile the scanner's ICC profile, instead of an embedded one
 * @param details what the user says about the print
 * @param threshold difference in L* that counts as visible
 * @param space RGB encoding of a measurement file whose chart is not known
 * @param calibration a calibration of the scanner, instead of a profile
 * @param feed which way the sheet went through the printer, where the user says so
 * @param aim the printer's profile, whose promise the print is compared with
 * @param toneAim which L* greys should have
 */
public record EvaluationRequest(
        List<Path> files,
        Optional<Path> chart,
        Optional<Path> profile,
        PrintDetails details,
        double threshold,
        RgbSpace space,
        Optional<Path> calibration,
        Optional<Feed> feed,
        Optional<Aim> aim,
        ToneAim toneAim) {
    /** Half an L*: just visible side by side (common practice, no source). */
    public static final double JUST_VISIBLE = 0.5;

    public EvaluationRequest {
        files = List.copyOf(files);
    }

    /**
     * A printer's profile and the route by which the print was made with it.
     *
     * @param profile file of the profile
     */
    public record Aim(Path profile, PrintRoute route) {}

    /** With the usual aim of tone. */
    public EvaluationRequest(
            List<Path> files,
            Optional<Path> chart,
            Optional<Path> profile,
            PrintDetails details,
            double threshold,
            RgbSpace space,
            Optional<Path> calibration,
            Optional<Feed> feed,
            Optional<Aim> aim) {
        this(
                files,
                chart,
                profile,
                details,
                threshold,
                space,
                calibration,
                feed,
                aim,
                ToneAim.PAPER);
    }

    /** The same with tone held against another aim. */
    public EvaluationRequest with(ToneAim other) {
        return new EvaluationRequest(
                files, chart, profile, details, threshold, space, calibration, feed, aim, other);
    }

    /** With nothing said about the feed, nor a printer's profile. */
    public EvaluationRequest(
            List<Path> files,
            Optional<Path> chart,
            Optional<Path> profile,
            PrintDetails details,
            double threshold,
            RgbSpace space,
            Optional<Path> calibration) {
        this(
                files,
                chart,
                profile,
                details,
                threshold,
                space,
                calibration,
                Optional.empty(),
                Optional.empty());
    }

    /** Without a calibration. */
    public EvaluationRequest(
            List<Path> files,
            Optional<Path> chart,
            Optional<Path> profile,
            PrintDetails details,
            double threshold,
            RgbSpace space) {
        this(
                files,
                chart,
                profile,
                details,
                threshold,
                space,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Scans or a measurement file with nothing said about them. */
    public static EvaluationRequest of(Path... files) {
        return new EvaluationRequest(
                List.of(files),
                Optional.empty(),
                Optional.empty(),
                PrintDetails.UNKNOWN,
                JUST_VISIBLE,
                RgbSpace.SRGB);
    }
}
