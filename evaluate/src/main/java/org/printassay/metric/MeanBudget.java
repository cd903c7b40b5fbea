package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;

/** Uncertainty of any mean dE00 over readings. */
public final class MeanBudget {
    private MeanBudget() {}

    /**
     * The budget.
     *
     * @param figure its name
     * @param mean how it follows from readings, dE00
     * @param others parts besides the one that is stated for the trust
     */
    public static Budget of(
            String figure,
            List<Reading> readings,
            RgbSpace space,
            Trust trust,
            ToDoubleFunction<List<Reading>> mean,
            List<Budget.Part> others) {
        Budget stated =
                ColourBudget.of(
                        figure,
                        "dE00",
                        new ReadingSet(readings, space, trust, true),
                        set -> mean.applyAsDouble(set.readings()),
                        new Lab(0, 0, 0),
                        readings.size());
        List<Budget.Part> parts = new ArrayList<>(others);
        parts.addAll(stated.parts());
        return new Budget(figure, stated.unit(), stated.value(), parts);
    }
}
