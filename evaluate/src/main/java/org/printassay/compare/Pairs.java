package org.printassay.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Every two sides of a comparison, judged together.
 *
 * @param sides how many sides
 * @param all each pair once, the earlier side first
 * @param counted how many differences were looked at together
 */
public record Pairs(int sides, List<Pair> all, int counted) {
    public Pairs {
        all = List.copyOf(all);
    }

    static Pairs of(List<Side> sides, PrintSpread known, boolean readAlike) {
        Set<Figure> leftOut =
                CommonCodes.leftOut(sides.stream().flatMap(s -> s.prints().stream()).toList());
        PrintSpread repeats = PrintSpread.ofRepeats(sides);
        List<List<Difference>> found = new ArrayList<>();
        List<Difference> together = new ArrayList<>();
        for (int i = 0; i < sides.size(); i++) {
            for (int k = i + 1; k < sides.size(); k++) {
                List<Difference> two =
                        Differences.between(sides.get(i), sides.get(k), repeats, known, readAlike)
                                .stream()
                                .filter(d -> !leftOut.contains(d.figure()))
                                .toList();
                found.add(two);
                together.addAll(two);
            }
        }
        List<Judged> judged = Verdicts.of(together);
        List<Pair> pairs = new ArrayList<>();
        int pair = 0;
        int from = 0;
        for (int i = 0; i < sides.size(); i++) {
            for (int k = i + 1; k < sides.size(); k++) {
                int to = from + found.get(pair++).size();
                pairs.add(new Pair(i, k, judged.subList(from, to)));
                from = to;
            }
        }
        int counted = (int) together.stream().filter(d -> d.standard() != null).count();
        return new Pairs(sides.size(), pairs, counted);
    }

    /** Two different sides, the second minus the first. */
    public Pair between(int one, int other) {
        for (Pair pair : all) {
            if (pair.one() == one && pair.other() == other) {
                return pair;
            }
            if (pair.one() == other && pair.other() == one) {
                return pair.turned();
            }
        }
        throw new IllegalArgumentException("no pair of " + one + " and " + other);
    }

    /** Whether every pair has a figure, and it is known how sure. */
    boolean allTell(Figure figure) {
        return all.stream()
                .allMatch(
                        pair ->
                                pair.of(figure)
                                        .filter(f -> f.verdict() != DifferenceVerdict.NOT_TOLD)
                                        .isPresent());
    }

    /** The two sides that lie furthest apart in a figure; empty when no pair has it. */
    Optional<Pair> widest(Figure figure) {
        return widest(figure, judged -> true);
    }

    /** The same among pairs of which something holds. */
    Optional<Pair> widest(Figure figure, Predicate<Judged> holds) {
        Pair widest = null;
        double most = -1;
        for (Pair pair : all) {
            double size =
                    pair.of(figure)
                            .filter(holds)
                            .map(f -> Math.abs(f.difference().value()))
                            .orElse(-1.0);
            if (size > most) {
                most = size;
                widest = pair;
            }
        }
        return Optional.ofNullable(widest);
    }
}
