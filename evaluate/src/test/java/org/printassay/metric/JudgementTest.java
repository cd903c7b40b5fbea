package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.printassay.chart.Charts;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.recipe.Margins;
import org.printassay.recipe.PageSize;
import org.printassay.recipe.Recipe;
import org.printassay.sheet.Patch;

/** Judgements of made readings whose answers follow from the definitions. */
class JudgementTest {
    private static final Lab WHITE = new Lab(96, 0.5, 3);
    private static final Lab BLACK = new Lab(8, 0, 0);

    /** Colour of a made print from the aim's colour and the level (-1 for colours). */
    private interface Print {
        Lab of(Lab aim, int level);
    }

    private static ReadingSet readings(Print print, double noise, boolean colour) throws Exception {
        PaperAim aim = PaperAim.relativeColorimetric(WHITE, BLACK);
        Random random = new Random(4);
        List<Reading> readings = new ArrayList<>();
        for (Patch patch :
                Charts.create(Recipe.paper(PageSize.parse("A4"), Margins.all(10), RgbSpace.SRGB))
                        .sheets()
                        .get(0)
                        .patches()) {
            Rgb8 rgb = patch.rgb();
            Lab lab = print.of(aim.absoluteLab(RgbSpace.SRGB, rgb), rgb.isNeutral() ? rgb.r() : -1);
            Lab noisy =
                    new Lab(
                            lab.l() + noise * random.nextGaussian(),
                            lab.a() + noise * random.nextGaussian(),
                            lab.b() + noise * random.nextGaussian());
            readings.add(
                    new Reading(
                            patch.id(),
                            Optional.of(patch.section()),
                            rgb,
                            noisy,
                            noisy,
                            null,
                            null,
                            Set.of(),
                            patch.area().centre(),
                            1));
        }
        return new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, colour);
    }

    @Test
    void aPrintOnItsAimHasNoFault() throws Exception {
        Judgement judged = Judgement.of(readings((aim, level) -> aim, 0.1, true), 0.5);
        Tone tone = Objects.requireNonNull(judged.tone());
        assertEquals(0, tone.rmsDeltaL(), 0.1);
        assertTrue(tone.monotonic());
        Neutrality neutrality = Objects.requireNonNull(judged.neutrality());
        // The route keeps the paper's chromaticity into the dark, the reference lets it fade: that
        // alone is a third of a unit on a paper of b* 3, and no cast that anyone would name.
        assertEquals(0, neutrality.meanDeltaCh(), 0.5);
        assertEquals("no cast", neutrality.cast().words());
        assertEquals(0, Objects.requireNonNull(judged.meanDeltaE00()), 0.2);
        assertEquals(
                96, Objects.requireNonNull(Objects.requireNonNull(judged.white()).lab()).l(), 0.1);
    }

    /** ISO 12647-2:2013 idea: the paper's tint fades to neutral at black, so this is no cast. */
    @Test
    void thePapersOwnTintIsNoCast() throws Exception {
        Print tinted =
                (aim, level) -> {
                    double share = (aim.l() - BLACK.l()) / (WHITE.l() - BLACK.l());
                    return level < 0 ? aim : new Lab(aim.l(), share * WHITE.a(), share * WHITE.b());
                };
        Neutrality neutrality =
                Objects.requireNonNull(
                        Judgement.of(readings(tinted, 0.05, true), 0.5).neutrality());
        assertEquals(0, neutrality.cast().a(), 0.05);
        assertEquals(0, neutrality.cast().b(), 0.05);
        assertFalse(neutrality.cast().significant());
    }

    @Test
    void aCastIsFoundWithItsSizeAndItsWords() throws Exception {
        Print blue =
                (aim, level) -> {
                    double share = (aim.l() - BLACK.l()) / (WHITE.l() - BLACK.l());
                    return level < 0
                            ? aim
                            : new Lab(aim.l(), share * WHITE.a(), share * WHITE.b() - 2.5);
                };
        Print bare =
                (aim, level) -> level == 255 ? WHITE : level == 0 ? BLACK : blue.of(aim, level);
        Neutrality neutrality =
                Objects.requireNonNull(Judgement.of(readings(bare, 0.05, true), 0.5).neutrality());
        assertEquals(-2.5, neutrality.cast().b(), 0.25);
        assertTrue(neutrality.cast().words().contains("cool"), neutrality.cast().words());
        assertTrue(neutrality.cast().words().contains("blue"), neutrality.cast().words());
        assertFalse(neutrality.crossover());
    }

    /**
     * What is stated of scatter is what the cast scatters by from print to print (ISO/IEC Guide
     * 98-3, 3.1.4), in every zone, the error of the paper's own colour with it: the few patches of
     * bare paper move all greys.
     */
    @Test
    void castsScatterAsMuchAsIsStated() {
        int prints = 400;
        List<List<Neutrality.Cast>> zones = List.of(new ArrayList<>(), new ArrayList<>());
        for (int seed = 0; seed < prints; seed++) {
            Neutrality neutrality =
                    Judgement.of(Prints.print(Prints.fault(aim -> aim), 0.3, seed), 0.5)
                            .neutrality();
            zones.get(0).add(Objects.requireNonNull(neutrality).cast());
            zones.get(1).add(neutrality.shadows());
        }
        for (List<Neutrality.Cast> zone : zones) {
            double mean = zone.stream().mapToDouble(Neutrality.Cast::b).average().orElseThrow();
            double squares = zone.stream().mapToDouble(cast -> Math.pow(cast.b() - mean, 2)).sum();
            double stated =
                    zone.stream()
                            .mapToDouble(cast -> cast.budgets().get(1).parts().get(0).standard())
                            .average()
                            .orElseThrow();
            double found = Math.sqrt(squares / (prints - 1));
            // A standard deviation of 400 is known to 3.5 %; three of them.
            assertEquals(1, found / stated, 0.11);
        }
    }

    @Test
    void greysThatLeanOppositeWaysCrossOver() throws Exception {
        Print crossing =
                (aim, level) -> {
                    if (level <= 0 || level == 255) {
                        return aim;
                    }
                    double share = (aim.l() - BLACK.l()) / (WHITE.l() - BLACK.l());
                    double lean = share < 0.5 ? 3 : -3;
                    return new Lab(aim.l(), share * WHITE.a(), share * WHITE.b() + lean);
                };
        assertTrue(
                Objects.requireNonNull(
                                Judgement.of(readings(crossing, 0.05, true), 0.5).neutrality())
                        .crossover());
    }

    /** A known error in tone comes back as it was put in, noise taken off. */
    @Test
    void toneErrorsComeBackWithoutTheNoise() throws Exception {
        Print dark =
                (aim, level) ->
                        level <= 0 || level == 255
                                ? aim
                                : new Lab(Math.max(0, aim.l() - 2), aim.a(), aim.b());
        Tone tone = Objects.requireNonNull(Judgement.of(readings(dark, 0.3, true), 0.5).tone());
        assertEquals(2 * Math.sqrt(31.0 / 32), tone.rmsDeltaL(), 0.1);
        assertEquals(-2, tone.meanDeltaLMidtones(), 0.15);
    }

    @Test
    void aReversalInToneIsNamed() throws Exception {
        Print stepped =
                (aim, level) -> level > 120 && level < 140 ? new Lab(30, aim.a(), aim.b()) : aim;
        Tone tone = Objects.requireNonNull(Judgement.of(readings(stepped, 0.05, true), 0.5).tone());
        assertFalse(tone.monotonic());
        int at = tone.reversalLevels().get(0);
        assertTrue(at > 120 && at < 140, "level " + at);
    }

    @Test
    void aGreyScanHasNoNeutralityAndNoColours() throws Exception {
        Judgement judged = Judgement.of(readings((aim, level) -> aim, 0.05, false), 0.5);
        assertNull(judged.neutrality());
        assertNull(judged.meanDeltaE00());
        assertTrue(judged.tone() != null);
    }

    /** Measurement files of other charts name no sections: colours go by their codes. */
    @Test
    void coloursAreJudgedWithoutSections() throws Exception {
        ReadingSet known = readings((aim, level) -> aim, 0.1, true);
        List<Reading> bare =
                known.readings().stream()
                        .map(
                                r ->
                                        new Reading(
                                                r.id(),
                                                Optional.empty(),
                                                r.rgb(),
                                                r.lab(),
                                                r.labRelative(),
                                                null,
                                                null,
                                                Set.of(),
                                                null,
                                                1))
                        .toList();
        ReadingSet unknown = new ReadingSet(bare, RgbSpace.SRGB, Trust.INSTRUMENT, true);
        Judgement judged = Judgement.of(unknown, 0.5);
        assertEquals(0, Objects.requireNonNull(judged.meanDeltaE00()), 0.2);
        assertEquals(
                Judgement.of(known, 0.5).meanDeltaE00(), judged.meanDeltaE00(), "same readings");
    }
}
