package org.printassay.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.printassay.colour.Rgb8;

/** Lines in simulated tints; a longer run with {@code -DsurfaceTrials=400}. */
class LineDetectorTest {
    private static final int TRIALS = Integer.getInteger("surfaceTrials", 8);
    private static final double[] LIGHTNESS = {35, 50, 65, 80, 60, 55};
    private static final Rgb8[] CODES = {
        Rgb8.grey(90),
        Rgb8.grey(128),
        Rgb8.grey(170),
        new Rgb8(0, 255, 255),
        new Rgb8(255, 0, 255),
        new Rgb8(255, 255, 0)
    };

    private static MadeTint tint(int seed, int k) {
        double grain = seed % 2 == 0 ? 1 : 2;
        return new MadeTint(1000L * seed + k, 200, LIGHTNESS[k], grain, 0.05).withDust(40);
    }

    @Test
    void cleanSheetsHaveNoLinesAndNoBands() {
        int lines = 0;
        int bands = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            List<TintTrace> tints = new ArrayList<>();
            for (int k = 0; k < CODES.length; k++) {
                tints.add(tint(seed, k).trace("T" + k, CODES[k], Along.Y));
            }
            lines += LineDetector.find(tints, MadeTint.SIGMA_MM).size();
            bands += BandDetector.find(tints, ContrastSensitivity.USUAL).size();
        }
        String counts = lines + " lines and " + bands + " bands on " + TRIALS + " clean sheets";
        System.out.println(counts);
        assertTrue(20 * lines < Math.max(20, TRIALS), counts);
        assertTrue(20 * bands < Math.max(20, TRIALS), counts);
    }

    @Test
    void thinLinesAreFoundAndPlaced() {
        Random random = new Random(3);
        int found = 0;
        int others = 0;
        double contrasts = 0;
        double farthest = 0;
        for (int seed = 0; seed < 2 * TRIALS; seed++) {
            double at = 5 + 190 * random.nextDouble();
            double contrast = seed % 2 == 0 ? 0.2 : -0.2;
            int k = seed % CODES.length;
            TintTrace tint =
                    tint(seed + 5000, k)
                            .with(new MadeTint.Line(at, 0.085, contrast))
                            .trace("T", CODES[k], Along.Y);
            for (FoundLine line : LineDetector.find(List.of(tint), MadeTint.SIGMA_MM)) {
                boolean there = Math.abs(line.positionMm() - at) <= 0.3;
                boolean same = line.polarity().equals(contrast > 0 ? "light" : "dark");
                if (there && same) {
                    found++;
                    contrasts += Math.abs(line.contrast());
                    farthest = Math.max(farthest, Math.abs(line.positionMm() - at));
                } else {
                    others++;
                }
            }
        }
        String counts =
                String.format(
                        Locale.ROOT,
                        "%d of %d lines within %.3f mm, mean contrast %.3f, %d where none is",
                        found,
                        2 * TRIALS,
                        farthest,
                        contrasts / found,
                        others);
        System.out.println(counts);
        assertTrue(found >= 0.95 * 2 * TRIALS, counts);
        assertTrue(20 * others < Math.max(20, TRIALS), counts);
        assertEquals(0.2, contrasts / found, 0.03, "contrast on the whole");
    }

    @Test
    void aLineOfOneInkShowsInItsTints() {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < CODES.length; k++) {
            MadeTint made = tint(77, k);
            if (k == 3) {
                made.with(new MadeTint.Line(61.5, 0.17, 0.2));
            }
            tints.add(made.trace("T" + k, CODES[k], Along.Y));
        }
        List<FoundLine> lines = LineDetector.find(tints, MadeTint.SIGMA_MM);
        assertEquals(1, lines.size());
        assertEquals(List.of("T3"), lines.get(0).shows());
        assertEquals(0.17, lines.get(0).widthMm(), 0.05);
        assertEquals(
                List.of("cyan"),
                SuspectInks.of(List.of(CODES[3]), List.of(CODES[4], CODES[5], CODES[0])));
    }

    @Test
    void whatBarePaperShowsIsNoMatterOfInk() {
        List<TintTrace> tints = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            Rgb8 codes = k == 0 ? Rgb8.grey(255) : CODES[k];
            tints.add(
                    tint(9, k)
                            .with(new MadeTint.Line(61.5, 0.1, -0.2))
                            .trace("T" + k, codes, Along.X));
        }
        List<FoundLine> lines = LineDetector.find(tints, MadeTint.SIGMA_MM);
        assertEquals(1, lines.size());
        assertTrue(lines.get(0).onPaper());
        assertEquals(List.of("T0", "T1", "T2"), lines.get(0).shows());
    }

    @Test
    void inksAreToldByTheTintsThatHoldThem() {
        Rgb8 cyan = new Rgb8(0, 255, 255);
        Rgb8 magenta = new Rgb8(255, 0, 255);
        Rgb8 blue = new Rgb8(0, 0, 255);
        Rgb8 yellow = new Rgb8(255, 255, 0);
        Rgb8 grey = Rgb8.grey(128);
        assertEquals(
                List.of("magenta"),
                SuspectInks.of(List.of(magenta, blue, grey), List.of(cyan, yellow)));
        assertEquals(
                List.of("black"), SuspectInks.of(List.of(grey), List.of(cyan, magenta, yellow)));
        assertEquals(List.of(), SuspectInks.of(List.of(grey), List.of()));
    }

    @Test
    void linesAtOneDistanceAreAPattern() {
        List<Double> at = List.of(12.0, 20.5, 29.04, 33.3, 37.48, 46.0, 54.52);
        SwathPattern pattern = SwathPattern.of(at, 250, 20.5);
        assertNotNull(pattern);
        assertEquals(8.5, pattern.periodMm(), 0.03);
        assertEquals(6, pattern.lines());
        // The strongest line stands elsewhere.
        assertNull(SwathPattern.of(at, 250, 33.3));
        assertNull(SwathPattern.of(List.of(12.0, 31.3, 44.0, 71.7), 250, 12));
    }

    /** Lines at random places are no nozzle's: in fewer than one sheet of fifty. */
    @Test
    void linesAtRandomAreNoPattern() {
        Random random = new Random(5);
        for (int lines : new int[] {6, 12, 20, 30, 40}) {
            int told = 0;
            for (int sheet = 0; sheet < 200; sheet++) {
                List<Double> at = random.doubles(lines, 10, 270).sorted().boxed().toList();
                told += SwathPattern.of(at, 260, at.get(lines / 2)) != null ? 1 : 0;
            }
            assertTrue(told <= 4, told + " of 200 with " + lines + " lines");
        }
    }

    /** Pale tints may be printed with light inks: they neither accuse nor acquit the full ones. */
    @Test
    void lightInksAreToldApart() {
        Rgb8 cyan = new Rgb8(0, 158, 224);
        Rgb8 paleCyan = new Rgb8(178, 224, 244);
        Rgb8 paleMagenta = new Rgb8(244, 178, 224);
        Rgb8 magenta = new Rgb8(224, 0, 158);
        assertEquals(
                List.of("cyan"),
                SuspectInks.of(List.of(cyan), List.of(paleCyan, paleMagenta, magenta)));
        assertEquals(
                List.of("light cyan"),
                SuspectInks.of(List.of(paleCyan), List.of(cyan, paleMagenta, magenta)));
    }

    /** Filters do not reach lines so near to an end: the light that is there places them. */
    @ParameterizedTest
    @CsvSource({"0.4, 2.5", "0.5, 0.5", "0.35, 1", "59.6, 2.5", "59.5, 0.5", "0.45, -0.6"})
    void aLineNearAnEndIsPlacedOrNotTold(double at, double contrast) {
        int found = 0;
        for (int k = 0; k < 3; k++) {
            TintTrace tint =
                    new MadeTint(500 + k, 60, LIGHTNESS[k], 1, 0.05)
                            .with(new MadeTint.Line(at, 0.042, contrast))
                            .trace("T", CODES[k], Along.Y);
            for (FoundLine line : LineDetector.find(List.of(tint), MadeTint.SIGMA_MM)) {
                found++;
                assertEquals(at, line.positionMm(), 0.1, line.toString());
                assertEquals(contrast > 0 ? "light" : "dark", line.polarity());
                assertTrue(line.widthMm() < 0.25, line.toString());
            }
        }
        assertTrue(found <= 3, found + " lines where three are");
        assertTrue(Math.abs(contrast) < 2 || found == 3, "strong ones are found: " + found);
    }

    /** A roller's mark is one line, without lines of the other kind beside it. */
    @ParameterizedTest
    @CsvSource({"0.8, -0.2", "0.8, 0.2", "1.2, -0.1", "1.2, 0.2", "2, -0.1", "2, 0.2"})
    void aWideLineIsOneLine(double width, double contrast) {
        TintTrace tint =
                tint(31, 1)
                        .with(new MadeTint.Line(100, width, contrast))
                        .trace("T", CODES[1], Along.Y);
        List<FoundLine> lines = LineDetector.find(List.of(tint), MadeTint.SIGMA_MM);
        assertEquals(1, lines.size(), lines.toString());
        assertEquals(contrast > 0 ? "light" : "dark", lines.get(0).polarity());
        assertEquals(100, lines.get(0).positionMm(), 0.3);
    }

    /** Half a percent darker, half a millimetre from a bright neighbour: nothing that is seen. */
    @Test
    void aFaintDipBesideTheLightOfTheNextTintIsNoLine() {
        TintTrace tint =
                new MadeTint(71, 4.5, 80, 0.03, 0.05)
                        .with(new MadeTint.Line(3.8, 0.28, -0.007))
                        .withGlowAtEnds(0.014, 0.2)
                        .trace("T", CODES[5], Along.Y);
        assertEquals(List.of(), LineDetector.find(List.of(tint), MadeTint.SIGMA_MM));
    }

    /** Short tints tell little of their noise: what stands out of it there is no line. */
    @Test
    void grainOfShortTintsIsNoLine() {
        for (int seed = 0; seed < 4000; seed++) {
            TintTrace tint =
                    new MadeTint(20_000 + seed, 4.7, 60, 1, 0.05)
                            .withGlowAtEnds(0.01, 0.3)
                            .trace("T", CODES[seed % CODES.length], Along.Y);
            assertEquals(List.of(), LineDetector.find(List.of(tint), MadeTint.SIGMA_MM));
        }
    }

    /** Handbook tables of Student's t: one-sided 0.001 (normal 3.0902) and 0.01 (2.3263). */
    @ParameterizedTest
    @CsvSource({
        "3.0902, 10, 4.144",
        "3.0902, 30, 3.385",
        "3.0902, 120, 3.160",
        "2.3263, 5, 3.365",
        "2.3263, 10, 2.764"
    })
    void fewPlacesMakeNoiseUnsure(double normal, double freedom, double t) {
        assertEquals(t, FewPlaces.student(normal, freedom), 0.01 * t);
        assertEquals(1, FewPlaces.unsure(1e6), 1e-3);
    }

    /** Hairs are darker than lines, and end within the tint. */
    @ParameterizedTest
    @CsvSource({"0, 4", "0, 6", "2, 6", "1, 6", "3, 3"})
    void aHairOverPartOfATintIsNoLine(int first, int strips) {
        for (double contrast : new double[] {0.3, 0.6}) {
            TintTrace tint =
                    tint(60, 2)
                            .with(new MadeTint.Hair(50, first, strips, contrast))
                            .trace("T", CODES[2], Along.Y);
            List<FoundLine> lines = LineDetector.find(List.of(tint), MadeTint.SIGMA_MM);
            assertEquals(List.of(), lines);
        }
    }

    /** What a repeat tells of a line: there, surely not there, or too faint to tell. */
    @Test
    void aRepeatTellsOnlyWhatItCould() {
        FoundLine line =
                LineDetector.find(
                                List.of(
                                        tint(40, 1)
                                                .with(new MadeTint.Line(80, 0.1, 0.2))
                                                .trace("T", CODES[1], Along.Y)),
                                MadeTint.SIGMA_MM)
                        .get(0);
        TintTrace again =
                tint(42, 1).with(new MadeTint.Line(80.1, 0.1, 0.2)).trace("T", CODES[1], Along.Y);
        TintTrace clean = tint(44, 1).trace("T", CODES[1], Along.Y);
        double blur = MadeTint.SIGMA_MM;
        assertEquals(Optional.of(true), LineDetector.shows(List.of(again), blur, line, 0.4));
        assertEquals(Optional.of(false), LineDetector.shows(List.of(clean), blur, line, 0.4));
        FoundLine faint =
                new FoundLine(Along.Y, 80, 0.085, 0.02, 6.6, List.of("T"), List.of(), false, 50.0);
        assertEquals(Optional.empty(), LineDetector.shows(List.of(clean), blur, faint, 0.4));
    }
}
