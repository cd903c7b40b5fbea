package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.calibrate.codes.ScanPart;
import org.printassay.calibrate.part.PartResult;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;

/**
 * Whether two scans show one and the same print. Patches of the same code never come out quite
 * alike, and how each of them departs from its twins is a print's fingerprint: two scans of one
 * print agree on it, whatever scanner made them; two prints do not. Where a print repeats too well
 * for that to show, only a plain difference of colour, larger than scanners make, tells.
 */
final class PrintIdentity {
    /** Correlation of departures from which two scans show one print. */
    private static final double SAME = 0.35;

    /** Correlation below which they do not, where one print would show at least twice as much. */
    private static final double DIFFERENT = 0.2;

    private static final double TELLING = 0.5;

    /** Fewer patches in common tell nothing. */
    private static final int FEWEST = 60;

    /** Mean dE00 of greys relative to paper that two scanners can make of one print. */
    private static final double SCANNERS_DIFFER = 4;

    /**
     * The same that repeats on one scanner stay below, and L* of their blacks, and paper in a* and
     * b* (common practice, no source). Where departures do not agree as those of one print do,
     * greys must be nearer.
     */
    private static final double REPEATS_DIFFER = 1.5;

    private static final double STRANGERS_DIFFER = 0.4;
    private static final double BLACKS_DIFFER = 4;
    private static final double PAPERS_DIFFER = 1;

    private static final int FEWEST_GREYS = 10;

    private PrintIdentity() {}

    private record Pair(Lab first, Lab second, double errorFirst, double errorSecond) {}

    /**
     * Why two scans cannot be of one print; empty when they may be.
     *
     * @return words that go on after the name of the second scan
     */
    static Optional<String> different(PartResult first, PartResult second) {
        Map<Rgb8, List<Pair>> groups = groups(first, second);
        TwinDepartures departures = departures(groups);
        int n = departures.count();
        double agreement = departures.agreement();
        double expected = departures.expected();
        if (n >= FEWEST && agreement > SAME) {
            return Optional.empty();
        }
        List<Pair> greys = greys(groups);
        double apart = apart(greys);
        if (n >= FEWEST && expected > TELLING && agreement < DIFFERENT) {
            return Optional.of(
                    String.format(
                            Locale.ROOT,
                            "shows another print of the sheet: patches of the same colour depart from"
                                    + " each other in other ways (agreement %.2f where one print"
                                    + " gives about %.2f; greys are %.1f dE00 apart)",
                            agreement,
                            expected,
                            apart));
        }
        return comparable(first, second, greys) && apart > SCANNERS_DIFFER
                ? Optional.of(
                        String.format(
                                Locale.ROOT,
                                "shows another print of the sheet: its greys are %.1f dE00 from those"
                                        + " of the first, more than scanners differ",
                                apart))
                : Optional.empty();
    }

    private static TwinDepartures departures(Map<Rgb8, List<Pair>> groups) {
        TwinDepartures departures = new TwinDepartures();
        groups.forEach(
                (rgb, twins) -> {
                    if (twins.size() >= 2 && !rgb.equals(Rgb8.grey(255))) {
                        departures.add(
                                twins.stream().mapToDouble(p -> p.first.l()).toArray(),
                                twins.stream().mapToDouble(p -> p.second.l()).toArray(),
                                twins.stream().mapToDouble(Pair::errorFirst).toArray(),
                                twins.stream().mapToDouble(Pair::errorSecond).toArray());
                    }
                });
        return departures;
    }

