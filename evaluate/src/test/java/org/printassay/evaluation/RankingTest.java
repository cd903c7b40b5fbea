package org.printassay.evaluation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.printassay.metric.Irregularity;
import org.printassay.metric.Neutrality;
import org.printassay.reading.Trust;

/** The ranking rule on made cases: what a picture loses counts first. */
class RankingTest {
    private static MadeFindings made() {
        return new MadeFindings();
    }

    private static final Neutrality.Cast NONE =
            new Neutrality.Cast(0, 1.2, 1.3, 1.3, false, "no sure cast");

    private static Neutrality.Cast leaning(double b, String words) {
        return new Neutrality.Cast(0, b, 1.2, 1.3, true, words);
    }

    /** One case of every kind, and what it weighs by the rule. */
    static Stream<Arguments> cases() {
        SurfaceCause print = SurfaceCause.PRINT;
        SurfaceCause either = SurfaceCause.UNDECIDED;
        return Stream.of(
                one(FindingKind.PRINT_SIZE, 100, made().scaled(0.96)),
                one(FindingKind.END_UNKNOWN, 30, made().shadows(null, 0)),
                one(FindingKind.END_UNKNOWN, 30, made().highlights(null, 0)),
                one(FindingKind.END_LOST, 7.5, made().shadows(14, 3.5)),
                one(FindingKind.END_LOST, 6, made().highlights(246, 2)),
                one(FindingKind.END_HELD, 0.6, made().shadows(3, 0.8)),
                one(FindingKind.END_HELD, 0.6, made().highlights(253, 0.8)),
                one(FindingKind.DARKER_THAN_BLACK, 11, made().shadowsDarkerThanBlack()),
                one(FindingKind.TONE_BACKWARDS, 12, made().toneBackwards()),
                one(FindingKind.TONE_UNKNOWN, 3, made().tone(2, 1.5)),
                one(FindingKind.TONE_FOLLOWS, 0.8, made().tone(0.7, 0.2)),
                one(FindingKind.TONE_OFF, 8, made().tone(3, 0.2)),
                one(FindingKind.TONE_JUMP, 8, made().irregular(Irregularity.Kind.STEP, 2)),
                one(FindingKind.HUE_TURN, 7, made().irregular(Irregularity.Kind.HUE_SWING, 3)),
                one(FindingKind.TONED, 1, made().toned()),
                one(FindingKind.CROSSOVER, 5, made().greys(1, 0.2, true)),
                one(FindingKind.LEAN, 4, made().greys(2, 0.2, false)),
                one(
                        FindingKind.LEAN_OF_TONES,
                        2,
                        made().greysOf(NONE, NONE, leaning(2, "warm, towards yellow"), NONE)),
                one(FindingKind.GREYS_UNKNOWN, 3, made().greys(0.3, 2, false)),
                one(FindingKind.NEUTRAL, 0.7, made().greys(0.1, 0.2, false)),
                one(FindingKind.NO_COLOUR, 3, made().withoutColour()),
                one(FindingKind.DULL, 2, made().dull(20)),
                one(FindingKind.COLOUR_FULL, 5, made().full(60)),
                one(FindingKind.SKIN, 6, made().skin(4)),
                one(FindingKind.UNEVEN, 4, made().uneven(2)),
                one(FindingKind.RANGE_CLIPPED, 3, made().range(null, 5.0, 0.3)),
                one(
                        FindingKind.RANGE_UNKNOWN,
                        0.4,
                        made().trust(Trust.PLAIN_SCAN).range(null, null, 0.3)),
                one(FindingKind.BLACK_UNKNOWN, 0.9, made().range(95.0, 12.0, 5)),
                one(
                        FindingKind.BLACK_UNKNOWN,
                        0.9,
                        made().range(95.0, 12.0, 0.3).limitedByScanner()),
                one(FindingKind.BLACK_GREY, 3.5, made().range(95.0, 17.0, 0.3)),
                one(FindingKind.BLACK_DEEP, 0.9, made().range(95.0, 5.0, 0.3)),
                one(FindingKind.NO_LINES, 0.45, made().looked()),
                one(FindingKind.LINES, 3.5 + 3.4, made().line(0.2, 0.085, print)),
                one(FindingKind.LINES, 9.5, made().line(-0.5, 1, print)),
                one(FindingKind.LINES_UNSURE, (3.5 + 3.4) / 2, made().line(0.2, 0.085, either)),
                one(FindingKind.BANDS, 3.5, made().band(3, print)),
                one(FindingKind.BANDS, 6, made().band(100, print)),
                one(FindingKind.BANDS_UNSURE, 1.75, made().band(3, either)),
                one(FindingKind.GRAIN, 2, made().grain(3)),
                one(FindingKind.GRADIENT_STEP, 2, made().gradientStep()));
    }

    private static Arguments one(FindingKind kind, double weight, MadeFindings made) {
        return Arguments.of(kind, weight, made);
    }

