package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.calibrate.part.PartResult;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.reading.Reading;
import org.printassay.reading.SharedError;

/** Errors of the light of each scan, carried over to the readings that were merged from scans. */
final class SharedErrors {
    private static final Lab NONE = new Lab(0, 0, 0);

    private SharedErrors() {}

    private record Key(int sheet, String id) {}

    static List<SharedError> of(List<Reading> readings, List<PartResult> results) {
        Map<Key, Integer> scans = new HashMap<>();
        for (PartResult result : results) {
            for (PatchColour colour : result.colours()) {
                scans.merge(new Key(colour.sheet(), colour.patch().id()), 1, Integer::sum);
            }
        }
        List<SharedError> shared = new ArrayList<>();
        for (PartResult result : results) {
            Map<Key, PatchColour> colours = new HashMap<>();
            for (PatchColour colour : result.colours()) {
                colours.put(new Key(colour.sheet(), colour.patch().id()), colour);
            }
            for (int cause = 0; cause < causesOf(result); cause++) {
                List<Lab> shifts = new ArrayList<>();
                for (Reading reading : readings) {
                    Key key = new Key(reading.sheet(), reading.id());
                    PatchColour colour = colours.get(key);
                    shifts.add(
                            colour == null
                                    ? NONE
                                    : over(colour.causes().get(cause), scans.getOrDefault(key, 1)));
                }
                shared.add(new SharedError(shifts, result.light().assumed()));
            }
        }
        return shared;
    }

    /**
     * What repeats disagree by: each code's mean in one scan against that of all scans of the same
     * patches, a cause for each scan. Together they are the standard error of the mean of scans.
     *
     * @param scans their colours, paper alike
     * @param absolute whether colours are, or relative to paper
     */
    static List<SharedError> disagreement(
            List<Reading> readings, List<List<PatchColour>> scans, boolean absolute) {
        Map<Key, List<Seen>> byPatch = new HashMap<>();
        for (int scan = 0; scan < scans.size(); scan++) {
            for (PatchColour colour : scans.get(scan)) {
                if (Merging.isSound(colour)) {
                    Lab lab = Lab.of(absolute ? colour.xyz() : colour.relative(), Xyz.PCS_WHITE);
                    byPatch.computeIfAbsent(
                                    new Key(colour.sheet(), colour.patch().id()),
                                    key -> new ArrayList<>())
                            .add(new Seen(scan, colour.patch().rgb(), lab));
                }
            }
        }
        List<Map<Rgb8, List<Lab>>> apart = new ArrayList<>();
        scans.forEach(scan -> apart.add(new HashMap<>()));
        for (List<Seen> same : byPatch.values()) {
            int k = same.size();
            if (k < 2) {
                continue;
            }
            Lab mean = Lab.mean(same.stream().map(Seen::lab).toList());
            double share = 1 / Math.sqrt(k * (k - 1.0));
            for (Seen one : same) {
                apart.get(one.scan)
                        .computeIfAbsent(one.rgb, key -> new ArrayList<>())
                        .add(
                                new Lab(
                                        share * (one.lab.l() - mean.l()),
                                        share * (one.lab.a() - mean.a()),
                                        share * (one.lab.b() - mean.b())));
            }
        }
        return apart.stream()
                .filter(codes -> !codes.isEmpty())
                .map(
                        codes ->
                                new SharedError(
                                        readings.stream()
                                                .map(reading -> codes.get(reading.rgb()))
                                                .map(all -> all == null ? NONE : Lab.mean(all))
                                                .toList(),
                                        false))
                .toList();
    }

    /** A patch as one scan shows it. */
    private record Seen(int scan, Rgb8 rgb, Lab lab) {}

    /**
     * Steps of coding, carried over likewise: where scans are averaged, so are their steps. Empty
     * where no scan has any.
     */
    static List<Double> codingSteps(List<Reading> readings, List<PartResult> results) {
        Map<Key, List<Double>> steps = new HashMap<>();
        for (PartResult result : results) {
            for (PatchColour colour : result.colours()) {
                steps.computeIfAbsent(
                                new Key(colour.sheet(), colour.patch().id()),
                                key -> new ArrayList<>())
                        .add(colour.codingStep());
            }
        }
        List<Double> all = new ArrayList<>();
        for (Reading reading : readings) {
            all.add(
                    steps.getOrDefault(new Key(reading.sheet(), reading.id()), List.of()).stream()
                            .mapToDouble(step -> step)
                            .average()
                            .orElse(0));
        }
        return all.stream().allMatch(step -> step == 0) ? List.of() : all;
    }

    private static Lab over(Lab shift, int scans) {
        return new Lab(shift.l() / scans, shift.a() / scans, shift.b() / scans);
    }

    private static int causesOf(PartResult result) {
        return result.colours().isEmpty() ? 0 : result.colours().get(0).causes().size();
    }
}
