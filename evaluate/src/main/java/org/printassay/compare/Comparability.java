package org.printassay.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.PrintDetails;
import org.printassay.reading.Trust;

/**
 * Which prints may be compared: said before any figure, and refused where figures would mislead.
 *
 * @param cautions what readers must know, gravest first
 * @param readAlike whether systematic parts of the uncertainty are shared by all
 */
public record Comparability(List<Caution> cautions, boolean readAlike) {
    /** How many prints are named for each thing that they say. */
    private static final int NAMED = 3;

    public Comparability {
        cautions = List.copyOf(cautions);
    }

    /** Why prints differ in more than paper and printer. */
    public enum Reason {
        /** The same file twice. */
        SAME_INPUT("same-input", true),
        /** RGB codes mean different colours. */
        SPACE("space", true),
        /** One was scanned and another measured, or one scan has a profile and another none. */
        TRUST("trust", true),
        /** Measurement conditions M0 to M3 differ. */
        CONDITION("condition", true),
        /** Other scanners. */
        SCANNER("scanner", true),
        /** What counts as visible differs. */
        THRESHOLD("threshold", true),
        /** Tone and colours were judged against different aims. */
        AIM("aim", true),
        /** Some scans have a fault that others lack. */
        SCAN_FAULT("scan-fault", false),
        /** Patches of some scans are in doubt. */
        MARKED("marked", false),
        /** Scans whose exposure is not known to be the same. */
        EXPOSURE("exposure", false),
        /** Some say their measurement condition and some do not. */
        CONDITION_UNSAID("condition-unsaid", false),
        /** Other instruments. */
        INSTRUMENT("instrument", false),
        /** Scans read through other profiles of the scanner. */
        SCANNER_PROFILE("scanner-profile", false),
        /** Some or all do not say with what they were read. */
        READER_UNSAID("reader-unsaid", false),
        /** Of a print and its baseline one does not say its route. */
        ROUTE_UNSAID("route-unsaid", false),
        /** Different backing. */
        BACKING("backing", false),
        /** Different filter in the instrument. */
        FILTER("filter", false),
        /** Other calibrations of the scanner. */
        CALIBRATION("calibration", false),
        /** They dried for different times, or some do not say. */
        DRYING("drying", false),
        /** Papers, printers and routes differ, more than one of them. */
        MIXTURE("mixture", false),
        /** Other charts: figures over other patches are left out. */
        CHART("chart", false),
        /** Charts of some are not known; by their codes it is one. */
        CHART_UNSAID("chart-unsaid", false),
        /** Scans without profile: relative figures only. */
        RELATIVE_ONLY("relative-only", false),
        /** Scans through a profile, whose error is another for each paper. */
        PROFILE("profile", false);

        private final String key;
        private final boolean refuses;

        Reason(String key, boolean refuses) {
            this.key = key;
            this.refuses = refuses;
        }

        /** Name in files. */
        public String key() {
            return key;
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

    /** The same with one more thing to know before the others. */
    public Comparability with(Caution caution) {
        List<Caution> all = new ArrayList<>(cautions);
        all.add(0, caution);
        return new Comparability(all, readAlike);
    }

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
                Readers::scanner,
                Reason.SCANNER,
                "They were read on different scanners (%s). Scan all on one.");
        differ(
                cautions,
                prints,
                Comparability::threshold,
                Reason.THRESHOLD,
                "Levels were judged at different thresholds (%s). Evaluate all with the same"
                        + " --threshold.");
        differ(
                cautions,
                prints,
                e -> e.tone() == null ? null : e.tone().aim(),
                Reason.AIM,
                "Tone was judged against different aims (%s). Evaluate all against the same one.");
        cautions.addAll(ScanFaults.cautions(prints));
        Readers.conditionUnsaid(prints).ifPresent(cautions::add);
        differ(
                cautions,
                prints,
                Readers::instrument,
                Reason.INSTRUMENT,
                "They were measured with different instruments (%s), and no two read colours alike:"
                        + " differences hold that error too. Measure all with one.");
        differ(
                cautions,
                prints,
                Readers::profiles,
                Reason.SCANNER_PROFILE,
                "Scans were read through different profiles of the scanner (%s): differences hold"
                        + " their errors too. Evaluate all with one.");
        differ(
                cautions,
                prints,
                e -> e.measurement() == null ? null : e.measurement().backing(),
                Reason.BACKING,
                "They lay on different backings (%s): thin papers will seem to differ. Measure all"
                        + " on one backing.");
        differ(
                cautions,
                prints,
                e -> e.measurement() == null ? null : e.measurement().filter(),
                Reason.FILTER,
                "They were measured with different filters (%s): papers with brighteners and glossy"
                        + " papers will seem to differ. Measure all with one.");
        differ(
                cautions,
                prints,
                e -> e.calibration() == null ? null : shortSum(e.calibration().file().sha256()),
                Reason.CALIBRATION,
                "Scans were read with different calibrations (%s): differences hold their errors"
                        + " too. Evaluate all with one.");
        if (prints.stream().map(Evaluation::trust).distinct().count() == 1) {
            Readers.unsaid(prints).ifPresent(cautions::add);
        }
        DryingTimes.caution(prints).ifPresent(cautions::add);
        charts(prints).ifPresent(cautions::add);
        boolean alike = Readers.alike(prints);
        if (prints.stream().anyMatch(e -> !e.trust().absolute())) {
            cautions.add(
                    new Caution(
                            Reason.RELATIVE_ONLY,
                            "Scans without a profile tell nothing absolute: papers' white, black"
                                    + " and colours are not compared."));
        } else if (!Readers.sameInks(prints)
                && prints.stream().allMatch(e -> e.trust() == Trust.PROFILED_SCAN)) {
            cautions.add(
                    new Caution(
                            Reason.PROFILE,
                            "Scans were read through the scanner's profile, which errs differently"
                                    + " on each paper: intervals of absolute figures hold that error"
                                    + " twice. Calibrate the scanner, or measure, to tell finer"
                                    + " differences."));
        }
        return new Comparability(cautions, alike);
    }

