package org.printassay.metric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;

/**
 * Uncertainty of a gamut volume: errors of the colours of its surface, carried through the volume's
 * derivatives (ISO/IEC Guide 98-3, 5.1.3). What moves all colours together is added up with its
 * signs; errors that each colour has of its own are added as squares.
 */
final class GamutBudget {
    /** A calibration's errors are alike in so many neighbouring colours. */
    private static final double ALIKE = 12;

    private final ReadingSet set;
    private final Map<Rgb8, Lab> sensitivity;

    private GamutBudget(ReadingSet set, Map<Rgb8, Lab> sensitivity) {
        this.set = set;
        this.sensitivity = sensitivity;
    }

    /**
     * The budget.
     *
     * @param spread of one patch in L*, a* and b*
     */
    static Budget of(ReadingSet set, GamutMesh mesh, Lab spread) {
        GamutBudget budget = new GamutBudget(set, mesh.sensitivity());
        List<Budget.Part> parts = new ArrayList<>();
        double random = budget.apart(code -> spread);
        if (random > 0) {
            parts.add(new Budget.Part(Budget.Kind.RANDOM, random, null));
        }
        double light = 0;
        for (SharedError cause : set.shared()) {
            Map<Rgb8, Lab> shifts = budget.byCode(cause.shifts()::get);
            light += Math.pow(budget.together(shifts), 2);
        }
        if (light > 0) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, Math.sqrt(light), null));
        }
        if (!set.calibration().isEmpty()) {
            Map<Rgb8, Lab> errors = budget.byCode(set.calibration()::get);
            double calibration =
                    Math.sqrt(ALIKE)
                            * budget.apart(
                                    code ->
                                            Optional.ofNullable(errors.get(code))
                                                    .orElse(new Lab(0, 0, 0)));
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, calibration, null));
        }
        parts.add(new Budget.Part(Budget.Kind.SYSTEMATIC, budget.stated(mesh), null));
        return new Budget("colours.gamutVolume", "cubic CIELAB", mesh.volume(), parts);
    }

    /** All colours lighter by what is stated for lightness, all further from grey, or both. */
    private double stated(GamutMesh mesh) {
        double lightness = Systematic.lightness(set.trust()) / Coverage.NORMAL_95;
        double chroma = Systematic.chroma(set.trust()) / Coverage.NORMAL_95;
        Map<Rgb8, Lab> lighter = new HashMap<>();
        Map<Rgb8, Lab> fuller = new HashMap<>();
        for (Rgb8 code : sensitivity.keySet()) {
            Lab lab = mesh.lab(code);
            double c = Math.max(1, lab.chroma());
            lighter.put(code, new Lab(lightness * lab.l() / 100, 0, 0));
            fuller.put(code, new Lab(0, chroma * lab.a() / c, chroma * lab.b() / c));
        }
        return Math.hypot(together(lighter), together(fuller));
    }

    private double together(Map<Rgb8, Lab> shifts) {
        double sum = 0;
        for (Map.Entry<Rgb8, Lab> entry : sensitivity.entrySet()) {
            Lab shift = shifts.get(entry.getKey());
            if (shift != null) {
                Lab s = entry.getValue();
                sum += s.l() * shift.l() + s.a() * shift.a() + s.b() * shift.b();
            }
        }
        return Math.abs(sum);
    }

    private double apart(Function<Rgb8, Lab> error) {
        double squares = 0;
        for (Map.Entry<Rgb8, Lab> entry : sensitivity.entrySet()) {
            Lab s = entry.getValue();
            Lab e = error.apply(entry.getKey());
            squares +=
                    Math.pow(s.l() * e.l(), 2)
                            + Math.pow(s.a() * e.a(), 2)
                            + Math.pow(s.b() * e.b(), 2);
        }
        return Math.sqrt(squares);
    }

    /** Means over readings of a code. */
    private Map<Rgb8, Lab> byCode(IntFunction<Lab> each) {
        Map<Rgb8, List<Lab>> all = new HashMap<>();
        for (int i = 0; i < set.readings().size(); i++) {
            Rgb8 code = set.readings().get(i).rgb();
            if (sensitivity.containsKey(code)) {
                all.computeIfAbsent(code, k -> new ArrayList<>()).add(each.apply(i));
            }
        }
        Map<Rgb8, Lab> means = new HashMap<>();
        all.forEach((code, labs) -> means.put(code, Lab.mean(labs)));
        return means;
    }
}
