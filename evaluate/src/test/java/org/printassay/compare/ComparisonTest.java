package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.compare.SimplePrints.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.printassay.evaluation.Finding;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;

/** Sides, words and places of comparisons, on simulated evaluations made by hand. */
class ComparisonTest {
    private static Comparison of(SimplePrints... prints) throws Problem {
        return of("", prints);
    }

    private static Comparison of(String against, SimplePrints... prints) throws Problem {
        List<NamedPrint> named = new ArrayList<>();
        for (SimplePrints print : prints) {
            // Every print is another file.
            char sum = (char) ('0' + named.size());
            named.add(new NamedPrint("folder-" + sum, print.sum(sum).evaluation()));
        }
        return Comparison.of(named, KnownSpread.NONE, against);
    }

    private static Problem refused(SimplePrints... prints) {
        return assertThrows(Problem.class, () -> of(prints));
    }

    private static List<String> names(Comparison c) {
        return c.sides().stream().map(Side::name).toList();
    }

    private static String words(Comparison c) {
        StringBuilder all = new StringBuilder();
        for (Finding f : c.findings()) {
            all.append(f.text()).append(' ').append(f.sureness()).append(' ');
        }
        return all.toString();
    }

    @Test
    void printsOfOnePaperAreRepeatsOfEachOther() throws Exception {
        Comparison c = of(print("Paper  A"), print("B"), print("paper a"), print("B"));
        assertEquals(List.of("Paper  A", "B"), names(c));
        assertEquals(2, c.sides().get(0).prints().size());
        assertEquals(Subject.PAPERS, c.subject());
        assertEquals("these two papers", c.these());
    }

    @Test
    void printerAndRouteNameASideOnlyWhereTheyDiffer() throws Exception {
        assertEquals(
                List.of("A, P1", "A, P2", "B, P1"),
                names(
                        of(
                                print("A").printer("P1").route("r"),
                                print("A").printer("P2").route("r"),
                                print("B").printer("P1").route("r"))));
        assertEquals(
                List.of("A, plain", "A, route not said"),
                names(of(print("A").route("plain"), print("A"))));
    }

    @Test
    void printsWithoutAPaperAreSidesOfTheirOwn() throws Exception {
        Comparison c = of(print(""), print(""));
        assertEquals(List.of("folder-0", "folder-1"), names(c));
        assertEquals(Subject.PRINTS, c.subject());
    }

    @Test
    void onePrintEachSaysNothingOfPapers() throws Exception {
        Comparison c = of(print("A"), print("B").black(20).white(90));
        assertEquals("these two prints", c.these());
        String words = words(c).replace("Whether the papers differ, or only these prints", "");
        assertFalse(words.contains("these papers"), words);
        assertTrue(words(c).contains("cannot be told from one print each"), words(c));
    }

    @Test
    void printersAndRoutesAreNotCalledPapers() throws Exception {
        assertEquals(
                Subject.PRINTERS,
                of(print("A").printer("P1"), print("A").printer("P1"), print("A").printer("P2"))
                        .subject());
        assertEquals(
                Subject.ROUTES,
                of(print("A").route("one"), print("A").route("one"), print("A").route("two"))
                        .subject());
    }

    private static List<Comparability.Reason> reasons(Comparison c) {
        return c.comparability().cautions().stream().map(Comparability.Caution::reason).toList();
    }

    /** Paper A on one printer and paper B on another tell nothing of papers. */
    @Test
    void whatDiffersInTwoRespectsIsNotCalledPapers() throws Exception {
        Comparison c =
                of(
                        print("A, matt").printer("P1").black(20),
                        print("A, matt").printer("p1 ").black(20),
                        print("B").printer("P2"));
        assertEquals(Subject.COMBINATIONS, c.subject());
        assertEquals(Comparability.Reason.MIXTURE, reasons(c).get(0));
        assertEquals(List.of("A, matt, P1", "B, P2"), names(c));
        String words = words(c);
        assertFalse(words.contains("papers"), words);
        assertTrue(words.contains("on B, P2"), words);
        Comparison routes =
                of(print("A").route("for A"), print("A").route("for A"), print("B").route("for B"));
        assertEquals(Subject.PAPERS, routes.subject());
        assertTrue(reasons(routes).contains(Comparability.Reason.MIXTURE));
        assertFalse(
                reasons(of(print("A").route("r"), print("B").route("R")))
                        .contains(Comparability.Reason.MIXTURE));
    }

    private static List<NamedPrint> named(SimplePrints... prints) {
        return Arrays.stream(prints).map(p -> new NamedPrint("x", p.evaluation())).toList();
    }

