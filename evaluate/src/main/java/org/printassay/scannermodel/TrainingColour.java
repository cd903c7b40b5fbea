package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;

/**
 * All patches of one printed colour together: a model is fitted to their means, so that a colour
 * that was printed often counts no more than others.
 *
 * @param name what was printed
 * @param neutral whether it is a grey
 * @param light mean light
 * @param lab CIELAB of the mean of the measured tristimulus values
 * @param patches the patches themselves
 */
record TrainingColour(
        String name, boolean neutral, LinearRgb light, Lab lab, List<TrainingPatch> patches) {
    TrainingColour {
        patches = List.copyOf(patches);
    }

    /** Patches pooled by what was printed, in the order in which colours first come. */
    static List<TrainingColour> of(List<TrainingPatch> patches) {
        Map<String, List<TrainingPatch>> byColour = new LinkedHashMap<>();
        for (TrainingPatch patch : patches) {
            byColour.computeIfAbsent(patch.colour(), k -> new ArrayList<>()).add(patch);
        }
        return byColour.values().stream().map(TrainingColour::mean).toList();
    }

    private static TrainingColour mean(List<TrainingPatch> twins) {
        double[] light = new double[3];
        double[] xyz = new double[3];
        for (TrainingPatch twin : twins) {
            Xyz measured = twin.lab().toXyz(Xyz.PCS_WHITE);
            for (int c = 0; c < 3; c++) {
                light[c] += twin.light().channel(c) / twins.size();
            }
            xyz[0] += measured.x() / twins.size();
            xyz[1] += measured.y() / twins.size();
            xyz[2] += measured.z() / twins.size();
        }
        TrainingPatch first = twins.get(0);
        return new TrainingColour(
                first.colour(),
                first.neutral(),
                new LinearRgb(light[0], light[1], light[2]),
                Lab.of(new Xyz(xyz[0], xyz[1], xyz[2]), Xyz.PCS_WHITE),
                twins);
    }
}
