package org.printassay.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparability.Reason;
import org.printassay.evaluation.CalibrationSummary;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MeasurementSummary;
import org.printassay.evaluation.PlacementSummary;
import org.printassay.evaluation.PrintDetails;
import org.printassay.reading.Trust;

/**
 * With which instrument or scanner prints were read. Only what the same one has read is off alike.
 */
public final class Readers {
    private Readers() {}

    /** What a scanner is called, by the user or by the calibration; null when nobody says. */
    static @Nullable String scanner(Evaluation print) {
        String said = print.details().scanner();
        CalibrationSummary calibration = print.calibration();
        return !print.fromScan()
                ? null
                : said != null || calibration == null ? said : calibration.scanner();
    }

    /** What an instrument is called, by its file or by the user; null when nobody says. */
    static @Nullable String instrument(Evaluation print) {
        MeasurementSummary measured = print.measurement();
        return measured == null
                ? null
                : measured.instrument() != null ? measured.instrument() : print.details().scanner();
    }

    /** Checksums of the profiles that scans were read through; null when there are none. */
    static @Nullable String profiles(Evaluation print) {
        String all =
                print.placements().stream()
                        .map(PlacementSummary::profile)
                        .filter(Objects::nonNull)
                        .map(Comparability::shortSum)
                        .distinct()
                        .sorted()
                        .collect(Collectors.joining(" and "));
        return print.trust() != Trust.PROFILED_SCAN || all.isEmpty() ? null : all;
    }

    /** Says it where some, or all, do not say what read them; a calibration says it too. */
    static Optional<Caution> unsaid(List<Evaluation> prints) {
        long said = prints.stream().filter(Readers::said).count();
        boolean calibrated = alike(prints, e -> e.calibration() == null ? null : sum(e));
        if (said == prints.size() || calibrated) {
            return Optional.empty();
        }
        boolean scans = prints.stream().allMatch(Evaluation::fromScan);
        return Optional.of(
                new Caution(
                        Reason.READER_UNSAID,
                        (said == 0 ? "Nothing says with which " : "Not all say with which ")
                                + (scans ? "scanner" : "instrument")
                                + " they were read, and no two read colours alike. "
                                + (scans
                                        ? "Name it with --scanner when evaluating."
                                        : "Measure all with one, and name it with --scanner when"
                                                + " evaluating.")));
    }

    /** Says it where some measurements do not tell their condition and others do. */
    static Optional<Caution> conditionUnsaid(List<Evaluation> prints) {
        long ways =
                prints.stream()
                        .map(Evaluation::measurement)
                        .filter(Objects::nonNull)
                        .map(m -> m.condition() != null)
                        .distinct()
                        .count();
        return ways < 2
                ? Optional.empty()
                : Optional.of(
                        new Caution(
                                Reason.CONDITION_UNSAID,
                                "Some measurement files do not say their condition (M0 to M3):"
                                        + " where it differs, papers with brighteners will seem to"
                                        + " differ."));
    }

    private static boolean said(Evaluation print) {
        return (print.fromScan() ? scanner(print) : instrument(print)) != null;
    }

    /**
     * Whether what reading is off by is the same in prints, as far as instruments and scanners go:
     * an instrument's or a calibration's error is the same for all it reads; an input profile's
     * only for prints on the same paper, since it errs differently with other inks and whiteners.
     */
    static boolean alike(List<Evaluation> prints) {
        if (prints.stream().map(Evaluation::trust).distinct().count() > 1) {
            return false;
        }
        return switch (prints.get(0).trust()) {
            case INSTRUMENT -> alike(prints, e -> plain(instrument(e)));
            case CALIBRATED_SCAN ->
                    alike(prints, e -> e.calibration() == null ? null : sum(e))
                            && (alike(prints, e -> plain(e.details().paper()))
                                    || alike(prints, e -> plain(e.details().family())));
            case PROFILED_SCAN ->
                    alike(prints, Readers::profiles)
                            && alike(prints, e -> plain(scanner(e)))
                            && sameInks(prints);
            case PLAIN_SCAN -> alike(prints, e -> plain(scanner(e))) && sameInks(prints);
        };
    }

    /** Whether an input profile errs alike on all. */
    static boolean sameInks(List<Evaluation> prints) {
        return alike(prints, e -> plain(e.details().paper()))
                && alike(prints, e -> plain(e.details().printer()));
    }

    /**
     * Whether a print and its baseline may be taken to have been read alike. Paper and printer are
     * known to be the same; where neither says what read it, it is taken to be the same too, and
     * readers are told.
     */
    public static boolean alikeForCheck(
            Comparability found, List<Evaluation> baseline, Evaluation print) {
        boolean half = baseline.stream().anyMatch(one -> said(one) != said(print));
        return found.cautions().stream()
                .map(Caution::reason)
                .noneMatch(
                        reason ->
                                reason == Reason.CALIBRATION
                                        || reason == Reason.INSTRUMENT
                                        || reason == Reason.SCANNER_PROFILE
                                        || (reason == Reason.READER_UNSAID && half));
    }

    private static String sum(Evaluation print) {
        return Objects.requireNonNull(print.calibration()).file().sha256();
    }

    static @Nullable String plain(@Nullable String said) {
        String plain = PrintDetails.key(said);
        return plain.isEmpty() ? null : plain;
    }

    /** Whether all say the same, and something. */
    private static boolean alike(
            List<Evaluation> prints, Function<Evaluation, @Nullable String> said) {
        String first = said.apply(prints.get(0));
        return first != null && prints.stream().allMatch(e -> first.equals(said.apply(e)));
    }
}