    private static EarlierSpread earlier(Manner manner) {
        return new EarlierSpread(
                "earlier.json",
                new PrintSpread(Map.of(Figure.BLACK_L, 0.3), Map.of(Figure.BLACK_L, 2)),
                Set.of("1".repeat(64), "2".repeat(64)),
                manner);
    }

    @Test
    void repeatsAreNotCountedTwice() throws Exception {
        EarlierSpread earlier = earlier(Manner.of(List.of(print("A").evaluation())));
        Problem twice =
                assertThrows(
                        Problem.class,
                        () ->
                                earlier.usableWith(
                                        named(
                                                print("A").sum('1'),
                                                print("A").sum('2'),
                                                print("B").sum('3'))));
        assertEquals(Problem.Kind.USAGE, twice.kind());
        assertTrue(twice.getMessage().contains("count twice"), twice.getMessage());
        // A single print adds no freedom here, wherever it was a repeat before.
        assertEquals(earlier.spread(), earlier.usableWith(named(print("A").sum('1'), print("B"))));
        assertEquals(
                earlier.spread(),
                earlier.usableWith(
                        named(print("A").sum('4'), print("A").sum('5'), print("B").sum('6'))));
    }

    @Test
    void aSpreadOfPrintsJudgedInAnotherWayIsRefused() throws Exception {
        List<NamedPrint> prints = named(print("A"), print("B"));
        for (Manner other :
                List.of(
                        new Manner("profiled-scan", "srgb", 0.5, null),
                        new Manner("instrument", "adobe-rgb", 0.5, null),
                        new Manner("instrument", "srgb", 1.0, null))) {
            Problem refused = assertThrows(Problem.class, () -> earlier(other).usableWith(prints));
            assertEquals(Problem.Kind.INPUT, refused.kind());
            assertTrue(refused.getMessage().startsWith("earlier.json: "), refused.getMessage());
        }
        // Files of before say less; what they do not say is not held against them.
        earlier(new Manner("instrument", null, null, null)).usableWith(prints);
        assertEquals(
                Optional.of("aim one there, two here"),
                new Manner(null, null, null, "one").against(new Manner(null, null, null, "two")));
    }

    @Test
    void spellingMakesNoOtherPaper() throws Exception {
        assertEquals(
                Subject.PRINTERS,
                of(print("A").printer("P1"), print("a").printer("P1"), print("A ").printer("P2"))
                        .subject());
    }

    @Test
    void whatMayDifferIsCalledByItsName() throws Exception {
        String printers = words(of(print("A").printer("P1"), print("A").printer("P2")));
        assertTrue(printers.contains("Whether the printers differ, or only these"), printers);
        String unsaid = words(of(print(""), print("").black(20)));
        assertTrue(unsaid.contains("Whether papers or printers differ, or only"), unsaid);
    }

    @Test
    void equalPrintsHaveNoMeasurableDifference() throws Exception {
        Comparison c = of(print("A"), print("B"));
        assertTrue(
                c.findings().get(0).text().startsWith("No measurable difference between these"),
                words(c));
        assertTrue(c.rankings().stream().allMatch(Ranking::undecided));
    }

    /** 0.1 random each, read alike: 12 L* is beyond doubt, and its half-width is 1.96 x 0.141. */
    @Test
    void theLargestDifferenceIsSaidFirstWithItsInterval() throws Exception {
        Comparison c = of(print("A, matt").black(20), print("B, pearl").white(96.5));
        Finding first = c.findings().get(0);
        assertEquals("Deepest black: deeper on B (L* 8.0), duller on A (L* 20.0).", first.text());
        assertTrue(first.sureness().startsWith("L* 12.0 +- 0.3 apart"), first.sureness());
        Judged white = c.pairs().between(0, 1).of(Figure.WHITE_L).orElseThrow();
        assertEquals(1.5, white.difference().value(), 1e-9);
        assertEquals(DifferenceVerdict.DIFFERS, white.verdict());
        assertEquals(
                -1.5,
                c.pairs().between(1, 0).of(Figure.WHITE_L).orElseThrow().difference().value(),
                1e-9);
    }

    @Test
    void papersThatCannotBeToldApartShareAPlace() throws Exception {
        Comparison c = of(print("A").black(20), print("B").black(8), print("C").black(8.1));
        Ranking dark = c.ranking(Question.DARK_PICTURES);
        assertEquals(List.of(1, 1, 3), dark.places().stream().map(Ranking.Place::place).toList());
        assertEquals(List.of(1, 2, 0), dark.places().stream().map(Ranking.Place::side).toList());
        assertEquals(Figure.BLACK_RELATIVE_L, dark.places().get(2).decidedBy());
        assertTrue(c.ranking(Question.SKIN).places().isEmpty(), "nothing was judged for it");
    }

