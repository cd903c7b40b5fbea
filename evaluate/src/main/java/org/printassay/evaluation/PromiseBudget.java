package org.printassay.evaluation;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.RgbSpace;
import org.printassay.metric.Budget;
import org.printassay.metric.MeanBudget;
import org.printassay.promise.Promise;
import org.printassay.reading.Reading;

/** How sure the mean distance from a profile's promise is. */
final class PromiseBudget {
    private PromiseBudget() {}

    /**
     * The budget. What is stated for the trust is followed through this very mean; random, light
     * and calibration parts are those of the mean over the chart's colours, else of paper.
     */
    static Budget of(Evaluation e, Promise promise) {
        Map<String, Lab> wanted = new HashMap<>();
        promise.patches().forEach(patch -> wanted.put(patch.id(), patch.lab()));
        return MeanBudget.of(
                "aim.meanDeltaE00",
                e.patches(),
                RgbSpace.ofKey(e.spaceKey()).orElseThrow(),
                e.trust(),
                readings -> mean(readings, wanted),
                others(e.uncertainty()));
    }

    private static double mean(List<Reading> readings, Map<String, Lab> wanted) {
        double sum = 0;
        int n = 0;
        for (Reading reading : readings) {
            Lab to = wanted.get(reading.id());
            Lab lab = reading.lab();
            if (to != null && lab != null && reading.isSound()) {
                sum += DeltaE.ciede2000(to, lab);
                n++;
            }
        }
        return n == 0 ? 0 : sum / n;
    }

    private static List<Budget.Part> others(List<Budget> budgets) {
        for (String figure : new String[] {"colours.meanDeltaE00", "white.lab.l"}) {
            for (Budget budget : budgets) {
                if (budget.figure().equals(figure)) {
                    return budget.parts().stream()
                            .filter(part -> part.kind() != Budget.Kind.SYSTEMATIC)
                            .toList();
                }
            }
        }
        return List.of();
    }
}
