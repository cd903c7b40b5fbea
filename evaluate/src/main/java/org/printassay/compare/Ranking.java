package org.printassay.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.compare.Question.Criterion;

/**
 * Sides in order of what one question asks for.
 *
 * <p>A side stands above another where the first figure in which they differ says so; a difference
 * counts when it is measurable and large enough to be seen. Its place is one more than how many
 * sides have fewer above them than it has, so sides that cannot be told apart share a place.
 *
 * @param criteria what could be asked: figures that every side has, and that are known well enough
 *     to tell differences
 * @param left figures that some side lacks, or of which nothing tells how sure they are
 * @param places best first; empty when nothing could be asked
 */
public record Ranking(
        Question question, List<Criterion> criteria, List<Criterion> left, List<Place> places) {
    public Ranking {
        criteria = List.copyOf(criteria);
        left = List.copyOf(left);
        places = List.copyOf(places);
    }

    /**
     * One side.
     *
     * @param place from 1; several may share it
     * @param side its place among the sides, from 0
     * @param decidedBy the figure that puts it below the place before; null in the first place
     */
    public record Place(int place, int side, @Nullable Figure decidedBy) {}

    /** Whether all share the first place. */
    public boolean undecided() {
        return places.stream().allMatch(place -> place.place() == 1);
    }

    /** Ranks the sides of a comparison that is complete but for its rankings. */
    static Ranking of(Question question, Pairs pairs) {
        List<Criterion> asked = new ArrayList<>();
        List<Criterion> left = new ArrayList<>();
        for (Criterion criterion : question.criteria()) {
            (pairs.allTell(criterion.figure()) ? asked : left).add(criterion);
        }
        return new Ranking(
                question, asked, left, asked.isEmpty() ? List.of() : places(asked, pairs));
    }

    private static List<Place> places(List<Criterion> asked, Pairs pairs) {
        int n = pairs.sides();
        int[] above = new int[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                above[i] += i != k && better(asked, pairs.between(i, k)) > 0 ? 1 : 0;
            }
        }
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingInt(i -> above[i]));
        List<Place> places = new ArrayList<>();
        for (int at = 0; at < n; at++) {
            int side = order.get(at);
            boolean shares = at > 0 && above[order.get(at - 1)] == above[side];
            int place = shares ? places.get(at - 1).place() : at + 1;
            places.add(new Place(place, side, decidedBy(asked, pairs, places, place, side)));
        }
        return places;
    }

    /** The first figure in which the nearest side of the place before is better. */
    private static @Nullable Figure decidedBy(
            List<Criterion> asked, Pairs pairs, List<Place> before, int place, int side) {
        for (int at = before.size() - 1; at >= 0; at--) {
            Place upper = before.get(at);
            if (upper.place() < place) {
                Pair pair = pairs.between(side, upper.side());
                if (better(asked, pair) > 0) {
                    return decider(asked, pair);
                }
            }
        }
        return null;
    }

    /** Positive when the second of a pair is better, negative when the first is. */
    private static int better(List<Criterion> asked, Pair pair) {
        for (Criterion criterion : asked) {
            int favours = pair.of(criterion.figure()).map(criterion::favours).orElse(0);
            if (favours != 0) {
                return favours;
            }
        }
        return 0;
    }

    private static @Nullable Figure decider(List<Criterion> asked, Pair pair) {
        for (Criterion criterion : asked) {
            if (pair.of(criterion.figure()).map(criterion::favours).orElse(0) != 0) {
                return criterion.figure();
            }
        }
        return null;
    }
}
