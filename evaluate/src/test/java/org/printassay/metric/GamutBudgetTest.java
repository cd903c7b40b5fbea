package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;

/** Uncertainty of gamut volumes, and volumes of cubes of other steps; readings are simulated. */
class GamutBudgetTest {
    private static final int[] EDGE = {0, 64, 128, 191, 255};

    /** Central differences of the volume itself. */
    @Test
    void sensitivitiesAreTheDerivativesOfTheVolume() {
        GamutMesh mesh = GamutMesh.of(EDGE, RgbSpace.SRGB::toLab).orElseThrow();
        Map<Rgb8, Lab> sensitivity = mesh.sensitivity();
        assertEquals(98, sensitivity.size());
        for (Rgb8 code : List.of(new Rgb8(255, 0, 0), new Rgb8(128, 64, 255), Rgb8.grey(0))) {
            Lab s = Objects.requireNonNull(sensitivity.get(code));
            assertEquals(slope(code, new Lab(1e-3, 0, 0)), s.l(), 1e-3 * Math.abs(s.l()) + 1e-3);
            assertEquals(slope(code, new Lab(0, 1e-3, 0)), s.a(), 1e-3 * Math.abs(s.a()) + 1e-3);
            assertEquals(slope(code, new Lab(0, 0, 1e-3)), s.b(), 1e-3 * Math.abs(s.b()) + 1e-3);
        }
    }

    private static double slope(Rgb8 moved, Lab by) {
        double size = by.l() + by.a() + by.b();
        return (volume(moved, by, 1) - volume(moved, by, -1)) / (2 * size);
    }

    private static double volume(Rgb8 moved, Lab by, int sign) {
        return GamutMesh.of(
                        EDGE,
                        code -> {
                            Lab lab = RgbSpace.SRGB.toLab(code);
                            return code.equals(moved)
                                    ? new Lab(
                                            lab.l() + sign * by.l(),
                                            lab.a() + sign * by.a(),
                                            lab.b() + sign * by.b())
                                    : lab;
                        })
                .orElseThrow()
                .volume();
    }

    /** Volumes of many noisy prints spread as their random part says. */
    @Test
    void theRandomPartIsTheSpreadOfRepeats() {
        SummaryStatistics volumes = new SummaryStatistics();
        double stated = 0;
        for (int seed = 0; seed < 60; seed++) {
            Judgement judged = Judgement.of(Prints.print(Prints.fault(lab -> lab), 0.4, seed), 0.5);
            Budget budget =
                    judged.budgets().stream()
                            .filter(b -> b.figure().equals("colours.gamutVolume"))
                            .findFirst()
                            .orElseThrow();
            volumes.addValue(budget.value());
            stated +=
                    budget.parts().stream()
                                    .filter(p -> p.kind() == Budget.Kind.RANDOM)
                                    .mapToDouble(Budget.Part::standard)
                                    .sum()
                            / 60;
        }
        // A standard deviation of 60 is known to 9 %.
        assertEquals(1, volumes.getStandardDeviation() / stated, 0.27);
    }

    /** Density follows from L*: an interval of one is that of the other. */
    @Test
    void densityCarriesTheUncertaintyOfLightness() {
        Judgement judged = Judgement.of(Prints.print(Prints.fault(lab -> lab), 0.3, 1), 0.5);
        Extreme black = Objects.requireNonNull(judged.black());
        Budget density = black.densityBudget().orElseThrow();
        double l = Objects.requireNonNull(black.lab()).l();
        double half = black.uncertainty().l();
        double wide = Math.log10(Lab.luminanceFactor(l + half) / Lab.luminanceFactor(l - half)) / 2;
        assertEquals(wide, density.halfWidth(), 0.02 * wide);
    }

    @Test
    void fullColoursAloneAreJudgedWithoutVolume() {
        ReadingSet all = Prints.print(Prints.fault(lab -> lab), 0.1, 3);
        List<Reading> few =
                all.readings().stream()
                        .filter(r -> r.rgb().isNeutral() || fullColour(r.rgb()))
                        .toList();
        Judgement judged =
                Judgement.of(new ReadingSet(few, RgbSpace.SRGB, Trust.INSTRUMENT, true), 0.5);
        assertEquals(0, Objects.requireNonNull(judged.meanDeltaE00()), 0.3);
        assertNull(judged.gamutVolume());
        assertEquals(6, Objects.requireNonNull(judged.colours()).hues().size());
    }

