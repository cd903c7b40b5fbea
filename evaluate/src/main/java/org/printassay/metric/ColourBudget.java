package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;

/**
 * Uncertainty of a mean dE00 over many colours. What moves all readings together is moved by one
 * standard error, and what that does to the mean is a part (ISO/IEC Guide 98-3, 5.1.3, note 2);
 * errors that each colour has of its own are averaged.
 */
final class ColourBudget {
    /**
     * A calibration's errors are alike in colours that are near each other: so many go together.
     */
    private static final double ALIKE = 12;

    private final ReadingSet set;
    private final ToDoubleFunction<ReadingSet> figure;
    private final double value;

    private ColourBudget(ReadingSet set, ToDoubleFunction<ReadingSet> figure) {
        this.set = set;
        this.figure = figure;
        this.value = figure.applyAsDouble(set);
    }

    /**
     * The budget of a mean.
     *
     * @param figure how it follows from readings
     * @param spread of one patch in L*, a* and b*; nothing where it is not known
     * @param colours how many colours it is made of
     */
    static Budget of(
            String name,
            String unit,
            ReadingSet set,
            ToDoubleFunction<ReadingSet> figure,
            Lab spread,
            int colours) {
        ColourBudget budget = new ColourBudget(set, figure);
        List<Budget.Part> parts = new ArrayList<>();
        double random = budget.length(i -> spread) / Math.sqrt(colours);
        if (random > 0) {
            parts.add(new Budget.Part(Budget.Kind.RANDOM, random, null));
        }
        double light = 0;
        for (SharedError cause : set.shared()) {
            light += Math.pow(budget.moved(i -> cause.shifts().get(i)), 2);
        }
        if (!set.shared().isEmpty()) {
            parts.add(new Budget.Part(Budget.Kind.LIGHT, Math.sqrt(light), null));
        }
        if (!set.calibration().isEmpty()) {
            double together = Math.sqrt(Math.max(1, colours / ALIKE));
            double calibration = budget.length(i -> set.calibration().get(i)) / together;
            parts.add(new Budget.Part(Budget.Kind.CALIBRATION, calibration, null));
        }
        double lightness = Systematic.lightness(set.trust()) / Coverage.NORMAL_95;
        double chroma = Systematic.chroma(set.trust()) / Coverage.NORMAL_95;
        double stated = budget.apart(i -> new Lab(lightness, chroma, chroma));
        parts.add(new Budget.Part(Budget.Kind.SYSTEMATIC, stated, null));
        return new Budget(name, unit, budget.value, parts);
    }

    /** Root mean square length of errors that each colour has of its own, dE00. */
    private double length(IntFunction<Lab> error) {
        double squares = 0;
        int n = 0;
        for (int i = 0; i < set.readings().size(); i++) {
            Lab lab = set.readings().get(i).lab();
            if (lab != null) {
                Lab by = error.apply(i);
                squares +=
                        Math.pow(
                                DeltaE.ciede2000(lab, new Lab(lab.l() + by.l(), lab.a(), lab.b())),
                                2);
                squares +=
                        Math.pow(
                                DeltaE.ciede2000(lab, new Lab(lab.l(), lab.a() + by.a(), lab.b())),
                                2);
                squares +=
                        Math.pow(
                                DeltaE.ciede2000(lab, new Lab(lab.l(), lab.a(), lab.b() + by.b())),
                                2);
                n++;
            }
        }
        return n == 0 ? 0 : Math.sqrt(squares / n);
    }

    /** L*, a* and b* are moved one after the other: their errors are independent. */
    private double apart(IntFunction<Lab> shift) {
        double l = moved(i -> new Lab(shift.apply(i).l(), 0, 0));
        double a = moved(i -> new Lab(0, shift.apply(i).a(), 0));
        double b = moved(i -> new Lab(0, 0, shift.apply(i).b()));
        return Math.sqrt(l * l + a * a + b * b);
    }

    private double moved(IntFunction<Lab> shift) {
        return figure.applyAsDouble(shifted(set, shift)) - value;
    }

    /** The readings with each colour moved; relative colours where there are no others. */
    static ReadingSet shifted(ReadingSet set, IntFunction<Lab> shift) {
        List<Reading> moved = new ArrayList<>();
        for (int i = 0; i < set.readings().size(); i++) {
            Reading r = set.readings().get(i);
            Lab by = shift.apply(i);
            moved.add(
                    new Reading(
                            r.id(),
                            r.section(),
                            r.rgb(),
                            plus(r.lab(), by),
                            r.lab() == null ? plus(r.labRelative(), by) : r.labRelative(),
                            r.standardError(),
                            r.density(),
                            r.flags(),
                            r.centre(),
                            r.sheet()));
        }
        return new ReadingSet(moved, set.space(), set.trust(), set.colour());
    }

    private static @Nullable Lab plus(@Nullable Lab lab, Lab by) {
        return lab == null ? null : new Lab(lab.l() + by.l(), lab.a() + by.a(), lab.b() + by.b());
    }
}
