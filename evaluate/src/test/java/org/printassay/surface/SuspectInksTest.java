package org.printassay.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;

/** Inks told by tints, and by the colour of the line in simulated tints. */
class SuspectInksTest {
    private static final Rgb8 GREY = Rgb8.grey(80);
    private static final Rgb8 DARK_GREY = Rgb8.grey(32);
    private static final Rgb8 CYAN = new Rgb8(0, 160, 226);
    private static final Rgb8 MAGENTA = new Rgb8(226, 20, 128);
    private static final Rgb8 YELLOW = new Rgb8(255, 236, 20);
    private static final Rgb8 RED = new Rgb8(218, 40, 34);

    private static final double LINE_MM = 15;
    private static final double WIDTH_MM = 0.08;

    /** A line of a contrast in red, green and blue, in a tint with noise. */
    private static LineColour colour(Rgb8 tint, double... contrasts) {
        int bins = (int) (30 / MadeTint.STEP_MM);
        Random random = new Random(tint.hashCode());
        float[][][] light = new float[MadeTint.STRIPS][3][bins];
        for (float[][] strip : light) {
            for (int i = 0; i < bins; i++) {
                double away = (i + 0.5) * MadeTint.STEP_MM - LINE_MM - 0.05;
                double shape = LineFilter.shape(away, WIDTH_MM, MadeTint.SIGMA_MM);
                double grain = 0.01 * random.nextGaussian();
                for (int c = 0; c < 3; c++) {
                    strip[c][i] = (float) (0.1 * (1 + c) * (1 + grain + contrasts[c] * shape));
                }
            }
        }
        TintTrace trace =
                new TintTrace(
                        "T", tint, Along.Y, MadeTint.STEP_MM / 2, MadeTint.STEP_MM, 20, 50, light);
        FoundLine line =
                new FoundLine(
                        Along.Y, LINE_MM, WIDTH_MM, 0.5, 20, List.of("T"), List.of(), false, 50.0);
        List<LineColour> colours = LineColour.of(List.of(trace), MadeTint.SIGMA_MM, line);
        assertEquals(1, colours.size());
        for (int c = 0; c < 3; c++) {
            assertEquals(
                    contrasts[c],
                    colours.get(0).contrasts().get(c),
                    0.05 + 0.1 * Math.abs(contrasts[c]));
        }
        return colours.get(0);
    }

    /** Red holds no cyan: that it lacks a line of dark grey acquits magenta and yellow alone. */
    @Test
    void greysAloneAreBlackOnlyWhereCyanMagentaAndYellowLackTheLine() {
        assertEquals(List.of(), SuspectInks.of(List.of(DARK_GREY), List.of(RED)));
        assertEquals(List.of(), SuspectInks.of(List.of(GREY), List.of(YELLOW)));
        assertEquals(List.of("black"), SuspectInks.of(List.of(GREY), List.of(RED, CYAN)));
    }

    @Test
    void aGreyTellsByColour() {
        List<LineColour> cyan = List.of(colour(DARK_GREY, 1.2, 0.3, 0.1));
        assertEquals(List.of("cyan"), SuspectInks.of(List.of(DARK_GREY), List.of(RED), cyan));
        List<LineColour> magenta = List.of(colour(GREY, 0.05, 0.6, 0.2));
        assertEquals(List.of("magenta"), SuspectInks.of(List.of(GREY), List.of(YELLOW), magenta));
        List<LineColour> black = List.of(colour(GREY, 0.6, 0.6, 0.5));
        assertEquals(List.of("black"), SuspectInks.of(List.of(GREY), List.of(YELLOW), black));
        List<LineColour> doubled = List.of(colour(GREY, -0.05, -0.5, -0.2));
        assertEquals(List.of("magenta"), SuspectInks.of(List.of(GREY), List.of(), doubled));
    }

    /** Cyan that is mixed with some magenta shows a magenta line faintly. */
    @Test
    void colourTellsWhichOfTheInksThatTintsLeave() {
        List<Rgb8> shows = List.of(GREY, CYAN, MAGENTA, RED);
        List<Rgb8> lacks = List.of(YELLOW);
        assertEquals(List.of("cyan", "magenta"), SuspectInks.of(shows, lacks));
        List<LineColour> colours =
                List.of(colour(GREY, 0.1, 1.4, 0.4), colour(MAGENTA, 0.02, 3, 0.4));
        assertEquals(List.of("magenta"), SuspectInks.of(shows, lacks, colours));
        // Tints of one ink alone show its colour whatever is missing.
        List<LineColour> all = List.of(colour(MAGENTA, 0.02, 3, 0.4), colour(GREY, 1, 1, 0.9));
        assertEquals(List.of("cyan", "magenta"), SuspectInks.of(shows, lacks, all));
    }

    /** What disagrees is not told. */
    @ParameterizedTest
    @CsvSource({"1.2, 0.1, 0.1", "0.1, 0.1, 1.2"})
    void anInkThatATintLacksIsNotNamedByColour(double red, double green, double blue) {
        List<LineColour> colours = new ArrayList<>();
        colours.add(colour(GREY, red, green, blue));
        List<Rgb8> lacks = List.of(CYAN, YELLOW);
        assertEquals(List.of(), SuspectInks.of(List.of(GREY, MAGENTA), lacks, colours));
    }

    @Test
    void weakOrMixedColoursTellNothing() {
        List<LineColour> mixed = List.of(colour(GREY, 0.1, 0.6, 0.4));
        assertEquals(List.of(), SuspectInks.of(List.of(GREY), List.of(YELLOW), mixed));
        List<LineColour> weak = List.of(colour(GREY, 0.001, 0.008, 0.001));
        assertEquals(List.of(), SuspectInks.of(List.of(GREY), List.of(YELLOW), weak));
    }
}