    /** From 1 L* a difference counts: A to B and B to C do not, A to C does. */
    @Test
    void aChainThatCannotBeToldApartSharesAPlace() throws Exception {
        Comparison c = of(print("A").black(8), print("B").black(8.7), print("C").black(9.4));
        Ranking dark = c.ranking(Question.DARK_PICTURES);
        assertEquals(List.of(1, 1, 1), dark.places().stream().map(Ranking.Place::place).toList());
        assertEquals(List.of(new Ranking.Told(0, 2, Figure.BLACK_RELATIVE_L)), dark.within());
        assertFalse(dark.undecided());
        Comparison four =
                of(
                        print("A").black(8),
                        print("B").black(8.7),
                        print("C").black(9.4),
                        print("D").black(20));
        assertEquals(
                List.of(1, 1, 1, 4),
                four.ranking(Question.DARK_PICTURES).places().stream()
                        .map(Ranking.Place::place)
                        .toList());
    }

    /** Measurable, but nobody sees it. */
    @Test
    void differencesThatNobodySeesDecideNothing() throws Exception {
        Comparison c = of(print("A").black(8), print("B").black(8.8));
        assertEquals(
                DifferenceVerdict.DIFFERS,
                c.pairs().between(0, 1).of(Figure.BLACK_L).orElseThrow().verdict());
        assertTrue(c.ranking(Question.DARK_PICTURES).undecided());
    }

    /** Without repeats nothing tells how sure a figure is: that is no tie. */
    @Test
    void whatIsNotKnownToBeSureRanksNothing() throws Exception {
        Comparison c = of(print("A").readOnce().black(20), print("B").readOnce());
        assertTrue(c.ranking(Question.DARK_PICTURES).places().isEmpty());
        assertTrue(words(c).contains("Nothing tells how sure differences are in:"), words(c));
        assertFalse(words(c).contains("No measurable difference"), words(c));
    }

    /** 0.35 L* is 2.5 times its standard uncertainty of 0.141: by itself, but not among five. */
    @Test
    void whatMayBeChanceIsNeitherADifferenceNorAlike() throws Exception {
        Comparison c = of(print("A"), print("B").black(8.3));
        assertEquals(
                DifferenceVerdict.UNSURE,
                c.pairs().between(0, 1).of(Figure.BLACK_L).orElseThrow().verdict());
        String words = words(c);
        assertTrue(words.contains("Perhaps different, not sure: deepest black"), words);
        assertTrue(words.contains("may happen by chance"), words);
        assertTrue(words.contains("No measurable difference in: "), words);
        assertFalse(words.matches("(?s).*No measurable difference in: [^.]*black.*"), words);
    }

    /** The outermost pair cannot be told apart, for one side was read badly; others can. */
    @Test
    void aDifferenceIsFoundThoughTheWidestPairIsUnsure() throws Exception {
        Comparison c =
                of(print("A").black(8), print("B").black(12), print("C").black(13).random(4));
        assertFalse(c.pairs().between(0, 2).of(Figure.BLACK_L).orElseThrow().counts());
        assertEquals(
                "Deepest black: deeper on A (L* 8.0), duller on B (L* 12.0).",
                c.findings().get(0).text());
    }

    @Test
    void othersAreShownAgainstTheChosenSide() throws Exception {
        SimplePrints[] prints = {print("A, matt"), print("B, pearl"), print("C")};
        assertEquals(0, of("", prints).against());
        assertEquals(1, of("2", prints).against());
        assertEquals(1, of("b", prints).against());
        assertEquals(2, of("C", prints).against());
        assertEquals(0, of("a,  Matt", prints).against());
        Problem none = assertThrows(Problem.class, () -> of("4", prints));
        assertEquals(Problem.Kind.USAGE, none.kind());
        assertTrue(none.getMessage().contains("A, matt; B, pearl; C"), none.getMessage());
    }

    @Test
    void whatCannotBeComparedIsRefusedInOneLine() {
        assertEquals(Problem.Kind.USAGE, refused(print("A")).kind());
        assertEquals(Problem.Kind.USAGE, refused(print("A"), print("A")).kind());
        Problem mixed = refused(print("A"), print("B").trust(Trust.PROFILED_SCAN));
        assertEquals(Problem.Kind.INPUT, mixed.kind());
        assertTrue(mixed.getMessage().startsWith("these prints cannot be compared: "));
        SimplePrints[] many = new SimplePrints[9];
        for (int i = 0; i < many.length; i++) {
            many[i] = print("Paper " + i);
        }
        assertTrue(refused(many).getMessage().contains("At most 8"));
    }
}