    private static boolean fullColour(Rgb8 code) {
        return List.of(code.r(), code.g(), code.b()).stream().allMatch(c -> c == 0 || c == 255);
    }

    /** A recipe of a user's own may cut the cube in six steps. */
    @Test
    void cubesOfOtherStepsHaveAVolume() {
        ReadingSet five = Prints.print(Prints.fault(lab -> lab), 0, 3);
        List<Reading> readings =
                new ArrayList<>(five.readings().stream().filter(r -> r.rgb().isNeutral()).toList());
        for (int r = 0; r <= 255; r += 51) {
            for (int g = 0; g <= 255; g += 51) {
                for (int b = 0; b <= 255; b += 51) {
                    readings.add(own(new Rgb8(r, g, b)));
                }
            }
        }
        Judgement judged =
                Judgement.of(new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true), 0.5);
        double fine = Objects.requireNonNull(judged.colours()).aimVolume();
        // Six steps cut off a little of what 17 hold.
        assertEquals(fine, Objects.requireNonNull(judged.gamutVolume()), 0.02 * fine);
    }

    /** A volume of an open body would be any number. */
    @Test
    void aMissingColourOfTheSurfaceLeavesNoVolume() {
        ReadingSet all = Prints.print(Prints.fault(lab -> lab), 0.1, 3);
        for (Rgb8 lost : List.of(new Rgb8(255, 0, 255), new Rgb8(64, 0, 255), Rgb8.grey(128))) {
            List<Reading> left =
                    all.readings().stream().filter(r -> !r.rgb().equals(lost)).toList();
            Judgement judged =
                    Judgement.of(new ReadingSet(left, RgbSpace.SRGB, Trust.INSTRUMENT, true), 0.5);
            // A grey inside the cube is no part of its surface.
            assertEquals(lost.isNeutral(), judged.gamutVolume() != null, lost.toString());
            assertEquals(0, Objects.requireNonNull(judged.meanDeltaE00()), 0.3);
        }
    }

    /** A ring of hues finer than the cube hides no complete cube. */
    @Test
    void moreColoursThanTheCubeDoNoHarm() {
        List<Reading> readings =
                new ArrayList<>(Prints.print(Prints.fault(lab -> lab), 0, 3).readings());
        double before =
                Objects.requireNonNull(
                        Judgement.of(
                                        new ReadingSet(
                                                readings, RgbSpace.SRGB, Trust.INSTRUMENT, true),
                                        0.5)
                                .gamutVolume());
        for (int v : new int[] {32, 96, 160, 224}) {
            for (Rgb8 code :
                    List.of(
                            new Rgb8(v, 0, 255),
                            new Rgb8(255, 0, v),
                            new Rgb8(255, v, 0),
                            new Rgb8(v, 255, 0),
                            new Rgb8(0, 255, v),
                            new Rgb8(0, v, 255))) {
                readings.add(own(code));
            }
        }
        Judgement judged =
                Judgement.of(new ReadingSet(readings, RgbSpace.SRGB, Trust.INSTRUMENT, true), 0.5);
        assertEquals(before, Objects.requireNonNull(judged.gamutVolume()), 1e-6);
    }

    private static Reading own(Rgb8 code) {
        Lab lab = Prints.AIM.absoluteLab(RgbSpace.SRGB, code);
        return new Reading(
                "own " + code, Optional.empty(), code, lab, lab, null, null, Set.of(), null, 1);
    }

    @Test
    void evenStepsAreAnAimOfTheirOwn() {
        Prints.Fault even =
                (code, at, aim) ->
                        code.isNeutral()
                                ? new Lab(
                                        Prints.BLACK.l()
                                                + (Prints.WHITE.l() - Prints.BLACK.l())
                                                        * code.r()
                                                        / 255.0,
                                        aim.a(),
                                        aim.b())
                                : aim;
        ReadingSet set = Prints.print(even, 0.05, 4);
        Tone usual = Objects.requireNonNull(Judgement.of(set, 0.5).tone());
        Tone steps = Objects.requireNonNull(Judgement.of(set, 0.5, ToneAim.EVEN_STEPS).tone());
        assertTrue(usual.rmsDeltaL() > 1, String.valueOf(usual.rmsDeltaL()));
        assertTrue(steps.rmsDeltaL() < 0.05, String.valueOf(steps.rmsDeltaL()));
        assertEquals("even steps of L* from black to paper", steps.aim());
    }
}
