package org.printassay.scannercalibration;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.printassay.calibrate.ScanLights;
import org.printassay.calibrate.codes.ScanColour;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;
import org.printassay.measurement.MeasuredPatch;
import org.printassay.measurement.MeasurementFile;
import org.printassay.scannermodel.TrainingPatch;
import org.printassay.sheet.Patch;

/**
 * Which measurement belongs to which patch: the one of the same name and code, else the mean of all
 * of the same code. Patches that are less sure are left out.
 */
final class Matching {
    private final Map<String, MeasuredPatch> byId = new HashMap<>();
    private final Map<Rgb8, List<MeasuredPatch>> byCode = new HashMap<>();

    Matching(MeasurementFile measured) {
        for (MeasuredPatch patch : measured.patches()) {
            byId.putIfAbsent(patch.id(), patch);
            byCode.computeIfAbsent(patch.rgb(), k -> new ArrayList<>()).add(patch);
        }
    }

    List<TrainingPatch> of(ScanLights lights) {
        List<TrainingPatch> matched = new ArrayList<>();
        for (ScanLights.PatchLight seen : lights.patches()) {
            Patch patch = seen.patch();
            List<MeasuredPatch> same = byCode.getOrDefault(patch.rgb(), List.of());
            if (!seen.flags().isEmpty() || same.isEmpty()) {
                continue;
            }
            MeasuredPatch own = own(patch);
            Lab lab = own != null ? own.lab() : mean(same);
            Rgb8 code = patch.rgb();
            matched.add(
                    new TrainingPatch(
                            patch.id(),
                            code.r() + " " + code.g() + " " + code.b(),
                            code.isNeutral(),
                            seen.light(),
                            lab));
        }
        return matched;
    }

    private @Nullable MeasuredPatch own(Patch patch) {
        MeasuredPatch own = byId.get(patch.id());
        return own != null && own.rgb().equals(patch.rgb()) ? own : null;
    }

    /**
     * Patches in scan and measurement, both relative to their paper.
     *
     * @param colour of the scan's light
     */
    List<SamePrint.Pair> pairs(ScanLights lights, ScanColour colour) {
        List<MeasuredPatch> bare = byCode.getOrDefault(Rgb8.grey(255), List.of());
        Xyz measuredPaper = bare.isEmpty() ? Xyz.PCS_WHITE : mean(bare).toXyz(Xyz.PCS_WHITE);
        Xyz seenPaper = colour.toXyz(lights.paper());
        List<SamePrint.Pair> pairs = new ArrayList<>();
        for (ScanLights.PatchLight seen : lights.patches()) {
            Patch patch = seen.patch();
            List<MeasuredPatch> same = byCode.getOrDefault(patch.rgb(), List.of());
            if (!seen.flags().isEmpty() || same.isEmpty() || patch.rgb().equals(Rgb8.grey(255))) {
                continue;
            }
            MeasuredPatch own = own(patch);
            Lab lab = own != null ? own.lab() : mean(same);
            pairs.add(
                    new SamePrint.Pair(
                            patch.rgb().toString(),
                            relative(colour.toXyz(seen.light()), seenPaper),
                            relative(lab.toXyz(Xyz.PCS_WHITE), measuredPaper),
                            own != null && own.placed()));
        }
        return pairs;
    }

    private static Lab relative(Xyz xyz, Xyz paper) {
        Xyz white = Xyz.PCS_WHITE;
        return Lab.of(
                new Xyz(
                        xyz.x() / paper.x() * white.x(),
                        xyz.y() / paper.y() * white.y(),
                        xyz.z() / paper.z() * white.z()),
                white);
    }

    private static Lab mean(List<MeasuredPatch> same) {
        double x = 0;
        double y = 0;
        double z = 0;
        for (MeasuredPatch patch : same) {
            Xyz xyz = patch.lab().toXyz(Xyz.PCS_WHITE);
            x += xyz.x() / same.size();
            y += xyz.y() / same.size();
            z += xyz.z() / same.size();
        }
        return Lab.of(new Xyz(x, y, z), Xyz.PCS_WHITE);
    }
}
