package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Warning;
import org.printassay.reading.WarningCode;
import org.printassay.scan.ScanInfo;
import org.printassay.scannermodel.Circumstances;
import org.printassay.scannermodel.FittedColour;
import org.printassay.scannermodel.ScannerCalibration;

/**
 * Where a calibration is used outside what it was made for, in words: another paper, printer or
 * scanner, other settings or exposure, or colours that it was not made from.
 */
final class CalibrationWarnings {
    /** Declared resolutions that differ by more are other settings. */
    private static final double SAME_RESOLUTION = 0.02;

    /** L* of the same paper in two scans. */
    private static final double OTHER_EXPOSURE = 1.5;

    private final String name;
    private final ScannerCalibration calibration;
    private final PrintDetails details;

    /**
     * Of one calibration and one print.
     *
     * @param name of the calibration's file, for people
     */
    CalibrationWarnings(String name, ScannerCalibration calibration, PrintDetails details) {
        this.name = name;
        this.calibration = calibration;
        this.details = details;
    }

    /** All that apply to scans that it gave colour. */
    List<Warning> of(List<ScanPart> parts, ReadingSet readings) {
        CalibrationMatch match = CalibrationMatch.of(calibration.made(), details);
        List<Warning> warnings = new ArrayList<>();
        paper(match).ifPresent(warnings::add);
        printerAndScanner(match.others()).ifPresent(warnings::add);
        settings(parts).ifPresent(warnings::add);
        exposure(readings).ifPresent(warnings::add);
        range(readings).ifPresent(warnings::add);
        return warnings;
    }

    /** Inks on another kind of paper have other spectra, which three channels cannot tell. */
    private Optional<Warning> paper(CalibrationMatch match) {
        String was = match.was();
        if (match.unsaid()) {
            return warning(
                    WarningCode.CALIBRATION_PAPER,
                    name
                            + " holds for the printer and the kind of paper that it was made with; "
                            + (was == null ? "it does not say which" : "it was made on " + was)
                            + ". On another, colours can be off by several dE00.");
        }
        if (!match.otherPaper()) {
            return Optional.empty();
        }
        return warning(
                WarningCode.CALIBRATION_PAPER,
                name
                        + " was made on "
                        + was
                        + ", this print is on "
                        + match.is()
                        + ": colours can be off by several dE00, and the intervals are wider. Make a"
                        + " calibration on this kind of paper.");
    }

    private Optional<Warning> printerAndScanner(List<String> others) {
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
                || !PrintDetails.same(made.paper(), details.paper())) {
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
            count += away > CalibrationUse.OUTSIDE ? 1 : 0;
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

    private static Optional<Warning> warning(WarningCode code, String text) {
        return Optional.of(new Warning(code, text));
    }
}
