package org.printassay.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.printassay.colour.Rgb8;

/**
 * Streaks against print lines where bare paper is clipped; simulated tints, 8 mm from each other.
 */
class StreakJudgeTest {
    private static final double AT_MM = 60;
    private static final double BLUR = MadeTint.SIGMA_MM;
    private static final double[] LIGHTNESS = {35, 45, 55, 65, 75, 60, 50};

    /** What the line is: of which tints, and turned by how much against the page. */
    private static List<TintTrace> tints(double contrast, double degrees, boolean... shows) {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < LIGHTNESS.length; k++) {
            MadeTint made = new MadeTint(300 + k, 120, LIGHTNESS[k], 1, 0.05).withDust(20);
            double at = column(degrees, AT_MM, 40, across(k));
            if (shows.length == 0 || shows[k]) {
                made.with(new MadeTint.Line(at, 0.1, contrast));
            }
            tints.add(made.trace("T" + k, Rgb8.grey(80 + 20 * k), Along.X, across(k)));
        }
        return tints;
    }

    private static double across(int tint) {
        return 40 + 8 * (tint - 3);
    }

    private static double column(double degrees, double at, double across, double other) {
        return at + Math.tan(Math.toRadians(degrees)) * (other - across);
    }

    /**
     * What is told of the clearest line.
     *
     * @param turned how the sheet lies, degrees; a column of the scan runs so over the page
     */
    private static Optional<Boolean> told(List<TintTrace> tints, double turned) {
        FoundLine line =
                LineDetector.find(tints, BLUR).stream()
                        .max((a, b) -> Double.compare(a.z(), b.z()))
                        .orElseThrow();
        return StreakJudge.isStreak(
                tints,
                BLUR,
                line,
                (position, across, other) -> column(turned, position, across, other));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, -0.7, 1.5, -3})
    void aLineThatFollowsTheScanIsAStreak(double turned) {
        assertEquals(Optional.of(true), told(tints(0.15, turned), turned));
        assertEquals(Optional.of(true), told(tints(-0.15, turned), turned));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, -0.7, 1.5, -3})
    void aLineThatFollowsThePageIsThePrints(double turned) {
        assertEquals(Optional.of(false), told(tints(0.15, 0), turned));
        assertEquals(Optional.of(false), told(tints(-0.15, 0), turned));
    }

    /** Straight sheets show both alike, as long as every tint has the line. */
    @Test
    void onAStraightSheetNothingIsToldOfALineInAllTints() {
        assertEquals(Optional.empty(), told(tints(0.15, 0), 0));
        assertEquals(Optional.empty(), told(tints(0.15, 0), 0.02));
    }

    @Test
    void aLineThatSomeTintsLackIsThePrints() {
        boolean[] some = {false, true, false, false, true, true, false};
        assertEquals(Optional.of(false), told(tints(0.15, 0, some), 0));
    }

    /** Light that a scanner adds is lost in light tints; that they lack it accuses no print. */
    @Test
    void addedLightMayBeMissedInLightTints() {
        List<TintTrace> tints = new ArrayList<>();
        double[] lightness = {20, 92, 93, 94};
        for (int k = 0; k < lightness.length; k++) {
            MadeTint made = new MadeTint(900 + k, 120, lightness[k], 1, 0.05);
            double contrast = k == 0 ? 0.2 : 0.2 * 0.03 / 0.82;
            made.with(new MadeTint.Line(AT_MM, 0.1, contrast));
            tints.add(made.trace("T" + k, Rgb8.grey(40 + 60 * k), Along.X, across(k)));
        }
        assertEquals(Optional.empty(), told(tints, 0));
    }

    /** Clipped paper has no room for light lines and may hide dark ones. */
    @Test
    void clippedPaperTellsNothing() {
        TintTrace paper = new MadeTint(5, 120, 100, 0, 0.05).trace("P", Rgb8.grey(255), Along.X);
        FoundLine light = LineDetector.find(tints(0.15, 0), BLUR).get(0);
        FoundLine dark = LineDetector.find(tints(-0.15, 0), BLUR).get(0);
        assertEquals(Optional.of(false), runsThrough(paper.within(1.5, 1.5, 1.5), light));
        assertEquals(Optional.empty(), runsThrough(paper.within(1, 1, 1), light));
        assertEquals(Optional.empty(), runsThrough(paper.within(1, 1, 1), dark));
        assertTrue(paper.within(1, 1, 1).clipped());
        assertFalse(paper.within(1, 1, 1.2).clipped());
    }

    private static Optional<Boolean> runsThrough(TintTrace paper, FoundLine line) {
        return LineDetector.runsThrough(paper, BLUR, line, line.positionMm(), 0.4);
    }

    /**
     * A streak is looked for on the paper at its place, as strong as it is elsewhere: one much
     * fainter, or a blip of the paper's noise, is another.
     */
    @Test
    void paperIsAskedForAStreakAsStrong() {
        double faint = 0.06;
        for (int seed = 0; seed < 20; seed++) {
            FoundLine line = LineDetector.find(tints(-faint, 0), BLUR).get(0);
            FoundLine strong = LineDetector.find(tints(-0.3, 0), BLUR).get(0);
            TintTrace paper = paper(seed, -faint);
            assertEquals(Optional.of(true), runsThrough(paper, line), "seed " + seed);
            assertEquals(Optional.of(false), runsThrough(paper, strong), "seed " + seed);
            assertEquals(Optional.of(false), runsThrough(paper(seed, 0), strong), "seed " + seed);
        }
    }

    private static TintTrace paper(int seed, double contrast) {
        MadeTint made = new MadeTint(50 + seed, 120, 100, 0.5, 0.05);
        made.with(new MadeTint.Line(AT_MM, 0.1, contrast));
        return made.trace("P", Rgb8.grey(255), Along.X).within(1.5, 1.5, 1.5);
    }
}
