package org.printassay.compare;

import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;

/** What an evaluation does not know of its scanner's light, standard uncertainties. */
final class Lights {
    private Lights() {}

    /** That part of a figure's budget; 0 where there is none. */
    static double of(Evaluation print, String key) {
        return print.uncertainty().stream()
                .filter(budget -> budget.figure().equals(key))
                .flatMap(budget -> budget.parts().stream())
                .filter(part -> part.kind() == Budget.Kind.LIGHT)
                .mapToDouble(Budget.Part::standard)
                .findFirst()
                .orElse(0);
    }
}
