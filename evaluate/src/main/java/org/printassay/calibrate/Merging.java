package org.printassay.calibrate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.codes.PatchColour;
import org.printassay.colour.Density;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;
import org.printassay.reading.LabError;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;

/** Several scans of the same patches become one reading each. */
final class Merging {
    private static final Set<ReadingFlag> COMMON =
            EnumSet.of(ReadingFlag.COARSE, ReadingFlag.SCATTERED);

    private final boolean absolute;
    private final boolean relative;
    private final boolean colour;

    Merging(boolean absolute, boolean relative, boolean colour) {
        this.absolute = absolute;
        this.relative = relative;
        this.colour = colour;
    }

    /** One reading a patch, sheet by sheet, in the order in which patches first come. */
    List<Reading> readings(List<PatchColour> all) {
        Map<Integer, Map<String, List<PatchColour>>> sheets = new TreeMap<>();
        for (PatchColour one : all) {
            sheets.computeIfAbsent(one.sheet(), k -> new LinkedHashMap<>())
                    .computeIfAbsent(one.patch().id(), k -> new ArrayList<>())
                    .add(one);
        }
        List<Reading> readings = new ArrayList<>();
        sheets.values().forEach(s -> s.values().forEach(same -> readings.add(reading(same))));
        return readings;
    }

    private Reading reading(List<PatchColour> same) {
        List<PatchColour> used = best(same);
        Set<ReadingFlag> flags = EnumSet.noneOf(ReadingFlag.class);
        used.forEach(p -> flags.addAll(p.flags()));
        PatchColour first = used.get(0);
        Xyz xyz = mean(used, PatchColour::xyz);
        return new Reading(
                first.patch().id(),
                Optional.of(first.patch().section()),
                first.patch().rgb(),
                absolute ? lab(xyz) : null,
                relative || !absolute ? lab(mean(used, PatchColour::relative)) : null,
                error(used),
                absolute ? Density.ofFactor(xyz.y() / 100) : null,
                flags,
                first.patch().area().centre(),
                first.sheet());
    }

    /** Those without flags; else those of which only what all have in common is known. */
    private static List<PatchColour> best(List<PatchColour> same) {
        List<PatchColour> clean = same.stream().filter(p -> p.flags().isEmpty()).toList();
        List<PatchColour> sound = same.stream().filter(Merging::isSound).toList();
        return !clean.isEmpty() ? clean : sound.isEmpty() ? same : sound;
    }

    /** Whether a patch carries no flag but what all of its tone have in common. */
    static boolean isSound(PatchColour colour) {
        return COMMON.containsAll(colour.flags());
    }

    private Lab lab(Xyz xyz) {
        Lab lab = Lab.of(xyz, Xyz.PCS_WHITE);
        return colour ? lab : new Lab(lab.l(), 0, 0);
    }

    private static Xyz mean(List<PatchColour> used, Function<PatchColour, Xyz> of) {
        double x = 0;
        double y = 0;
        double z = 0;
        for (PatchColour one : used) {
            x += of.apply(one).x() / used.size();
            y += of.apply(one).y() / used.size();
            z += of.apply(one).z() / used.size();
        }
        return new Xyz(x, y, z);
    }

    /**
     * Repeated scans see the same grain, so the error of one scan stands for their mean; where they
     * disagree more than that, their own spread does.
     */
    private static @Nullable LabError error(List<PatchColour> used) {
        double l = 0;
        double a = 0;
        double b = 0;
        for (PatchColour one : used) {
            l += one.error().l() / used.size();
            a += one.error().a() / used.size();
            b += one.error().b() / used.size();
        }
        if (Double.isNaN(l)) {
            return null;
        }
        List<Lab> labs = used.stream().map(p -> Lab.of(p.xyz(), Xyz.PCS_WHITE)).toList();
        return new LabError(
                Math.max(l, spreadOfMean(labs, Lab::l)),
                Math.max(a, spreadOfMean(labs, Lab::a)),
                Math.max(b, spreadOfMean(labs, Lab::b)));
    }

    private static double spreadOfMean(List<Lab> labs, Function<Lab, Double> of) {
        if (labs.size() < 2) {
            return 0;
        }
        double mean = labs.stream().mapToDouble(of::apply).average().orElse(0);
        double squares = labs.stream().mapToDouble(v -> Math.pow(of.apply(v) - mean, 2)).sum();
        return Math.sqrt(squares / (labs.size() - 1) / labs.size());
    }
}
