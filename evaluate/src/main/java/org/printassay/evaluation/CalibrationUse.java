package org.printassay.evaluation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanColour;
import org.printassay.calibrate.ScanPart;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.problem.Problem;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanFiles;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.CalibrationFile;
import org.printassay.scannermodel.Circumstances;
import org.printassay.scannermodel.FittedColour;
import org.printassay.scannermodel.LeaveOneOut;
import org.printassay.scannermodel.ScannerCalibration;

/** A calibration in use, and whether it holds for this print and these scans. */
final class CalibrationUse {
    /** Declared resolutions that differ by more are other settings. */
    private static final double SAME_RESOLUTION = 0.02;

    /** Further outside the training colours than this is extrapolation, CIELAB. */
    private static final double OUTSIDE = 3;

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

    /** L* of the same paper in two scans. */
    private static final double OTHER_EXPOSURE = 1.5;

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
        Circumstances made = calibration.made();
        boolean family = made.family() != null && details.family() != null;
        String was = family ? made.family() : made.paper();
        String is = family ? details.family() : details.paper();
        boolean other =
                other("paper", was, is).isPresent()
                        || other("printer", made.printer(), details.printer()).isPresent()
                        || other("scanner", made.scanner(), details.scanner()).isPresent();
        return other ? FOREIGN : was == null || is == null ? UNSAID : new Lab(0, 0, 0);
    }

    /** Where the calibration is used outside what it was made for. */
    List<Warning> warnings(List<ScanPart> parts, ReadingSet readings) {
        List<Warning> warnings = new ArrayList<>();
        if (parts.stream().noneMatch(part -> part.colour().calibration().isPresent())) {
            return warnings;
        }
        paper().ifPresent(warnings::add);
        printerAndScanner().ifPresent(warnings::add);
        settings(parts).ifPresent(warnings::add);
        exposure(readings).ifPresent(warnings::add);
        range(readings).ifPresent(warnings::add);
        return warnings;
    }

    /** Inks on another kind of paper have other spectra, which three channels cannot tell. */
    private Optional<Warning> paper() {
        Circumstances made = calibration.made();
        boolean family = made.family() != null && details.family() != null;
        String was = family ? made.family() : made.paper();
        String is = family ? details.family() : details.paper();
        if (was == null || is == null) {
            return warning(
                    WarningCode.CALIBRATION_PAPER,
                    name
                            + " holds for the printer and the kind of paper that it was made with; "
                            + (was == null ? "it does not say which" : "it was made on " + was)
                            + ". On another, colours can be off by several dE00.");
        }
        if (same(was, is)) {
            return Optional.empty();
        }
        return warning(
                WarningCode.CALIBRATION_PAPER,
                name
                        + " was made on "
                        + was
                        + ", this print is on "
                        + is
                        + ": colours can be off by several dE00, and the intervals are wider. Make a"
                        + " calibration on this kind of paper.");
    }

    private Optional<Warning> printerAndScanner() {
        Circumstances made = calibration.made();
        List<String> others = new ArrayList<>();
        other("printer", made.printer(), details.printer()).ifPresent(others::add);
        other("scanner", made.scanner(), details.scanner()).ifPresent(others::add);
        return others.isEmpty()
                ? Optional.empty()
                : warning(
                        WarningCode.CALIBRATION_PAPER,
                        name
                                + " was made with another "
                                + String.join(" and another ", others)
                                + ": colours can be off by several dE00, and the intervals are"
                                + " wider.");
    }

    private static Optional<String> other(String what, @Nullable String was, @Nullable String is) {
        return was == null || is == null || same(was, is)
                ? Optional.empty()
                : Optional.of(what + " (" + was + ", not " + is + ")");
    }

    private Optional<Warning> settings(List<ScanPart> parts) {
        Circumstances made = calibration.made();
        Collection<String> differing = new TreeSet<>();
        for (ScanPart part : parts) {
            ScanInfo info = part.samples().scan();
            Double was = made.samplesPerInch();
            Double is = info.samplesPerInch().map(ScanInfo.Resolution::x).orElse(null);
            if (was != null && is != null && Math.abs(is / was - 1) > SAME_RESOLUTION) {
                differing.add(
                        String.format(
                                Locale.ROOT, "%.0f samples an inch instead of %.0f", is, was));
            }
            if (info.bits() != made.bits()) {
                differing.add(info.bits() + " bits instead of " + made.bits());
            }
            String profile = info.iccProfile().map(InputFiles::sha256).orElse(null);
            if (!Objects.equals(profile, made.profileSha256())) {
                differing.add("another colour profile or colour mode");
            }
        }
        return differing.isEmpty()
                ? Optional.empty()
                : warning(
                        WarningCode.CALIBRATION_SETTINGS,
                        "The scanner was set otherwise than for "
                                + name
                                + " ("
                                + String.join(", ", differing)
                                + "). Scan with the settings that it was made with.");
    }

    /** The same paper has to look the same. */
    private Optional<Warning> exposure(ReadingSet readings) {
        Circumstances made = calibration.made();
        if (made.paper() == null
                || details.paper() == null
                || !same(made.paper(), details.paper())) {
            return Optional.empty();
        }
        double is = lightest(readings.readings().stream().map(Reading::lab));
        double was = lightest(calibration.colours().stream().map(FittedColour::lab));
        return Math.abs(is - was) < OTHER_EXPOSURE
                ? Optional.empty()
                : warning(
                        WarningCode.CALIBRATION_SETTINGS,
                        String.format(
                                Locale.ROOT,
                                "The same paper reads L* %.1f now and was L* %.1f when %s was made:"
                                        + " the scanner's automatic exposure may be on, or its lamp"
                                        + " has changed. Calibrate it anew.",
                                is,
                                was,
                                name));
    }

    private static double lightest(Stream<@Nullable Lab> labs) {
        return labs.filter(Objects::nonNull).mapToDouble(Lab::l).max().orElse(100);
    }

    private Optional<Warning> range(ReadingSet readings) {
        List<Lab> labs =
                readings.readings().stream().map(Reading::lab).filter(Objects::nonNull).toList();
        int count = 0;
        double most = 0;
        for (double away : calibration.outside(labs)) {
            count += away > OUTSIDE ? 1 : 0;
            most = Math.max(most, away);
        }
        return count == 0
                ? Optional.empty()
                : warning(
                        WarningCode.CALIBRATION_RANGE,
                        String.format(
                                Locale.ROOT,
                                "%d patches have colours outside those that %s was made from, by up"
                                        + " to %.0f dE*ab: there it is a guess.",
                                count,
                                name,
                                most));
    }

    private static boolean same(String one, String other) {
        return one.strip().equalsIgnoreCase(other.strip());
    }

    private static Optional<Warning> warning(WarningCode code, String text) {
        return Optional.of(new Warning(code, text));
    }
}
