package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
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
     * What is stated of scatter is what figures scatter by from print to print (ISO/IEC Guide 98-3,
     * 3.1.4): the few patches of bare paper, and those of the black, move casts and tone of all
     * greys. What is stated of mean colour differences and of gradients may be wider.
     */
    @Test
    void figuresScatterAsMuchAsIsStated() {
        int prints = 400;
        Prints.Fault bent =
                Prints.fault(
                        aim ->
                                new Lab(
                                        aim.l() + 3 * Math.sin(aim.l() / 15),
                                        aim.a() + 1.5,
                                        aim.b() + 2));
        Map<String, SummaryStatistics> found = new TreeMap<>();
        Map<String, SummaryStatistics> stated = new TreeMap<>();
        for (int seed = 0; seed < prints; seed++) {
            for (Budget budget : Judgement.of(Prints.print(bent, 0.3, seed), 0.5).budgets()) {
                double random =
                        budget.parts().stream()
                                .filter(part -> part.kind() == Budget.Kind.RANDOM)
                                .mapToDouble(Budget.Part::standard)
                                .sum();
                String figure = budget.figure();
                found.computeIfAbsent(figure, f -> new SummaryStatistics())
                        .addValue(budget.value());
                stated.computeIfAbsent(figure, f -> new SummaryStatistics()).addValue(random);
            }
        }
        for (String figure :
                List.of(
                        "white.lab.l",
                        "white.lab.b",
                        "white.density",
                        "black.lab.l",
                        "black.density",
                        "neutrality.cast.a",
                        "neutrality.cast.b",
                        "tone.rmsDeltaL",
                        "colours.gamutVolume")) {
            double ratio =
                    Objects.requireNonNull(found.get(figure)).getStandardDeviation()
                            / Objects.requireNonNull(stated.get(figure)).getMean();
            // Deviations of 400 are known to 3.5 %: three of them.
            assertEquals(1, ratio, 0.11, figure);
        }
        assertTrue(
                Objects.requireNonNull(found.get("colours.meanDeltaE00")).getStandardDeviation()
                        <= 1.11
                                * Objects.requireNonNull(stated.get("colours.meanDeltaE00"))
                                        .getMean());
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
