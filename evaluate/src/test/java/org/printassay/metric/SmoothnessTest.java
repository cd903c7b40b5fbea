package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.SharedError;
import org.printassay.reading.Trust;

/**
 * Greys with made faults, simulated, noise 0.25 in each of L*, a*, b*, each grey read four times.
 */
class SmoothnessTest {
    private static final double NOISE = 0.25;

    private static List<Irregularity> irregularities(Prints.Fault fault, long seed) {
        Tone tone = Judgement.of(Prints.print(fault, NOISE, seed), 0.5).tone();
        assertNotNull(tone);
        return tone.irregularities();
    }

    @Test
    void smoothPrintsHaveNone() {
        int found = 0;
        for (int seed = 0; seed < 40; seed++) {
            // A bend in tone and a drift in hue, both as a printer may have them.
            found +=
                    irregularities(
                                    (code, at, aim) ->
                                            new Lab(
                                                    aim.l() + 4 * Math.sin(aim.l() / 96 * Math.PI),
                                                    aim.a() + 2 * Math.cos(aim.l() / 30),
                                                    aim.b() - 3 * aim.l() / 96),
                                    seed)
                            .size();
        }
        // 40 prints with some 60 places each: at most one false alarm in twenty prints.
        assertTrue(found <= 2, found + " false alarms");
    }

    /** A hand over some patches of a grey, flagged as such: the print has no fault there. */
    @Test
    void whatOnlyDoubtfulReadingsSayIsNoFaultOfThePrint() {
        ReadingSet print = Prints.print(Prints.fault(aim -> aim), NOISE, 3);
        List<Reading> hidden =
                print.readings().stream()
                        .map(r -> r.rgb().equals(Rgb8.grey(96)) ? Prints.hidden(r) : r)
                        .toList();
        Tone tone =
                Judgement.of(new ReadingSet(hidden, RgbSpace.SRGB, Trust.INSTRUMENT, true), 0.5)
                        .tone();
        assertNotNull(tone);
        assertEquals(List.of(), tone.irregularities());
        assertEquals(List.of(), tone.reversalLevels());
        assertTrue(tone.maxDeltaL() < 1, "" + tone.maxDeltaL());
    }

    @Test
    void aJumpIsFoundAndNamed() {
        int found = 0;
        for (int seed = 0; seed < 40; seed++) {
            List<Irregularity> all =
                    irregularities(
                            (code, at, aim) ->
                                    new Lab(aim.l() + (code.g() > 130 ? 2.5 : 0), aim.a(), aim.b()),
                            seed);
            found +=
                    all.stream()
                                    .anyMatch(
                                            i ->
                                                    i.kind() == Irregularity.Kind.STEP
                                                            && i.level() <= 130
                                                            && i.toLevel() > 130
                                                            && Math.abs(i.size() - 2.5) < 1)
                            ? 1
                            : 0;
        }
        assertTrue(found >= 38, found + " of 40 found");
    }

    @Test
    void aTurnOfHueIsFound() {
        int found = 0;
        for (int seed = 0; seed < 40; seed++) {
            List<Irregularity> all =
                    irregularities(
                            (code, at, aim) ->
                                    new Lab(
                                            aim.l(),
                                            aim.a(),
                                            aim.b() + (code.equals(Rgb8.grey(96)) ? 2.5 : 0)),
                            seed);
            found +=
                    !all.isEmpty()
                                    && all.get(0).kind() == Irregularity.Kind.HUE_SWING
                                    && all.get(0).level() == 96
                            ? 1
                            : 0;
        }
        assertTrue(found >= 38, found + " of 40 found");
    }

    /** Lossy coding keeps colour in steps: greys on two of them are no fault of the printer. */
    @Test
    void stepsOfLossyCodingAreNoTurnOfHue() {
        double step = 2.6;
        Lab shift = new Lab(0, 0, step / Math.sqrt(12));
        int found = 0;
        int unknown = 0;
        for (int seed = 0; seed < 20; seed++) {
            double from = 0.1 * seed;
            ReadingSet coded =
                    Prints.print(
                            (code, at, aim) -> {
                                double b = aim.b() - 4 * aim.l() / 96 - from;
                                return new Lab(aim.l(), aim.a(), step * Math.round(b / step));
                            },
                            0.1,
                            seed);
            ReadingSet known =
                    new ReadingSet(
                            coded.readings(),
                            coded.space(),
                            coded.trust(),
                            coded.colour(),
                            List.of(
                                    new SharedError(
                                            Collections.nCopies(coded.readings().size(), shift))),
                            List.of());
            found += swings(known);
            unknown += swings(coded);
        }
        assertEquals(0, found);
        assertTrue(unknown > 0, "steps so small prove nothing");
    }

    private static int swings(ReadingSet set) {
        Tone tone = Judgement.of(set, 0.5).tone();
        assertNotNull(tone);
        return (int)
                tone.irregularities().stream()
                        .filter(i -> i.kind() == Irregularity.Kind.HUE_SWING)
                        .count();
    }

    @Test
    void aKneeIsNoJump() {
        int found = 0;
        for (int seed = 0; seed < 20; seed++) {
            found +=
                    (int)
                            irregularities(
                                            (code, at, aim) ->
                                                    new Lab(
                                                            Math.max(aim.l(), 22),
                                                            aim.a(),
                                                            aim.b()),
                                            seed)
                                    .stream()
                                    .filter(i -> i.kind() == Irregularity.Kind.STEP)
                                    .count();
        }
        assertEquals(0, found);
    }
}
