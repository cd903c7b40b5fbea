package org.printassay.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.printassay.compare.SimplePrints.print;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.compare.Comparability.Caution;
import org.printassay.compare.Comparability.Reason;
import org.printassay.evaluation.Evaluation;
import org.printassay.problem.Problem;
import org.printassay.reading.Trust;

/** What may not be compared is refused, and what must be known is said. */
class ComparabilityTest {
    private static Comparability of(SimplePrints... prints) {
        List<Evaluation> all = Arrays.stream(prints).map(SimplePrints::evaluation).toList();
        return Comparability.of(all);
    }

    private static List<Reason> reasons(Comparability c) {
        return c.cautions().stream().map(Caution::reason).toList();
    }

    @Test
    void measuredAlikeNeedsNoCaution() {
        Comparability c = of(print("A"), print("B"));
        assertEquals(List.of(), c.cautions());
        assertTrue(c.readAlike());
        assertFalse(c.refused());
    }

    @Test
    void scansAndMeasurementsAreNotCompared() {
        Comparability c = of(print("A"), print("B").trust(Trust.PROFILED_SCAN));
        assertTrue(c.refused());
        Caution why = c.refusal().orElseThrow();
        assertEquals(Reason.TRUST, why.reason());
        assertTrue(why.text().contains("instrument for A; profiled-scan for B"), why.text());
        assertFalse(c.readAlike());
    }

    @Test
    void theSameFileTwiceIsRefusedBeforeAnythingElse() {
        Comparability c = of(print("A").sum('1'), print("B").sum('1').trust(Trust.PROFILED_SCAN));
        assertEquals(Reason.SAME_INPUT, c.refusal().orElseThrow().reason());
    }

    @Test
    void measurementConditionsAreNotMixed() {
        Comparability c = of(print("A").condition("M0"), print("B").condition("M1"));
        assertEquals(Reason.CONDITION, c.refusal().orElseThrow().reason());
        Comparability unsaid = of(print("A").condition("M1"), print("B").condition(null));
        assertFalse(unsaid.refused());
        assertEquals(List.of(Reason.CONDITION_UNSAID), reasons(unsaid));
    }

    @Test
    void otherScannersAndThresholdsAreRefused() {
        assertEquals(
                Reason.SCANNER,
                of(
                                print("A").scanner("one").trust(Trust.PROFILED_SCAN),
                                print("B").scanner("two").trust(Trust.PROFILED_SCAN))
                        .refusal()
                        .orElseThrow()
                        .reason());
        assertEquals(
                Reason.THRESHOLD,
                of(print("A").threshold(0.5), print("B").threshold(1.0))
                        .refusal()
                        .orElseThrow()
                        .reason());
    }

    /** Two instruments differ in all colours: common practice, no source. */
    @Test
    void otherInstrumentsAreSaidAndNothingCancels() {
        Comparability two = of(print("A").instrument("one"), print("B").instrument("two"));
        assertFalse(two.refused());
        assertEquals(List.of(Reason.INSTRUMENT), reasons(two));
        assertTrue(two.cautions().get(0).text().contains("one for A; two for B"));
        assertFalse(two.readAlike());
        assertTrue(
                of(print("A").instrument("An  one"), print("B").instrument("AN ONE")).readAlike());
    }

    @Test
    void whoeverDoesNotSayItsReaderIsNotTakenToBeReadAlike() {
        for (Trust trust : List.of(Trust.INSTRUMENT, Trust.PROFILED_SCAN)) {
            SimplePrints one = print("A").printer("P").trust(trust);
            SimplePrints other =
                    print("A").printer("P").trust(trust).sum('2').scanner(null).instrument(null);
            assertEquals(List.of(Reason.READER_UNSAID), reasons(of(one, other)));
            assertFalse(of(one, other).readAlike());
            SimplePrints third =
                    print("A").printer("P").trust(trust).sum('3').scanner(null).instrument(null);
            Comparability none = of(other, third);
            assertEquals(Reason.READER_UNSAID, reasons(none).get(0));
            assertTrue(none.cautions().get(0).text().startsWith("Nothing says with which"));
            assertFalse(none.readAlike());
        }
    }

    @Test
    void otherProfilesOfTheScannerAreSaid() {
        Comparability c =
                of(
                        print("A").printer("P").trust(Trust.PROFILED_SCAN).profile('1'),
                        print("A").printer("P").trust(Trust.PROFILED_SCAN).profile('2').sum('2'));
        assertFalse(c.refused());
        assertTrue(reasons(c).contains(Reason.SCANNER_PROFILE), reasons(c).toString());
        assertFalse(c.readAlike());
    }

    @Test
    void otherChartsAreSaidAndCompared() {
        Comparability c = of(print("A").chart("paper-a4"), print("B").chart("paper-letter"));
        assertFalse(c.refused());
        assertEquals(List.of(Reason.CHART), reasons(c));
    }