    private static List<FindingKind> kinds(List<Weighed> ranked) {
        return ranked.stream().map(Weighed::kind).toList();
    }

    @ParameterizedTest
    @CsvSource({
        "Toned: warm, TONED",
        "MONOCHROME, TONED",
        "lab_monochrome, TONED",
        "selenium-toned, TONED",
        "'untoned, pigment', LEAN",
        "un-toned, LEAN",
        "not toned, LEAN",
        "halftoned greys, LEAN"
    })
    void aRouteIsTonedWhereItSaysSoInAWord(String route, FindingKind kind) {
        Set<FindingKind> greys = EnumSet.of(FindingKind.TONED, FindingKind.LEAN);
        List<FindingKind> told = kinds(made().route(route).greys(3, 0.2, false).ranked());
        assertEquals(List.of(kind), told.stream().filter(greys::contains).toList());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void everyKindHasItsWeight(FindingKind kind, double weight, MadeFindings made) {
        List<Weighed> found = made.ranked().stream().filter(w -> w.kind() == kind).toList();
        assertEquals(1, found.size(), () -> kinds(made.ranked()).toString());
        assertEquals(weight, found.get(0).weight(), 1e-9);
        Finding words = found.get(0).finding();
        assertTrue(words.text().endsWith("."), words.text());
        assertTrue(!words.sureness().isBlank(), words.text());
    }

    @Test
    void noKindIsLeftOut() {
        Set<FindingKind> seen = EnumSet.noneOf(FindingKind.class);
        cases().forEach(one -> seen.add((FindingKind) one.get()[0]));
        assertEquals(EnumSet.allOf(FindingKind.class), seen);
    }

    /** A sheet that is stretched one way was not fitted to a page. */
    @Test
    void onlyEqualScalesAreBlamedOnFittingToThePage() {
        Finding fitted = sizeOf(made().scaled(0.96));
        assertTrue(fitted.text().contains("printed at 96.0 %"), fitted.text());
        assertTrue(fitted.advice().contains("fit to page"), fitted.advice());
        Finding stretched = sizeOf(made().scaled(1, 1.03));
        assertTrue(stretched.text().contains("one way was stretched"), stretched.text());
        assertFalse(stretched.advice().contains("fit to page"), stretched.advice());
    }

    private static Finding sizeOf(MadeFindings made) {
        return made.ranked().stream()
                .filter(w -> w.kind() == FindingKind.PRINT_SIZE)
                .findFirst()
                .orElseThrow()
                .finding();
    }

    /**
     * A dull matte paper, well printed: its shadows come before its grey black and its dull red.
     */
    @Test
    void aMattePaperLosesShadowsFirst() {
        List<Weighed> ranked =
                made().shadows(16, 5)
                        .highlights(253, 0.8)
                        .tone(0.6, 0.2)
                        .greys(0.1, 0.2, false)
                        .range(95.0, 18.0, 0.3)
                        .dull(25)
                        .ranked();
        assertEquals(
                List.of(
                        FindingKind.END_LOST,
                        FindingKind.BLACK_GREY,
                        FindingKind.DULL,
                        FindingKind.TONE_FOLLOWS,
                        FindingKind.NEUTRAL,
                        FindingKind.END_HELD),
                kinds(ranked));
    }

    /** A missing nozzle shows in every picture, a lean of one unit hardly, grain less. */
    @Test
    void aMissingNozzleComesBeforeALeanAndGrain() {
        List<Weighed> ranked =
                made().line(0.2, 0.085, SurfaceCause.PRINT)
                        .band(2, SurfaceCause.UNDECIDED)
                        .grain(1.8)
                        .greys(1, 0.2, false)
                        .skin(2)
                        .ranked();
        assertEquals(
                List.of(
                        FindingKind.LINES,
                        FindingKind.SKIN,
                        FindingKind.LEAN,
                        FindingKind.BANDS_UNSURE,
                        FindingKind.GRAIN),
                kinds(ranked));
    }

    /** The larger the loss, the earlier it is told. */
    @Test
    void sizeDecides() {
        assertEquals(
                FindingKind.TONE_OFF,
                made().tone(6, 0.2).shadows(12, 3).ranked().get(0).kind(),
                "everything 6 L* too dark");
        assertEquals(
                FindingKind.END_LOST,
                made().tone(1.5, 0.2).shadows(30, 9).ranked().get(0).kind(),
                "levels to 30 gone");
        assertEquals(
                FindingKind.SKIN,
                made().skin(5).range(95.0, 17.0, 0.3).greys(1, 0.2, false).ranked().get(0).kind());
    }

    /** Print lines are told before those that may be the scanner's, however strong these are. */
    @Test
    void sureLinesAreToldInsteadOfUnsureOnes() {
        List<Weighed> ranked =
                made().line(0.6, 0.5, SurfaceCause.UNDECIDED)
                        .line(0.1, 0.085, SurfaceCause.PRINT)
                        .ranked();
        assertEquals(FindingKind.LINES, ranked.get(0).kind());
        Finding told = ranked.get(0).finding();
        assertTrue(told.text().startsWith("A light line runs across the page"), told.text());
        assertTrue(told.sureness().endsWith("1 more may be the scanner's."), told.sureness());
    }

    @Test
    void badNewsComesBeforeGoodNews() {
        Set<FindingKind> good =
                EnumSet.of(
                        FindingKind.BLACK_DEEP,
                        FindingKind.TONE_FOLLOWS,
                        FindingKind.NEUTRAL,
                        FindingKind.END_HELD,
                        FindingKind.NO_LINES);
        for (FindingKind kind : FindingKind.values()) {
            boolean tells = kind != FindingKind.BLACK_UNKNOWN && kind != FindingKind.RANGE_UNKNOWN;
            assertEquals(tells && !good.contains(kind), kind.weight(0) >= 1, kind.name());
        }
    }

    /** A lean that is not sure is no proof that greys are neutral either. */
    @Test
    void greysAreCalledNeutralOnlyWhereTheyWereReadSo() {
        assertEquals("Greys are neutral on this paper.", textOfGreys(0.3));
        assertEquals(
                "Any lean of the greys as a whole is too small to be sure of.", textOfGreys(1));
    }

    private static String textOfGreys(double lean) {
        return greys(made().greys(lean, 1.3, false), FindingKind.NEUTRAL).text();
    }

    private static Finding greys(MadeFindings made, FindingKind kind) {
        return made.ranked().stream()
                .filter(w -> w.kind() == kind)
                .map(Weighed::finding)
                .findFirst()
                .orElseThrow();
    }

    /** Greys that lean in some tones alone are not neutral, whatever their mean. */
    @Test
    void aLeanOfSomeTonesIsTold() {
        Neutrality.Cast warm = leaning(1.9, "slightly warm, towards yellow");
        Neutrality.Cast green = leaning(-1.8, "slightly green");
        Finding one = greys(made().greysOf(NONE, NONE, warm, NONE), FindingKind.LEAN_OF_TONES);
        assertEquals("Greys lean slightly warm, towards yellow, in mid-tones.", one.text());
        assertEquals(
                "Mean lean in mid-tones a* +0.0 (± 1.2), b* +1.9 (± 1.3), of all greys a* +0.0"
                        + " (± 1.3), b* +1.2 (± 1.3), against the paper's own tint fading to black.",
                one.sureness());
        assertEquals("To offset it, move mid-tones alone in the file by b* -1.9.", one.advice());
        assertEquals(
                "Greys lean slightly warm, towards yellow, in shadows and mid-tones.",
                greys(made().greysOf(NONE, warm, warm, NONE), FindingKind.LEAN_OF_TONES).text());
        assertEquals(
                "Greys lean slightly warm, towards yellow, in mid-tones; slightly green in"
                        + " highlights.",
                greys(made().greysOf(NONE, NONE, warm, green), FindingKind.LEAN_OF_TONES).text());
        // One of six questions may exceed its own interval by chance.
        Neutrality.Cast chance = leaning(1.5, "slightly warm, towards yellow");
        greys(made().greysOf(NONE, NONE, chance, NONE), FindingKind.NEUTRAL);
        // Where all greys lean, that is told.
        Neutrality.Cast all = leaning(1.6, "slightly warm, towards yellow");
        assertEquals(
                "Greys lean slightly warm, towards yellow.",
                greys(made().greysOf(all, NONE, warm, NONE), FindingKind.LEAN).text());
        // A lean without a name is none.
        Neutrality.Cast small = new Neutrality.Cast(0, 0.4, 0.1, 0.1, true, "no cast");
        Neutrality.Cast none = new Neutrality.Cast(0, 0.2, 0.3, 0.3, false, "no cast");
        assertEquals(
                "Greys are neutral on this paper.",
                greys(made().greysOf(none, none, small, none), FindingKind.NEUTRAL).text());
    }

    @Test
    void theHeaviestSevenAreToldInOrder() {
        MadeFindings all =
                made().scaled(0.96)
                        .shadows(14, 3.5)
                        .highlights(246, 2)
                        .tone(3, 0.2)
                        .greys(2, 0.2, false)
                        .skin(4)
                        .uneven(2)
                        .range(95.0, 17.0, 0.3)
                        .line(0.2, 0.085, SurfaceCause.PRINT)
                        .band(3, SurfaceCause.PRINT)
                        .grain(3)
                        .gradientStep();
        List<Weighed> ranked = all.ranked();
        assertEquals(12, ranked.size());
        List<Double> weights = new ArrayList<>(ranked.stream().map(Weighed::weight).toList());
        List<Double> sorted = weights.stream().sorted((a, b) -> Double.compare(b, a)).toList();
        assertEquals(sorted, weights);
        assertEquals(ranked.subList(0, 7).stream().map(Weighed::finding).toList(), all.told());
    }
}
