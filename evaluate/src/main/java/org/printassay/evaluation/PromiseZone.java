package org.printassay.evaluation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.ToneZone;
import org.printassay.promise.Promise;
import org.printassay.reading.Reading;

/**
 * A part of the colours beside the profile's promise: a mean over all hides what is off in a part.
 *
 * @param words what it is called
 * @param meanDeltaE00 mean over its patches
 * @param deltaL how much lighter than promised it is in the mean, L*
 */
record PromiseZone(String words, double meanDeltaE00, double deltaL) {
    /** Fewer patches are no part. */
    private static final int FEWEST = 8;

    /** The part that is off most; empty where no part has patches enough. */
    static Optional<PromiseZone> worst(List<Reading> readings, Promise promise) {
        Map<String, Lab> wanted = new HashMap<>();
        promise.patches().forEach(patch -> wanted.put(patch.id(), patch.lab()));
        List<PromiseZone> parts = new ArrayList<>();
        for (ToneZone zone : ToneZone.values()) {
            part(zone, readings, wanted).ifPresent(parts::add);
        }
        return parts.stream().max(Comparator.comparingDouble(PromiseZone::meanDeltaE00));
    }

    private static Optional<PromiseZone> part(
            ToneZone zone, List<Reading> readings, Map<String, Lab> wanted) {
        double sum = 0;
        double lighter = 0;
        int n = 0;
        for (Reading reading : readings) {
            Lab to = wanted.get(reading.id());
            Lab lab = reading.lab();
            if (to != null && lab != null && reading.isSound() && ToneZone.of(to.l()) == zone) {
                sum += DeltaE.ciede2000(to, lab);
                lighter += lab.l() - to.l();
                n++;
            }
        }
        return n < FEWEST
                ? Optional.empty()
                : Optional.of(new PromiseZone(words(zone), sum / n, lighter / n));
    }

    /** Which way it is off: {@code (2.8 L* too light)}, or nothing. */
    String way() {
        return Math.abs(deltaL) < 1
                ? ""
                : String.format(
                        Locale.ROOT,
                        " (%.1f L* too %s)",
                        Math.abs(deltaL),
                        deltaL < 0 ? "dark" : "light");
    }

    private static String words(ToneZone promised) {
        return switch (promised) {
            case SHADOWS -> "dark colours";
            case MIDTONES -> "mid-tones";
            case HIGHLIGHTS -> "light colours";
        };
    }
}
