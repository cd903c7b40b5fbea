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
 * counts when it is measurable and large enough to be seen. Places are apart only where every side
 * of the better one stands above every side of the other; the rest share a place, even where some
 * of them can be told apart, which then is said of each two.
 *
 * @param criteria what could be asked: figures that every side has, and that are known well enough
 *     to tell differences
 * @param left figures that some side lacks, or of which nothing tells how sure they are
 * @param places best first; empty when nothing could be asked
 * @param within sides that share a place and yet can be told apart
 */
public record Ranking(
        Question question,
        List<Criterion> criteria,
        List<Criterion> left,
        List<Place> places,
        List<Told> within) {
    public Ranking {
        criteria = List.copyOf(criteria);
        left = List.copyOf(left);
        places = List.copyOf(places);
        within = List.copyOf(within);
    }

    /**
     * One side.
     *
     * @param place from 1; several may share it
     * @param side its place among the sides, from 0
     * @param decidedBy the figure that puts it below the place before; null in the first place
     */
    public record Place(int place, int side, @Nullable Figure decidedBy) {}

    /**
     * Two sides that share a place for the sake of a third.
     *
     * @param better the side that stands above the other, from 0
     * @param decidedBy the figure that tells them apart
     */
    public record Told(int better, int worse, Figure decidedBy) {}

    /** Whether no two sides can be told apart. */
    public boolean undecided() {
        return within.isEmpty() && places.stream().allMatch(place -> place.place() == 1);
    }

    /** Ranks the sides of a comparison that is complete but for its rankings. */
    static Ranking of(Question question, Pairs pairs) {
        List<Criterion> asked = new ArrayList<>();
        List<Criterion> left = new ArrayList<>();
        for (Criterion criterion : question.criteria()) {
            (pairs.allTell(criterion.figure()) ? asked : left).add(criterion);
        }
        if (asked.isEmpty()) {
            return new Ranking(question, asked, left, List.of(), List.of());
        }
        List<Place> places = places(asked, pairs);
        return new Ranking(question, asked, left, places, within(asked, pairs, places));
    }

    private static List<Place> places(List<Criterion> asked, Pairs pairs) {
        List<Integer> order = order(asked, pairs);
        List<Place> places = new ArrayList<>();
        int place = 1;
        for (int at = 0; at < order.size(); at++) {
            int side = order.get(at);
            if (at > 0 && apart(asked, pairs, order, at)) {
                place = at + 1;
            }
            Figure by =
                    place == 1 ? null : decider(asked, pairs.between(side, order.get(place - 2)));
            places.add(new Place(place, side, by));
        }
        return places;
    }

    /** Sides with the fewest above them first. */
    private static List<Integer> order(List<Criterion> asked, Pairs pairs) {
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
        return order;
    }

    /** Whether every side before a cut stands above every side behind it. */
    private static boolean apart(List<Criterion> asked, Pairs pairs, List<Integer> order, int cut) {
        for (int upper : order.subList(0, cut)) {
            for (int lower : order.subList(cut, order.size())) {
                if (better(asked, pairs.between(lower, upper)) <= 0) {
                    return false;
                }
            }
        }
        return true;
    }

    private static List<Told> within(List<Criterion> asked, Pairs pairs, List<Place> places) {
        List<Told> told = new ArrayList<>();
        for (Place one : places) {
            for (Place other : places) {
                Pair pair =
                        one.side() == other.side() ? null : pairs.between(one.side(), other.side());
                if (pair != null && one.place() == other.place() && better(asked, pair) < 0) {
                    Figure by = decider(asked, pair);
                    if (by != null) {
                        told.add(new Told(one.side(), other.side(), by));
                    }
                }
            }
        }
        return told;
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