    private static void same(List<Caution> cautions, List<Evaluation> prints) {
        Set<List<String>> seen = new HashSet<>();
        for (Evaluation print : prints) {
            List<String> inputs = print.files().stream().map(f -> f.sha256()).sorted().toList();
            if (!inputs.isEmpty() && !seen.add(inputs)) {
                cautions.add(
                        new Caution(
                                Reason.SAME_INPUT,
                                "The same scan or measurement is there twice ("
                                        + print.files().get(0).name()
                                        + "). Name every print once."));
                return;
            }
        }
    }

    private static Optional<Caution> charts(List<Evaluation> prints) {
        if (ChartIdentity.anyDiffer(prints)) {
            Map<String, List<String>> charts =
                    spelled(prints, e -> e.chartId() == null ? "an unknown one" : e.chartId());
            return Optional.of(
                    new Caution(
                            Reason.CHART,
                            "They were printed from different charts"
                                    + (charts.size() > 1 ? " (" + who(charts) + ")" : "")
                                    + ". Means are over other patches."
                                    + CommonCodes.words(prints)
                                    + " Print the same chart on all."));
        }
        List<String> unsaid =
                prints.stream().filter(e -> e.chartId() == null).map(PrintLabel::byPaper).toList();
        boolean all = unsaid.size() == prints.size();
        String leftOut = CommonCodes.words(prints);
        return unsaid.isEmpty() || (all && leftOut.isEmpty())
                ? Optional.empty()
                : Optional.of(
                        new Caution(
                                Reason.CHART_UNSAID,
                                "Nothing says from which chart "
                                        + (all ? "they" : "some")
                                        + " were printed ("
                                        + names(unsaid)
                                        + "); by their colours it is the same."
                                        + leftOut
                                        + " Name it with --chart when evaluating."));
    }

    private static void differ(
            List<Caution> cautions,
            List<Evaluation> prints,
            Function<Evaluation, @Nullable String> said,
            Reason reason,
            String text) {
        Map<String, List<String>> values = spelled(prints, said);
        if (values.size() > 1) {
            cautions.add(new Caution(reason, text.formatted(who(values))));
        }
    }

    /** Who says what, by how it was spelled first. */
    private static Map<String, List<String>> spelled(
            List<Evaluation> prints, Function<Evaluation, @Nullable String> said) {
        Map<String, List<String>> values = new TreeMap<>();
        Map<String, String> spelled = new HashMap<>();
        for (Evaluation print : prints) {
            String value = said.apply(print);
            if (value != null) {
                String plain = PrintDetails.key(value);
                spelled.putIfAbsent(plain, value);
                values.computeIfAbsent(plain, k -> new ArrayList<>())
                        .add(PrintLabel.byPaper(print));
            }
        }
        Map<String, List<String>> all = new LinkedHashMap<>();
        values.forEach((plain, names) -> all.put(spelled.getOrDefault(plain, plain), names));
        return all;
    }

    private static String who(Map<String, List<String>> values) {
        return values.entrySet().stream()
                .map(e -> e.getKey() + " for " + names(e.getValue()))
                .collect(Collectors.joining("; "));
    }

    private static String names(List<String> all) {
        List<String> different = all.stream().distinct().toList();
        String first = different.stream().limit(NAMED).collect(Collectors.joining(", "));
        int more = different.size() - NAMED;
        return more > 0 ? first + " and " + more + " more" : first;
    }

    static String shortSum(String sha256) {
        return sha256.substring(0, Math.min(8, sha256.length()));
    }

    private static @Nullable String threshold(Evaluation print) {
        Double threshold = Manner.threshold(print);
        return threshold == null ? null : threshold + " dL*";
    }
}
