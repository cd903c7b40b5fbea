package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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

    private PrintIdentity() {}

    private record Pair(Rgb8 rgb, Lab first, Lab second, double errorFirst, double errorSecond) {}

    /**
     * Why two scans cannot be of one print; empty when they may be.
     *
     * @return words that go on after the name of the second scan
     */
    static Optional<String> different(PartResult first, PartResult second) {
        List<Pair> pairs = pairs(first, second);
        if (pairs.size() < FEWEST) {
            return Optional.empty();
        }
        Map<Rgb8, List<Pair>> groups = new HashMap<>();
        for (Pair pair : pairs) {
            groups.computeIfAbsent(pair.rgb, k -> new ArrayList<>()).add(pair);
        }
        TwinDepartures departures = new TwinDepartures();
        for (List<Pair> twins : groups.values()) {
            if (twins.size() >= 2 && !twins.get(0).rgb.equals(Rgb8.grey(255))) {
                departures.add(
                        twins.stream().mapToDouble(p -> p.first.l()).toArray(),
                        twins.stream().mapToDouble(p -> p.second.l()).toArray(),
                        twins.stream().mapToDouble(Pair::errorFirst).toArray(),
                        twins.stream().mapToDouble(Pair::errorSecond).toArray());
            }
        }
        int n = departures.count();
        double agreement = departures.agreement();
        double expected = departures.expected();
        if (n >= FEWEST && agreement > SAME) {
            return Optional.empty();
        }
        double apart = greysApart(groups);
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
        return apart > SCANNERS_DIFFER
                ? Optional.of(
                        String.format(
                                Locale.ROOT,
                                "shows another print of the sheet: its greys are %.1f dE00 from those"
                                        + " of the first, more than scanners differ",
                                apart))
                : Optional.empty();
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

    private static List<Pair> pairs(PartResult first, PartResult second) {
        Map<String, PatchColour> byId = new HashMap<>();
        for (PatchColour colour : first.colours()) {
            if (colour.flags().isEmpty()) {
                byId.put(colour.sheet() + " " + colour.patch().id(), colour);
            }
        }
        List<Pair> pairs = new ArrayList<>();
        for (PatchColour colour : second.colours()) {
            PatchColour other = byId.get(colour.sheet() + " " + colour.patch().id());
            if (other != null && colour.flags().isEmpty()) {
                pairs.add(
                        new Pair(
                                colour.patch().rgb(),
                                Lab.of(other.relative(), Xyz.PCS_WHITE),
                                Lab.of(colour.relative(), Xyz.PCS_WHITE),
                                finite(other.error().l()),
                                finite(colour.error().l())));
            }
        }
        return pairs;
    }

    private static double finite(double error) {
        return Double.isFinite(error) ? error : 0;
    }

    /** Mean dE00 of the greys, relative to paper. */
    private static double greysApart(Map<Rgb8, List<Pair>> groups) {
        double sum = 0;
        int n = 0;
        for (Map.Entry<Rgb8, List<Pair>> group : groups.entrySet()) {
            if (group.getKey().isNeutral() && group.getKey().r() < 250) {
                for (Pair pair : group.getValue()) {
                    sum += DeltaE.ciede2000(pair.first, pair.second);
                    n++;
                }
            }
        }
        return n == 0 ? 0 : sum / n;
    }
}
