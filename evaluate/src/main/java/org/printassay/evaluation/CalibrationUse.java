package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Warning;
import org.printassay.scan.ScanFiles;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.Circumstances;
import org.printassay.scannermodel.LeaveOneOut;
import org.printassay.scannermodel.ScannerCalibration;

/** A calibration in use, and whether it holds for this print and these scans. */
final class CalibrationUse {
    /** Further outside the training colours than this is extrapolation, CIELAB. */
    static final double OUTSIDE = 3;

    /**
     * Standard error on a paper, with a printer or a scanner that it was not made for: published
     * are differences above dE 7 for a model of no paper in particular (design, 6.7); the shares
     * are common practice, no source.
     */
    private static final Lab FOREIGN = new Lab(3, 4, 4);

    /**
     * The same where it is not said on which paper either was made (common practice, no source).
     */
    private static final Lab UNSAID = new Lab(1.5, 2, 2);

    /** Standard error, as a share of how far a colour lies outside those it was made from. */
    private static final double GUESSED = 0.5;

    private final String name;
    private final SourceFile file;
    private final ScannerCalibration calibration;
    private final PrintDetails details;

    private CalibrationUse(
            String name, SourceFile file, ScannerCalibration calibration, PrintDetails details) {
        this.name = name;
        this.file = file;
        this.calibration = calibration;
        this.details = details;
    }

    /**
     * The calibration that is asked for, if any.
     *
     * @throws Problem when it cannot be read, or a profile is asked for too
     */
    static Optional<CalibrationUse> of(EvaluationRequest request) throws Problem {
        if (request.calibration().isEmpty()) {
            return Optional.empty();
        }
        if (request.profile().isPresent()) {
            throw Problem.usage("name a profile or a calibration of the scanner, not both.");
        }
        Path path = request.calibration().get();
        ScannerCalibration calibration = CalibrationFile.read(path);
        return Optional.of(
                new CalibrationUse(
                        ScanFiles.displayName(path),
                        InputFiles.describe(path),
                        calibration,
                        request.details()));
    }

    ScanParts.Meaning meaning() {
        return scan -> ScanColour.calibrated(name, calibration, scan);
    }

    /**
     * The calibration, and how far it is off on this print.
     *
     * @param readings {@link #widened}
     */
    CalibrationSummary summary(ReadingSet readings) {
        Circumstances made = calibration.made();
        LeaveOneOut error = calibration.error();
        return new CalibrationSummary(
                file,
                made.scanner(),
                made.printer(),
                made.paper(),
                made.family(),
                error.meanDeltaE00(),
                error.p95DeltaE00(),
                error.maxDeltaE00(),
                error.patches(),
                error.colours(),
                expected(readings));
    }

    /**
     * Mean dE00 to expect: of each reading, what the calibration expects and the mean dE00 of what
     * its errors have more than the calibration's own, in squares, for they are independent.
     */
    private double expected(ReadingSet readings) {
        double own = calibration.expectedDeltaE00();
        double sum = 0;
        int n = 0;
        for (int i = 0; i < readings.calibration().size(); i++) {
            Lab lab = readings.readings().get(i).lab();
            if (lab != null) {
                Lab all = readings.calibration().get(i);
                sum += Math.hypot(own, meanShift(lab, all, calibration.errorNear(lab)));
                n++;
            }
        }
        return n == 0 ? own : sum / n;
    }

    /**
     * Mean dE00 of what the error of a colour has more than its own, L*, a* and b* moved one after
     * the other. Lengths of normal errors are on average the root of their mean square times the
     * root of v / (v + pi/2 - 1), for v directions: exact for one (0.80), within 0.6 % for two and
     * three alike (0.89, 0.92: means of the chi distribution). For unequal ones v is the effective
     * number (Welch and Satterthwaite, as in ISO/IEC Guide 98-3, G.4).
     *
     * @param all one standard error
     * @param own the part of it that is not to count
     */
    private static double meanShift(Lab lab, Lab all, Lab own) {
        double l = square(lab, more(all.l(), own.l()), 0, 0);
        double a = square(lab, 0, more(all.a(), own.a()), 0);
        double b = square(lab, 0, 0, more(all.b(), own.b()));
        double sum = l + a + b;
        if (sum == 0) {
            return 0;
        }
        double directions = sum * sum / (l * l + a * a + b * b);
        return Math.sqrt(sum * directions / (directions + Math.PI / 2 - 1));
    }

    private static double more(double all, double own) {
        return Math.sqrt(Math.max(0, all * all - own * own));
    }

    private static double square(Lab lab, double l, double a, double b) {
        double moved = DeltaE.ciede2000(lab, new Lab(lab.l() + l, lab.a() + a, lab.b() + b));
        return moved * moved;
    }

    /**
     * The readings with what a calibration is off where it was not made for this print: known to be
     * another paper, printer or scanner, or not said; and for colours that it was not made from.
     */
    ReadingSet widened(ReadingSet set) {
        if (set.calibration().isEmpty()) {
            return set;
        }
        Lab foreign = foreign();
        List<Lab> best = set.readings().stream().map(Reading::best).toList();
        List<Double> outside = calibration.outside(best);
        List<Lab> errors = new ArrayList<>();
        for (int i = 0; i < outside.size(); i++) {
            Lab error = set.calibration().get(i);
            double guess = outside.get(i) > OUTSIDE ? GUESSED * outside.get(i) : 0;
            errors.add(
                    new Lab(
                            together(error.l(), foreign.l(), guess),
                            together(error.a(), foreign.a(), guess),
                            together(error.b(), foreign.b(), guess)));
        }
        return set.withCalibration(errors);
    }

    private static double together(double one, double other, double third) {
        return Math.hypot(Math.hypot(one, other), third);
    }

    private Lab foreign() {
        CalibrationMatch match = CalibrationMatch.of(calibration.made(), details);
        return match.foreign() ? FOREIGN : match.unsaid() ? UNSAID : new Lab(0, 0, 0);
    }

    /** Where the calibration is used outside what it was made for. */
    List<Warning> warnings(List<ScanPart> parts, ReadingSet readings) {
        return parts.stream().noneMatch(part -> part.colour().calibration().isPresent())
                ? List.of()
                : new CalibrationWarnings(name, calibration, details).of(parts, readings);
    }
}
