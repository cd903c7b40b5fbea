package org.printassay.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Wedge;
import org.printassay.reading.Trust;

/**
 * Which prints may be compared: said before any figure, and refused where figures would mislead.
 *
 * @param cautions what readers must know, gravest first
 * @param readAlike whether systematic parts of the uncertainty are shared by all
 */
public record Comparability(List<Caution> cautions, boolean readAlike) {
    /** Prints dry for a day before colours settle (common practice, no source). */
    private static final double DRY_HOURS = 24;

    public Comparability {
        cautions = List.copyOf(cautions);
    }

    /** Why prints differ in more than paper and printer. */
    public enum Reason {
        /** RGB codes mean different colours. */
        SPACE(true),
        /** One was scanned and another measured, or one scan has a profile and another none. */
        TRUST(true),
        /** Measurement conditions M0 to M3 differ. */
        CONDITION(true),
        /** Different backing or filter. */
        BACKING(false),
        /** Other scanners. */
        SCANNER(true),
        /** Other calibrations of the scanner. */
        CALIBRATION(false),
        /** What counts as visible differs. */
        THRESHOLD(true),
        /** Some dried for less than a day, others longer, or some do not say. */
        DRYING(false),
        /** Other charts: only what both hold is compared. */
        CHART(false),
        /** Scans without profile: relative figures only. */
        RELATIVE_ONLY(false),
        /** The same file twice. */
        SAME_INPUT(true);

        private final boolean refuses;

        Reason(boolean refuses) {
            this.refuses = refuses;
        }

        /** Whether a comparison would mislead. */
        public boolean refuses() {
            return refuses;
        }
    }

    /**
     * One thing to know.
     *
     * @param text a sentence, and what to do
     */
    public record Caution(Reason reason, String text) {}

    /** Whether the prints must not be compared. */
    public boolean refused() {
        return cautions.stream().anyMatch(caution -> caution.reason().refuses());
    }

    /** The first reason to refuse. */
    public Optional<Caution> refusal() {
        return cautions.stream().filter(caution -> caution.reason().refuses()).findFirst();
    }

    /** Judges prints together. */
    public static Comparability of(List<Evaluation> prints) {
        List<Caution> cautions = new ArrayList<>();
        same(cautions, prints);
        differ(
                cautions,
                prints,
                Evaluation::spaceKey,
                Reason.SPACE,
                "RGB codes are in different encodings (%s). Print the charts for one encoding.");
        differ(
                cautions,
                prints,
                e -> e.trust().key(),
                Reason.TRUST,
                "Colours were obtained in different ways (%s). Read all prints in the same way.");
        differ(
                cautions,
                prints,
                e -> e.measurement() == null ? null : e.measurement().condition(),
                Reason.CONDITION,
                "Measurement conditions differ (%s), so paper and colours are not the same thing in"
                        + " both. Measure all under one condition.");
        differ(
                cautions,
                prints,
                e -> e.details().scanner(),
                Reason.SCANNER,
                "They were read on different scanners (%s). Scan all on one.");
        differ(
                cautions,
                prints,
                Comparability::threshold,
                Reason.THRESHOLD,
                "Levels were judged at different thresholds (%s dL*). Evaluate all with the same"
                        + " --threshold.");
        differ(
                cautions,
                prints,
                e -> e.measurement() == null ? null : e.measurement().backing(),
                Reason.BACKING,
                "They lay on different backings (%s): thin papers will seem to differ.");
        differ(
                cautions,
                prints,
                e -> e.calibration() == null ? null : e.calibration().file().sha256(),
                Reason.CALIBRATION,
                "Scans were read with different calibrations: differences hold their errors too.");
        differ(
                cautions,
                prints,
                Evaluation::chartId,
                Reason.CHART,
                "They were printed from different charts (%s): only what both hold is compared.");
        drying(cautions, prints);
        if (prints.stream().anyMatch(e -> !e.trust().absolute())) {
            cautions.add(
                    new Caution(
                            Reason.RELATIVE_ONLY,
                            "Scans without a profile tell nothing absolute: papers' white, black"
                                    + " and colours are not compared."));
        }
        return new Comparability(cautions, readAlike(prints));
    }

    private static void same(List<Caution> cautions, List<Evaluation> prints) {
        Set<List<String>> seen = new HashSet<>();
        for (Evaluation print : prints) {
            List<String> inputs = print.files().stream().map(f -> f.sha256()).sorted().toList();
            if (!inputs.isEmpty() && !seen.add(inputs)) {
                cautions.add(
                        new Caution(
                                Reason.SAME_INPUT,
                                "The same file is there twice ("
                                        + print.files().get(0).name()
                                        + "). Name every print once."));
                return;
            }
        }
    }

    private static void differ(
            List<Caution> cautions,
            List<Evaluation> prints,
            Function<Evaluation, @Nullable String> said,
            Reason reason,
            String text) {
        Set<String> values =
                prints.stream()
                        .map(said)
                        .filter(Objects::nonNull)
                        .collect(Collectors.toCollection(TreeSet::new));
        if (values.size() > 1) {
            cautions.add(new Caution(reason, text.formatted(String.join(", ", values))));
        }
    }

    private static @Nullable String threshold(Evaluation print) {
        Wedge wedge = print.shadows() != null ? print.shadows() : print.highlights();
        return wedge == null ? null : String.valueOf(wedge.threshold());
    }

    private static void drying(List<Caution> cautions, List<Evaluation> prints) {
        long wet = prints.stream().filter(e -> hours(e) < DRY_HOURS).count();
        long unsaid = prints.stream().filter(e -> Double.isNaN(hours(e))).count();
        long dry = prints.size() - wet - unsaid;
        if (wet > 0 && dry > 0) {
            cautions.add(
                    new Caution(
                            Reason.DRYING,
                            "Some dried for a day and some for less: prints change until they are"
                                    + " dry."));
        } else if (unsaid > 0 && unsaid < prints.size()) {
            cautions.add(
                    new Caution(
                            Reason.DRYING,
                            "How long some of them dried is not said: prints change until they are"
                                    + " dry."));
        }
    }

    private static double hours(Evaluation print) {
        Double hours = print.details().driedHours();
        return hours == null ? Double.NaN : hours;
    }

    /**
     * An instrument's or a calibration's error is the same for all it reads; an input profile's
     * only for prints on the same paper, since it errs differently with other inks and whiteners.
     */
    private static boolean readAlike(List<Evaluation> prints) {
        Set<Trust> trusts = prints.stream().map(Evaluation::trust).collect(Collectors.toSet());
        if (trusts.size() > 1) {
            return false;
        }
        return switch (prints.get(0).trust()) {
            case INSTRUMENT -> true;
            case CALIBRATED_SCAN ->
                    alike(prints, e -> e.calibration() == null ? null : e.calibration().file())
                            && (alike(prints, e -> e.details().paper())
                                    || alike(prints, e -> e.details().family()));
            case PROFILED_SCAN, PLAIN_SCAN ->
                    alike(prints, e -> e.details().paper())
                            && alike(prints, e -> e.details().printer());
        };
    }

    /** Whether all say the same, and something. */
    private static boolean alike(
            List<Evaluation> prints, Function<Evaluation, @Nullable Object> said) {
        Object first = said.apply(prints.get(0));
        return first != null && prints.stream().allMatch(e -> first.equals(said.apply(e)));
    }
}
