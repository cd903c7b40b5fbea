package org.printassay.demo.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Xyz;

class PaperModelTest {
    private static final Lab WHITE = new Lab(95.5, 0.8, 4.5);
    private static final Lab BLACK = new Lab(17, 0.5, 1.5);
    private static final PaperModel PAPER = PaperModel.faultless("simulated", WHITE, BLACK);

    /** Rounding of double arithmetic through cubes and roots. */
    private static final double EXACT = 1e-9;

    @Test
    void whiteAndBlackAreAsDescribed() {
        assertLab(WHITE, PAPER.colourOf(Rgb8.grey(255)), 1e-4);
        assertLab(BLACK, PAPER.colourOf(Rgb8.grey(0)), EXACT);
    }

    /**
     * ISO 18619:2015: Y of the destination = (1 - black) Y of the source + black, on media-relative
     * values with neutral black points; here with numbers worked by hand from IEC 61966-2-1.
     */
    @Test
    void greysFollowBlackPointCompensation() {
        // sRGB level 128: ((128 / 255 + 0.055) / 1.055) ^ 2.4 = 0.2158605
        double source = 0.2158605;
        double paper = Math.pow((95.5 + 16) / 116, 3);
        double black = Math.pow((17 + 16.0) / 116, 3) / paper;
        double printed = paper * ((1 - black) * source + black);
        double expected = 116 * Math.cbrt(printed) - 16;
        assertEquals(expected, PAPER.colourOf(Rgb8.grey(128)).l(), 1e-4);
    }

    @Test
    void neutralBaseGreysCarryThePaperTint() {
        PaperModel plain = PaperModel.faultless("simulated", WHITE, new Lab(17, 0, 0));
        Xyz grey = plain.colourOf(Rgb8.grey(200)).toXyz(Xyz.PCS_WHITE);
        Xyz paper = WHITE.toXyz(Xyz.PCS_WHITE);
        assertEquals(paper.x() / paper.y(), grey.x() / grey.y(), 0.005);
        assertEquals(paper.z() / paper.y(), grey.z() / grey.y(), 0.005);
    }

    @Test
    void blockedLevelsPrintExactlyAsBlack() {
        PaperModel blocked = PAPER.withTone(Tone.AIM.withBlocked(11, 6, false));
        double[] above = blocked.aboveBlack();
        for (int level = 0; level <= 11; level++) {
            assertEquals(0, above[level], EXACT, "level " + level);
        }
        assertTrue(above[12] > 0.1, "sharp knee rises at once");
        double[] aim = PAPER.aboveBlack();
        for (int level = 17; level < 256; level++) {
            assertEquals(aim[level], above[level], EXACT, "level " + level);
        }
        double[] soft = PAPER.withTone(Tone.AIM.withBlocked(11, 6, true)).aboveBlack();
        assertTrue(soft[12] < above[12] / 2, "soft knee rises late");
        for (int level = 1; level < 256; level++) {
            assertTrue(soft[level] >= soft[level - 1] - EXACT, "monotonic at " + level);
        }
    }

    @Test
    void mergedLevelsPrintExactlyAsPaper() {
        PaperModel merged = PAPER.withTone(Tone.AIM.withMerged(249, 5, false));
        for (int level = 249; level < 256; level++) {
            assertLab(WHITE, merged.colourOf(Rgb8.grey(level)), 1e-4);
        }
        assertTrue(merged.colourOf(Rgb8.grey(248)).l() < WHITE.l() - 0.3);
        assertLab(PAPER.colourOf(Rgb8.grey(244)), merged.colourOf(Rgb8.grey(244)), EXACT);
    }

    @Test
    void castStandsInTheMiddleAndNotAtTheEnds() {
        PaperModel green = PAPER.withCast(new Cast(0, 0, -4, 1, 0, 0));
        assertLab(PAPER.colourOf(Rgb8.grey(0)), green.colourOf(Rgb8.grey(0)), EXACT);
        assertLab(PAPER.colourOf(Rgb8.grey(255)), green.colourOf(Rgb8.grey(255)), EXACT);
        double shift = green.colourOf(Rgb8.grey(119)).a() - PAPER.colourOf(Rgb8.grey(119)).a();
        assertTrue(shift < -2 && shift >= -4, "da* " + shift);
    }

    @Test
    void chromaFactorsLeaveGreysAlone() {
        PaperModel dull = PAPER.withChromaByHue(List.of(0.8, 0.8, 0.8, 0.8, 0.8, 0.8));
        assertLab(PAPER.colourOf(Rgb8.grey(90)), dull.colourOf(Rgb8.grey(90)), 1e-4);
        Rgb8 red = new Rgb8(220, 40, 40);
        assertTrue(dull.colourOf(red).chroma() < 0.9 * PAPER.colourOf(red).chroma());
    }

    private static void assertLab(Lab expected, Lab actual, double tolerance) {
        assertEquals(expected.l(), actual.l(), tolerance, "L*");
        // Rounded space matrices leave greys neutral to about 1e-4 in a* and b*.
        assertEquals(expected.a(), actual.a(), Math.max(tolerance, 1e-3), "a*");
        assertEquals(expected.b(), actual.b(), Math.max(tolerance, 1e-3), "b*");
    }
}
