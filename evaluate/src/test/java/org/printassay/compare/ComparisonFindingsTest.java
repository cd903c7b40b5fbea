package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.compare.SimplePrints.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.Finding;

/** Which findings of a comparison find room; differences made by hand. */
class ComparisonFindingsTest {
    private static final List<Figure> DIFFERING =
            List.of(
                    Figure.BLACK_L,
                    Figure.SHADOWS_STEPS,
                    Figure.TONE_MIDTONES,
                    Figure.GREYS_CHROMA,
                    Figure.WHITE_L,
                    Figure.HIGHLIGHTS_STEPS);

    private static List<String> topics(List<Figure> differ, Map<Figure, DifferenceVerdict> others) {
        List<Judged> judged = new ArrayList<>();
        differ.forEach(figure -> judged.add(judged(figure, DifferenceVerdict.DIFFERS)));
        others.forEach((figure, verdict) -> judged.add(judged(figure, verdict)));
        List<Side> sides = List.of(side("A"), side("B"));
        Pairs pairs = new Pairs(2, List.of(new Pair(0, 1, judged)), judged.size());
        return new ComparisonFindings(Subject.PRINTS, sides, pairs)
                .all().stream().map(Finding::topic).toList();
    }

    private static Side side(String paper) {
        return Side.of(paper, List.of(print(paper).evaluation()));
    }

    private static Judged judged(Figure figure, DifferenceVerdict verdict) {
        Double standard = verdict == DifferenceVerdict.NOT_TOLD ? null : Double.valueOf(0.1);
        return new Judged(
                Difference.of(figure, 10, 30, standard, null, Difference.Basis.THESE_PRINTS),
                verdict);
    }

    @Test
    void limitsAreSaidThoughMuchDiffers() {
        List<String> topics =
                topics(
                        DIFFERING,
                        Map.of(
                                Figure.SKIN_MEAN, DifferenceVerdict.UNSURE,
                                Figure.GRAIN_MIDTONES, DifferenceVerdict.NOT_MEASURABLE,
                                Figure.EVENNESS_GRADIENT, DifferenceVerdict.NOT_TOLD));
        assertEquals(7, topics.size());
        assertEquals(List.of("Perhaps", "Alike", "Limits"), topics.subList(4, 7));
    }

    @Test
    void differencesTakeTheRoomThatIsLeft() {
        List<String> topics =
                topics(DIFFERING, Map.of(Figure.GRAIN_MIDTONES, DifferenceVerdict.NOT_MEASURABLE));
        assertEquals(List.of("Alike", "Limits"), topics.subList(5, 7));
        assertTrue(
                topics(List.of(), Map.of(Figure.WHITE_L, DifferenceVerdict.NOT_MEASURABLE)).size()
                        == 2);
    }
}
