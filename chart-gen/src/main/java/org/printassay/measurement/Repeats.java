package org.printassay.measurement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;

/**
 * Repeated measurements of the same patches under the same conditions: their mean (of reflectance,
 * else of XYZ, else of CIELAB: ISO 13655) and their spread.
 */
final class Repeats {
    private Repeats() {}

    /** Sets of equal conditions put together, patches by id, in order of first appearance. */
    static List<MeasurementSet> together(String name, List<MeasurementSet> sets) throws Problem {
        Map<Conditions, Map<String, List<MeasuredPatch>>> groups = new LinkedHashMap<>();
        for (MeasurementSet set : sets) {
            Map<String, List<MeasuredPatch>> byId =
                    groups.computeIfAbsent(set.conditions(), key -> new LinkedHashMap<>());
            for (MeasuredPatch patch : set.patches()) {
                byId.computeIfAbsent(patch.id(), key -> new ArrayList<>()).add(patch);
            }
        }
        List<MeasurementSet> all = new ArrayList<>();
        for (Map.Entry<Conditions, Map<String, List<MeasuredPatch>>> group : groups.entrySet()) {
            List<MeasuredPatch> patches = new ArrayList<>();
            for (List<MeasuredPatch> repeats : group.getValue().values()) {
                patches.add(mean(name, repeats));
            }
            all.add(new MeasurementSet(group.getKey(), patches));
        }
        return all;
    }

    private static MeasuredPatch mean(String name, List<MeasuredPatch> repeats) throws Problem {
        MeasuredPatch first = repeats.get(0);
        if (repeats.size() == 1) {
            return first;
        }
        for (MeasuredPatch other : repeats) {
            if (!other.rgb().equals(first.rgb())) {
                throw otherCodes(name, other);
            }
        }
        Spectrum spectrum = spectrum(repeats);
        Xyz xyz = spectrum != null ? spectrum.toXyz() : xyz(repeats);
        Lab mean = labMean(repeats);
        Lab lab =
                spectrum != null
                        ? spectrum.toLab()
                        : xyz != null ? Lab.of(xyz, Xyz.PCS_WHITE) : mean;
        return new MeasuredPatch(
                first.id(),
                first.rgb(),
                lab,
                xyz,
                spectrum,
                new Lab(
                        spread(repeats, mean.l(), p -> p.lab().l()),
                        spread(repeats, mean.a(), p -> p.lab().a()),
                        spread(repeats, mean.b(), p -> p.lab().b())),
                repeats.size(),
                first.placed(),
                first.line());
    }

    static Problem otherCodes(String file, MeasuredPatch patch) {
        return Problem.input(
                file + ", line " + patch.line(),
                "patch '"
                        + patch.id()
                        + "' was measured before with other codes. Repeats must be of the same"
                        + " chart.");
    }

    private static @Nullable Spectrum spectrum(List<MeasuredPatch> repeats) {
        Spectrum first = repeats.get(0).spectrum();
        if (first == null) {
            return null;
        }
        double[] sums = new double[first.factors().size()];
        for (MeasuredPatch patch : repeats) {
            Spectrum spectrum = patch.spectrum();
            if (spectrum == null || !MeasurementWriter.sameGrid(first, spectrum)) {
                return null;
            }
            for (int i = 0; i < sums.length; i++) {
                sums[i] += spectrum.factors().get(i);
            }
        }
        List<Double> factors = new ArrayList<>();
        for (double sum : sums) {
            factors.add(sum / repeats.size());
        }
        return new Spectrum(first.startNm(), first.stepNm(), factors);
    }

    private static @Nullable Xyz xyz(List<MeasuredPatch> repeats) {
        double x = 0;
        double y = 0;
        double z = 0;
        for (MeasuredPatch patch : repeats) {
            Xyz xyz = patch.xyz();
            if (xyz == null || patch.spectrum() != null) {
                return null; // of different kinds: their CIELAB is averaged
            }
            x += xyz.x();
            y += xyz.y();
            z += xyz.z();
        }
        int n = repeats.size();
        return new Xyz(x / n, y / n, z / n);
    }

    private static Lab labMean(List<MeasuredPatch> repeats) {
        return new Lab(
                repeats.stream().mapToDouble(p -> p.lab().l()).average().orElseThrow(),
                repeats.stream().mapToDouble(p -> p.lab().a()).average().orElseThrow(),
                repeats.stream().mapToDouble(p -> p.lab().b()).average().orElseThrow());
    }

    private static double spread(
            List<MeasuredPatch> repeats, double mean, ToDoubleFunction<MeasuredPatch> value) {
        double squares =
                repeats.stream().mapToDouble(p -> Math.pow(value.applyAsDouble(p) - mean, 2)).sum();
        return Math.sqrt(squares / (repeats.size() - 1));
    }
}
