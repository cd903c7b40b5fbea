package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.List;

/**
 * Steps one after the other, results rounded to single precision after each, as LittleCMS hands
 * them on: where a value lies half-way between two {@link Words}, the last bit decides. Pairs that
 * the engine takes together are one step or none here too: two matrices, and CIELAB to the newer
 * code and back to the older.
 */
final class Chain {
    private final Step[] steps;

    private Chain(List<Step> steps) {
        this.steps = steps.toArray(new Step[0]);
    }

    static Chain of(List<Step> steps) {
        List<Step> joined = new ArrayList<>();
        for (Step step : steps) {
            Step last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last instanceof Linear first && step instanceof Linear second) {
                Linear both = first.then(second);
                joined.remove(joined.size() - 1);
                if (!both.isIdentity()) {
                    joined.add(both);
                }
            } else if (last == PcsCode.FROM_LUT16 && step == PcsCode.TO_LUT16) {
                joined.remove(joined.size() - 1);
            } else {
                joined.add(step);
            }
        }
        return new Chain(joined);
    }

    /**
     * Runs all steps.
     *
     * @param v as {@link Step#apply} says; modified
     */
    void run(double[] v) {
        round(v);
        for (Step step : steps) {
            step.apply(v);
            round(v);
        }
    }

    private static void round(double[] v) {
        for (int i = 0; i < Step.MOST_VALUES; i++) {
            v[i] = (float) v[i];
        }
    }
}
