package org.printassay.compare;

import java.util.List;
import org.printassay.evaluation.Evaluation;
import org.printassay.metric.Budget;

/** What an evaluation does not know of its scanner's light, standard uncertainties. */
final class Lights {
    private Lights() {}

    /** What the mean of prints does not know of it, each scanned by itself. */
    static double of(List<Evaluation> prints, String key) {
        double squares = prints.stream().mapToDouble(p -> Math.pow(of(p, key), 2)).sum();
        return Math.sqrt(squares) / prints.size();
    }

    /** That part of a figure's budget; 0 where there is none. */
    private static double of(Evaluation print, String key) {
        return print.uncertainty().stream()
                .filter(budget -> budget.figure().equals(key))
                .flatMap(budget -> budget.parts().stream())
                .filter(part -> part.kind() == Budget.Kind.LIGHT)
                .mapToDouble(Budget.Part::standard)
                .findFirst()
                .orElse(0);
    }
}
