package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.ContrastDoubt;
import org.printassay.reading.MadeReadings;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.Trust;

/**
 * Level results against known truth, on simulated readings: sharp and soft knees, blocked levels 0
 * to 20, spreads of 0.05 to 0.3 L*. The truth is the paper's curve, never the noisy patches.
 */
class WedgeJudgeTest {
    private static final double WHITE = 96;
    private static final double T = 0.5;

    /** Standard deviation of noise of which one in twenty is three times as large. */
    private static final double HEAVIER = Math.sqrt(0.95 + 0.05 * 9);

    /** Blacks of the paper sheet outside its wedge: ramp, cube and the large one. */
    private static final int MORE_ANCHORS = 5;

    /**
     * A simulated paper: where tone leaves black (or reaches paper), how softly, and the spread.
     */
    private record Paper(double white, double black, int blocked, double softness, double spread) {
        /** True L* of a level: codes up to blocked give black, then the aim catches up. */
        double l(int level) {
            double effective = level;
            if (blocked > 0) {
                double x = level - blocked;
                double rise = softness == 0 ? Math.max(0, x) : softplus(x, softness);
                double join = Math.min(1, Math.max(0, (level - blocked) / 60.0));
                effective = level == 0 ? 0 : rise * (1 - join) + level * join;
            }
            return aim(effective);
        }

        private static double softplus(double x, double width) {
            return width * Math.log1p(Math.exp(x / width));
        }

        private double aim(double level) {
            double y = RgbSpace.SRGB.decode(Math.min(255, Math.max(0, level)) / 255);
            double low = Lab.luminanceFactor(black);
            double high = Lab.luminanceFactor(white);
            return Lab.lightness(low + y * (high - low));
        }

        /** The mirror: highlights merge into paper as shadows block into black. */
        double mirrored(int level) {
            return white + black - l(255 - level);
        }
    }

    private static List<Paper> papers() {
        List<Paper> papers = new ArrayList<>();
        double[] spreads = {0.05, 0.1, 0.15, 0.2, 0.3};
        int[] blocked = {0, 3, 6, 9, 12, 14, 16, 18, 20, 11};
        for (int i = 0; i < 20; i++) {
            papers.add(
                    new Paper(
                            WHITE,
                            3 + (i % 5) * 3.5,
                            blocked[i % blocked.length],
                            i < 10 ? 0 : 1 + (i % 3) * 1.5,
                            spreads[i % spreads.length]));
        }
        return papers;
    }

    private static List<Integer> shadowLevels() {
        List<Integer> levels = new ArrayList<>();
        for (int level = 0; level <= 48; level += level < 24 ? 1 : 2) {
            levels.add(level);
        }
        return levels;
    }

    private static void add(List<Reading> readings, int level, double l) {
        readings.add(MadeReadings.neutral("p" + readings.size(), level, l));
    }