    /** A measurement that came without its chart is not of another one for that. */
    @Test
    void aChartThatIsNotKnownIsToldByItsCodes() throws Exception {
        int[] all = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
        SimplePrints known = print("A").chart("one").levels(all);
        Comparability same = of(known, print("B").chart(null).levels(all));
        assertEquals(List.of(Reason.CHART_UNSAID), reasons(same));
        assertTrue(same.cautions().get(0).text().contains("(B)"), same.cautions().get(0).text());
        SimplePrints shorter = print("B").chart(null).levels(0, 1, 2, 3, 4, 5, 6, 7);
        Comparability part = of(known, shorter);
        assertEquals(List.of(Reason.CHART_UNSAID), reasons(part));
        assertTrue(
                part.cautions().get(0).text().contains("visible steps in shadows"),
                "what is left out is said");
        assertTrue(
                comparison(known, shorter)
                        .pairs()
                        .between(0, 1)
                        .of(Figure.SHADOWS_STEPS)
                        .isEmpty());
        Comparability other = of(known, print("B").chart(null).levels(100, 101, 102));
        assertEquals(List.of(Reason.CHART), reasons(other));
        assertTrue(
                other.cautions().get(0).text().contains("an unknown one for B; one for A"),
                other.cautions().get(0).text());
        SimplePrints neither = print("A").chart(null).levels(all);
        assertEquals(List.of(), reasons(of(neither, print("B").chart(null).levels(all))));
    }

    /** Steps over every level and over every fourth are not the same steps. */
    @Test
    void figuresOverOtherPatchesAreLeftOut() throws Exception {
        int[] all = {0, 1, 2, 3, 4, 5, 6, 7, 8};
        SimplePrints whole = print("A").chart("one").levels(all);
        SimplePrints coarse = print("B").chart("two").levels(0, 4, 8).black(20);
        Comparability c = of(whole, coarse);
        assertEquals(List.of(Reason.CHART), reasons(c));
        assertTrue(
                c.cautions().get(0).text().contains("visible steps in shadows"),
                c.cautions().get(0).text());
        Comparison compared = comparison(whole, coarse);
        Pair pair = compared.pairs().between(0, 1);
        assertTrue(pair.of(Figure.SHADOWS_STEPS).isEmpty());
        assertTrue(pair.of(Figure.SHADOWS_VISIBLE).isEmpty());
        assertTrue(pair.of(Figure.BLACK_L).isPresent());
        SimplePrints other = print("B").chart("two").levels(all);
        assertTrue(
                comparison(whole, other).pairs().between(0, 1).of(Figure.SHADOWS_STEPS).isPresent(),
                "other pages of the same patches");
        SimplePrints missing = print("B").chart("one").levels(0, 4, 8);
        assertTrue(
                comparison(whole, missing)
                        .pairs()
                        .between(0, 1)
                        .of(Figure.SHADOWS_STEPS)
                        .isPresent(),
                "a patch that is missing makes no other chart");
    }

    private static Comparison comparison(SimplePrints one, SimplePrints other) throws Problem {
        return Comparison.of(
                List.of(
                        new NamedPrint("one", one.sum('1').evaluation()),
                        new NamedPrint("other", other.sum('2').evaluation())),
                KnownSpread.NONE,
                "");
    }

    /** Common practice, no source: prints dry for a day. */
    @ParameterizedTest
    @CsvSource({
        "24, 48, false",
        "1, 48, true",
        "1, 12, true",
        "2, 2, false",
        "20, 24, false",
        ", , false",
        ", 24, true"
    })
    void dryingTimesAreSaidWhereTheyMatter(Double one, Double other, boolean said) {
        Comparability c = of(print("A").dried(one), print("B").dried(other));
        assertFalse(c.refused());
        assertEquals(said ? List.of(Reason.DRYING) : List.of(), reasons(c));
    }

    @Test
    void aProfilesErrorIsSharedOnOnePaperAlone() {
        Comparability two =
                of(
                        print("A").trust(Trust.PROFILED_SCAN),
                        print("B").trust(Trust.PROFILED_SCAN).sum('2'));
        assertFalse(two.readAlike());
        assertEquals(List.of(Reason.PROFILE), reasons(two));
        Comparability one =
                of(
                        print("A").printer("P").trust(Trust.PROFILED_SCAN),
                        print("A").printer("P").trust(Trust.PROFILED_SCAN).sum('2'));
        assertTrue(one.readAlike());
        assertEquals(List.of(), reasons(one));
    }

    @Test
    void scansWithoutProfileSayThatNothingAbsoluteIsCompared() {
        Comparability c =
                of(print("A").trust(Trust.PLAIN_SCAN), print("B").trust(Trust.PLAIN_SCAN));
        assertEquals(List.of(Reason.RELATIVE_ONLY), reasons(c));
    }
}
