package org.printassay.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.printassay.compare.Comparison;
import org.printassay.compare.Figure;
import org.printassay.compare.Ranking;
import org.printassay.compare.Side;

/** Rankings as the page shows them. */
final class ComparisonRanks {
    private ComparisonRanks() {}

    static ComparisonView.Asked of(Comparison c, Ranking ranking) {
        List<ComparisonView.Placed> places = new ArrayList<>();
        for (Ranking.Place place : ranking.places()) {
            Side side = c.sides().get(place.side());
            long sharing =
                    ranking.places().stream().filter(p -> p.place() == place.place()).count();
            Figure by = place.decidedBy();
            places.add(
                    new ComparisonView.Placed(
                            (sharing > 1 ? "=" : "") + place.place(),
                            place.side() + 1,
                            c.shortName(place.side()),
                            ranking.criteria().stream()
                                    .map(asked -> ComparisonWords.value(side, asked.figure()))
                                    .toList(),
                            Stream.of(
                                            by == null ? "" : "by " + by.shortLabel(),
                                            ComparisonWords.behind(c, ranking, place.side()))
                                    .filter(words -> !words.isEmpty())
                                    .collect(Collectors.joining("; "))));
        }
        return new ComparisonView.Asked(
                ranking.question().key(),
                ranking.question().label(),
                Words.typeset(ComparisonWords.rule(ranking)),
                ranking.criteria().stream().map(asked -> asked.figure().label()).toList(),
                places,
                none(c, ranking));
    }

    private static String none(Comparison c, Ranking ranking) {
        if (ranking.places().isEmpty()) {
            return "Cannot be told: nothing of this was judged on every side surely enough.";
        }
        return ranking.undecided() ? "For this, " + c.these() + " cannot be told apart." : "";
    }
}