    private static Neutrals readings(
            Paper paper, boolean highlights, int copies, DoubleSupplier noise) {
        List<Reading> readings = new ArrayList<>();
        for (int level : shadowLevels()) {
            for (int copy = 0; copy < copies; copy++) {
                int printed = highlights ? 255 - level : level;
                double l = highlights ? paper.mirrored(printed) : paper.l(printed);
                add(readings, printed, l + noise.getAsDouble());
            }
        }
        for (int copy = 0; copies > 1 && copy < MORE_ANCHORS; copy++) {
            double anchor = highlights ? paper.white : paper.black;
            add(readings, highlights ? 255 : 0, anchor + noise.getAsDouble());
        }
        for (int copy = 0; copy < copies; copy++) {
            add(readings, highlights ? 0 : 255, highlights ? paper.black : paper.white);
        }
        return Neutrals.of(new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true));
    }

    private static Wedge judge(Paper paper, Neutrals neutrals, boolean highlights) {
        PaperAim aim =
                PaperAim.relativeColorimetric(
                        new Lab(paper.white, 0, 0), new Lab(paper.black, 0, 0));
        Optional<Wedge> wedge =
                highlights
                        ? WedgeJudge.highlights(
                                neutrals, T, l -> aim.absoluteLab(RgbSpace.SRGB, Rgb8.grey(l)).l())
                        : WedgeJudge.shadows(
                                neutrals, T, l -> aim.absoluteLab(RgbSpace.SRGB, Rgb8.grey(l)).l());
        return wedge.orElseThrow();
    }

    /** F of the shadows: the first tested level from which all differ by T from black. */
    private static int truth(Paper paper) {
        int first = 0;
        for (int level : shadowLevels()) {
            if (paper.l(level) - paper.l(0) < T) {
                first = level + 1;
            }
        }
        for (int level : shadowLevels()) {
            if (level >= first) {
                return level;
            }
        }
        return 49;
    }

    private static boolean holds(Wedge wedge, int f, boolean highlights) {
        Integer merged = wedge.merged();
        Integer separated = wedge.separated();
        if (highlights) {
            int v = 255 - f;
            return (separated == null || separated <= v) && (merged == null || v < merged);
        }
        return (merged == null || merged < f) && (separated == null || f <= separated);
    }

    /**
     * An edit that makes differences at one end larger or smaller, as curves do near black and
     * S-shaped ones below paper; simulated readings.
     */
    @ParameterizedTest
    @CsvSource({"false, 2.4, 15", "false, 0.3, 15", "true, 1.4, 16", "true, 0.2, 15"})
    void levelsOfAnEditedScanHoldTheTruthOnlyWithTheDoubt(
            boolean highlights, double factor, int mostByChance) {
        int plain = 0;
        int doubted = 0;
        int told = 0;
        Random random = new Random(4);
        for (Paper paper : papers()) {
            DoubleSupplier noise = () -> paper.spread / factor * random.nextGaussian();
            double end = highlights ? paper.white : paper.black;
            int other = highlights ? 0 : 255;
            List<Reading> readings = new ArrayList<>();
            for (Reading one : readings(paper, highlights, 4, noise).set().readings()) {
                double l = one.best().l();
                int level = one.rgb().r();
                add(readings, level, level == other ? l : end + factor * (l - end));
            }
            ReadingSet set = new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true);
            int f = truth(paper);
            plain += holds(judge(paper, Neutrals.of(set), highlights), f, highlights) ? 1 : 0;
            Neutrals edited = Neutrals.of(set.withContrast(ContrastDoubt.EDITED));
            Wedge wedge = judge(paper, edited, highlights);
            doubted += holds(wedge, f, highlights) ? 1 : 0;
            // Levels that are withheld would hold any truth. Below paper only what is apart is
            // told.
            boolean merged = highlights || wedge.merged() != null || f <= 1;
            told += wedge.separated() != null && merged ? 1 : 0;
        }
        assertTrue(plain <= mostByChance, plain + " of 20 hold it by chance");
        assertTrue(doubted >= 19, doubted + " of 20");
        assertTrue(told >= 19, told + " of 20 told");
    }

    private void proveCoverageAndWidth(boolean highlights, int seeds, boolean heavyTails) {
        // One stream: neighbouring seeds of this generator begin with correlated draws.
        Random random = new Random(11);
        int inside = 0;
        int all = 0;
        for (Paper paper : papers()) {
            List<Integer> widths = new ArrayList<>();
            int f = truth(paper);
            for (int seed = 0; seed < seeds; seed++) {
                DoubleSupplier noise =
                        () -> {
                            double scale = heavyTails && random.nextInt(20) == 0 ? 3 : 1;
                            return scale * paper.spread * random.nextGaussian();
                        };
                Wedge wedge = judge(paper, readings(paper, highlights, 4, noise), highlights);
                inside += holds(wedge, f, highlights) ? 1 : 0;
                all++;
                Wedge.Interval interval = wedge.interval();
                widths.add(interval == null ? 99 : interval.high() - interval.low() + 1);
            }
            widths.sort(null);
            double slope = slopeAtThreshold(paper, f);
            double spread = heavyTails ? HEAVIER * paper.spread : paper.spread;
            double allowed = Math.max(3, 2 + 4 * (spread / 2) / slope);
            int median = widths.get(widths.size() / 2);
            assertTrue(
                    median <= allowed,
                    () -> paper + ": median width " + median + ", allowed " + allowed);
        }
        double share = (double) inside / all;
        assertTrue(share >= 0.95, "truth inside in " + share);
    }

    private static double slopeAtThreshold(Paper paper, int f) {
        int low = Math.max(0, f - 2);
        return (paper.l(f + 2) - paper.l(low)) / (f + 2 - low);
    }

    /** Rare gaps in a solid, taken for dust in most twins of a level, would read as plain black. */
    @Test
    void levelsOfWhichMostTwinsSeemDustyAreNotCalledMerged() {
        Paper paper = new Paper(WHITE, 8, 0, 0, 0.1);
        int f = truth(paper);
        Random random = new Random(3);
        List<Reading> readings = new ArrayList<>();
        for (Reading reading :
                readings(paper, false, 4, () -> 0.1 * random.nextGaussian()).set().readings()) {
            int level = reading.rgb().r();
            boolean lost = level > 0 && level < 12 && readings.size() % 4 != 0;
            Lab seen = lost ? new Lab(8 + 0.03 * random.nextGaussian(), 0, 0) : reading.best();
            readings.add(
                    new Reading(
                            reading.id(),
                            reading.section(),
                            reading.rgb(),
                            seen,
                            seen,
                            null,
                            null,
                            lost ? Set.of(ReadingFlag.DUSTY) : Set.of(),
                            null,
                            1));
        }
        Wedge wedge =
                judge(
                        paper,
                        Neutrals.of(
                                new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true)),
                        false);
        assertTrue(holds(wedge, f, false), f + " " + wedge.merged() + " " + wedge.separated());
        assertEquals(12, wedge.separated());
    }

    @Test
    void shadowIntervalsHoldTheTruthAndAreNarrow() {
        proveCoverageAndWidth(false, 40, false);
    }

    @Test
    void highlightIntervalsHoldTheTruthAndAreNarrow() {
        proveCoverageAndWidth(true, 40, false);
    }

    @Test
    void heavyTailsDoNotBreakTheCoverage() {
        proveCoverageAndWidth(false, 40, true);
    }

    /**
     * Shadows of a matte print may scatter ten times as much as the light levels, of which a sheet
     * has more: none of their twins is an outlier for that. Blacks would else be left out most of
     * all, and levels found lighter than black that are not.
     */
    @Test
    void shadowsThatScatterMoreThanTheRestKeepTheirTwins() {
        Random random = new Random(5);
        int inside = 0;
        int all = 0;
        for (Paper paper : papers()) {
            for (int seed = 0; seed < 20; seed++) {
                double spread = 0.2 + paper.spread;
                List<Reading> readings =
                        new ArrayList<>(
                                readings(paper, false, 4, () -> spread * random.nextGaussian())
                                        .set()
                                        .readings());
                for (int level = 52; level < 255; level += 4) {
                    for (int copy = 0; copy < 4; copy++) {
                        add(readings, level, level / 2.7 + 0.02 * random.nextGaussian());
                    }
                }
                Neutrals neutrals =
                        Neutrals.of(
                                new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true));
                LevelData black = neutrals.level(0).orElseThrow();
                assertTrue(black.count() >= 8, paper + " keeps " + black.count() + " blacks");
                inside += holds(judge(paper, neutrals, false), truth(paper), false) ? 1 : 0;
                all++;
            }
        }
        assertTrue(inside >= 0.95 * all, inside + " of " + all);
    }

    /** Bounds that neighbours lend leave the best estimate between them, noise or not. */
    @Test
    void bestEstimatesKeepToTheirIntervals() {
        Random random = new Random(6);
        for (Paper paper : papers()) {
            for (int seed = 0; seed < 20; seed++) {
                Neutrals neutrals =
                        readings(paper, false, 4, () -> paper.spread * random.nextGaussian());
                double last = 0;
                Wedge wedge = judge(paper, neutrals, false);
                for (LevelStep step : wedge.steps()) {
                    assertTrue(
                            step.low() <= step.difference() && step.difference() <= step.high(),
                            step.toString());
                    last = step.difference();
                }
                assertTrue(last > T, "the lightest is lighter than black");
            }
        }
    }

    /** On an ideal print (sRGB, perfect black) the first separated level is 2 at 0.5 L*. */
    @Test
    void anIdealPrintSeparatesFromLevelTwo() {
        Paper ideal = new Paper(100, 0, 0, 0, 0);
        assertEquals(2, truth(ideal));
        Wedge wedge = judge(ideal, readings(ideal, false, 4, () -> 0), false);
        assertEquals(2, wedge.separated());
        assertEquals(1, wedge.merged());
        assertEquals(2, wedge.best());
    }

    @Test
    void measuredOnceGivesPointsWithoutAnInterval() {
        Paper paper = new Paper(WHITE, 5, 10, 0, 0);
        Wedge wedge = judge(paper, readings(paper, false, 1, () -> 0), false);
        assertNull(wedge.interval());
        assertEquals(truth(paper), wedge.best());
    }

    @Test
    void aReversalIsNamedAndNotAveragedAway() {
        List<Reading> readings = new ArrayList<>();
        Random random = new Random(3);
        for (int level : shadowLevels()) {
            for (int copy = 0; copy < 4; copy++) {
                double l = 5 + 0.3 * level - (level >= 12 && level <= 14 ? 2 : 0);
                add(readings, level, l + 0.05 * random.nextGaussian());
            }
        }
        add(readings, 255, WHITE);
        Neutrals neutrals =
                Neutrals.of(new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true));
        Wedge wedge = WedgeJudge.shadows(neutrals, T, level -> 0.3 * level).orElseThrow();
        assertEquals(List.of(12), wedge.reversalLevels());
    }

    /**
     * Tone that turns back gently, with no single large step: neighbours lend no strength there, so
     * the levels before the dip must not make those in it look separated.
     */
    @Test
    void gentleReversalsDoNotBreakTheCoverage() {
        // One stream: neighbouring seeds of this generator begin with correlated draws.
        Random random = new Random(7);
        int[] all = {0};
        int[] inside = {0};
        for (double spread : new double[] {0.05, 0.1, 0.15, 0.2, 0.3}) {
            for (double dip : new double[] {0.2, 0.35, 0.6}) {
                for (int seed = 0; seed < 200; seed++) {
                    List<Reading> readings = new ArrayList<>();
                    int first = 0;
                    for (int level : shadowLevels()) {
                        double d = dipping(level, dip);
                        first = d < T ? level + 1 : first;
                        for (int copy = 0; copy < (level == 0 ? 9 : 4); copy++) {
                            add(readings, level, 6 + d + spread * random.nextGaussian());
                        }
                    }
                    add(readings, 255, WHITE);
                    Neutrals neutrals =
                            Neutrals.of(
                                    new ReadingSet(
                                            readings, RgbSpace.SRGB, Trust.INSTRUMENT, true));
                    Wedge wedge =
                            WedgeJudge.shadows(neutrals, T, level -> 0.2 * level).orElseThrow();
                    all[0]++;
                    inside[0] +=
                            holds(wedge, first % 2 == 1 && first > 24 ? first + 1 : first, false)
                                    ? 1
                                    : 0;
                }
            }
        }
        double share = (double) inside[0] / all[0];
        assertTrue(share >= 0.95, "truth inside in " + share);
    }

    /** Rises to 0.8, falls back by the dip over eight levels, then rises for good. */
    private static double dipping(int level, double dip) {
        double top = 0.8;
        if (level <= 8) {
            return top * level / 8;
        }
        if (level <= 16) {
            return top - dip * (level - 8) / 8.0;
        }
        return top - dip + 0.2 * (level - 16);
    }

    /**
     * A large black amid paper, whose level is read lighter by stray light: where that is stated as
     * an error, of what was estimated or was not, the levels beside it are not darker for that.
     */
    @Test
    void whatMovesLevelsTogetherIsAllowedFor() {
        Wedge alone = judgeWithStrayLight(List.of());
        assertEquals(Verdict.MERGED, alone.steps().get(1).verdict());
        assertTrue(alone.steps().get(1).high() < 0, "darker than black");
        assertEquals(List.of(9), alone.reversalLevels());
        for (boolean assumed : new boolean[] {false, true}) {
            Wedge wedge = judgeWithStrayLight(List.of(assumed));
            for (LevelStep step : wedge.steps().subList(1, 5)) {
                double truth = 0.2 * step.level();
                assertTrue(step.low() < truth && truth < step.high(), "level " + step.level());
            }
            assertEquals(List.of(), wedge.reversalLevels());
            assertEquals(Verdict.SEPARATED, wedge.steps().get(10).verdict());
        }
    }

    private static Wedge judgeWithStrayLight(List<Boolean> stated) {
        List<Reading> readings = new ArrayList<>();
        List<Lab> shifts = new ArrayList<>();
        Random random = new Random(4);
        for (int level = 0; level <= 48; level += 3) {
            double stray = level == 0 ? 1.2 : level == 6 ? 1.5 : 0;
            for (int copy = 0; copy < 4; copy++) {
                add(readings, level, 6 + 0.2 * level + stray + 0.05 * random.nextGaussian());
                shifts.add(new Lab(0.8 * stray, 0, 0));
            }
        }
        add(readings, 255, WHITE);
        shifts.add(new Lab(0, 0, 0));
        Neutrals neutrals =
                Neutrals.of(
                        new ReadingSet(
                                readings,
                                RgbSpace.SRGB,
                                Trust.PROFILED_SCAN,
                                true,
                                stated.stream()
                                        .map(assumed -> new SharedError(shifts, assumed))
                                        .toList()));
        return WedgeJudge.shadows(neutrals, T, level -> 0.2 * level).orElseThrow();
    }

    /** Two whites and two blacks that happen to agree say nothing about the levels between. */
    @Test
    void aFewTwinsAreNoRepeatability() {
        Paper paper = new Paper(WHITE, 5, 10, 0, 0.2);
        Random random = new Random(5);
        List<Reading> readings = new ArrayList<>();
        for (int level : shadowLevels()) {
            add(readings, level, paper.l(level) + paper.spread * random.nextGaussian());
        }
        for (int copy = 0; copy < 3; copy++) {
            add(readings, 255, WHITE);
        }
        Neutrals neutrals =
                Neutrals.of(new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true));
        assertNull(judge(paper, neutrals, false).interval());
    }
}
