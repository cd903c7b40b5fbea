package org.printassay.compare;

import java.util.List;
import java.util.Optional;

/**
 * Two sides of a comparison.
 *
 * @param one place of the first among the sides, from 0
 * @param other place of the second; differences are second minus first
 * @param figures every figure that both have
 */
public record Pair(int one, int other, List<Judged> figures) {
    public Pair {
        figures = List.copyOf(figures);
    }

    /** One of them; empty when a side lacks it. */
    public Optional<Judged> of(Figure figure) {
        return figures.stream().filter(f -> f.figure() == figure).findFirst();
    }

    /** The same seen from the other side. */
    Pair turned() {
        return new Pair(
                /* one= */ other, /* other= */ one, figures.stream().map(Judged::turned).toList());
    }
}