    /**
     * In words, by how much two scans that may be of one print disagree, where that is more than
     * repeats on one scanner do; empty where it is not.
     */
    static Optional<String> disagreement(PartResult first, PartResult second) {
        Map<Rgb8, List<Pair>> groups = groups(first, second);
        List<Pair> greys = greys(groups);
        if (!comparable(first, second, greys)) {
            return Optional.empty();
        }
        double apart = apart(greys);
        OptionalDouble blacks =
                groups.getOrDefault(Rgb8.grey(0), List.of()).stream()
                        .mapToDouble(pair -> pair.second.l() - pair.first.l())
                        .average();
        double black = Math.abs(blacks.orElse(0));
        double paper = papersApart(first, second);
        TwinDepartures departures = departures(groups);
        boolean strangers = departures.count() >= FEWEST && departures.agreement() < DIFFERENT;
        if (apart <= (strangers ? STRANGERS_DIFFER : REPEATS_DIFFER)
                && black <= BLACKS_DIFFER
                && paper <= PAPERS_DIFFER) {
            return Optional.empty();
        }
        String words = String.format(Locale.ROOT, "greys differ by %.1f dE00 in the mean", apart);
        if (blacks.isPresent()) {
            words += String.format(Locale.ROOT, ", black by %.1f L*", black);
        }
        if (paper > PAPERS_DIFFER) {
            words +=
                    String.format(
                            Locale.ROOT,
                            ", paper by %.1f in a* and b*, as no exposure does",
                            paper);
        }
        if (strangers && apart <= REPEATS_DIFFER) {
            words += ", and equal patches do not depart from each other as those of one print do";
        }
        return Optional.of(words);
    }

    /**
     * How far the colours of unprinted paper lie apart at one exposure; 0 where they were not read
     * alike.
     */
    private static double papersApart(PartResult first, PartResult second) {
        ScanColour colour = first.part().colour();
        ScanColour like = second.part().colour();
        if (colour.grey() || like.grey() || colour.trust() != like.trust()) {
            return 0;
        }
        Lab one = Lab.of(first.paper(), Xyz.PCS_WHITE);
        double exposure = first.whiteY() / second.whiteY();
        Lab other = Lab.of(second.paper().times(exposure), Xyz.PCS_WHITE);
        return Math.hypot(one.a() - other.a(), one.b() - other.b());
    }

    /** The first two of several scans that cannot be of one print. */
    static Optional<ScanReadings.Different> among(List<ScanPart> parts, List<PartResult> scans) {
        for (int j = 1; j < scans.size(); j++) {
            for (int i = 0; i < j; i++) {
                Optional<String> why = different(scans.get(i), scans.get(j));
                if (why.isPresent()) {
                    return Optional.of(
                            new ScanReadings.Different(
                                    parts.indexOf(scans.get(i).part()),
                                    parts.indexOf(scans.get(j).part()),
                                    why.get()));
                }
            }
        }
        return Optional.empty();
    }

    /** Patches that both scans show without doubt, by their codes. */
    private static Map<Rgb8, List<Pair>> groups(PartResult first, PartResult second) {
        Map<String, PatchColour> byId = new HashMap<>();
        for (PatchColour colour : first.colours()) {
            if (colour.flags().isEmpty()) {
                byId.put(colour.sheet() + " " + colour.patch().id(), colour);
            }
        }
        Map<Rgb8, List<Pair>> groups = new HashMap<>();
        for (PatchColour colour : second.colours()) {
            PatchColour other = byId.get(colour.sheet() + " " + colour.patch().id());
            if (other != null && colour.flags().isEmpty()) {
                groups.computeIfAbsent(colour.patch().rgb(), k -> new ArrayList<>())
                        .add(
                                new Pair(
                                        Lab.of(other.relative(), Xyz.PCS_WHITE),
                                        Lab.of(colour.relative(), Xyz.PCS_WHITE),
                                        finite(other.error().l()),
                                        finite(colour.error().l())));
            }
        }
        return groups;
    }

    /**
     * Whether colours relative to paper mean the same in both scans, and enough of them were seen:
     * a scan without bare paper takes its lightest patch for it.
     */
    private static boolean comparable(PartResult first, PartResult second, List<Pair> greys) {
        return first.light().paperKnown()
                && second.light().paperKnown()
                && greys.size() >= FEWEST_GREYS;
    }

    private static double finite(double error) {
        return Double.isFinite(error) ? error : 0;
    }

    private static List<Pair> greys(Map<Rgb8, List<Pair>> groups) {
        return groups.entrySet().stream()
                .filter(group -> group.getKey().isNeutral() && group.getKey().r() < 250)
                .flatMap(group -> group.getValue().stream())
                .toList();
    }

    /** Mean dE00, relative to paper. */
    private static double apart(List<Pair> pairs) {
        return pairs.stream()
                .mapToDouble(pair -> DeltaE.ciede2000(pair.first, pair.second))
                .average()
                .orElse(0);
    }
}
