package org.printassay.metric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;

/** Colours of simulated prints whose departures from the aim are known. */
class ColourDetailTest {
    private static ColourDetail detail(Prints.Fault fault) {
        ColourDetail detail = ColourJudge.detail(Prints.print(fault, 0, 1));
        assertNotNull(detail);
        return detail;
    }

    @Test
    void aPerfectPrintMeetsItsAim() {
        ColourDetail detail = detail(Prints.fault(aim -> aim));
        assertEquals(0, detail.maxDeltaE00(), 1e-3);
        assertEquals(6, detail.hues().size());
        for (ColourDetail.Hue hue : detail.hues()) {
            assertEquals(0, hue.deltaChroma(), 1e-3);
            assertNull(hue.noMoreFromPercent(), hue.name());
        }
        assertEquals(2, detail.skin().size());
        assertEquals("as aimed", detail.skin().get(0).words());
    }

    /** A card over the full green of a perfect print. */
    @Test
    void aColourThatIsOutOfLineIsNoneOfThePrints() {
        Rgb8 green = new Rgb8(0, 255, 0);
        ReadingSet perfect = Prints.print(Prints.fault(aim -> aim), 0, 1);
        List<Reading> readings =
                perfect.readings().stream()
                        .map(
                                one ->
                                        one.rgb().equals(green)
                                                ? Prints.hidden(one)
                                                        .withFlags(Set.of(ReadingFlag.OUT_OF_LINE))
                                                : one)
                        .toList();
        ColourDetail detail =
                ColourJudge.detail(
                        new ReadingSet(readings, perfect.space(), perfect.trust(), true));
        assertNotNull(detail);
        assertEquals(0, detail.maxDeltaE00(), 1e-3);
        assertEquals(
                List.of("red", "yellow", "cyan", "blue", "magenta"),
                detail.hues().stream().map(ColourDetail.Hue::name).toList());
        assertNull(detail.gamutVolume(), "a corner of it is not known");
    }

    @Test
    void gamutVolumeOfAPrintIsThatOfTheSmoothBodyWithinTwoPercent() {
        // Half the chroma everywhere: a quarter of the aim's volume, which a fine mesh gives.
        ColourDetail detail =
                detail(
                        (code, at, aim) ->
                                code.isNeutral()
                                        ? aim
                                        : new Lab(aim.l(), aim.a() / 2, aim.b() / 2));
        Double volume = detail.gamutVolume();
        assertNotNull(volume);
        assertEquals(detail.aimVolume() / 4, volume, 0.02 * detail.aimVolume() / 4);
    }

    @Test
    void chromaThatIsCutOffIsTold() {
        // Reds reach no more than chroma 45, as an ink limit would do, and keep that hue.
        ColourDetail detail =
                detail(
                        (code, at, aim) -> {
                            boolean red = code.r() == 255 && code.g() == code.b();
                            return red && aim.chroma() > 45
                                    ? new Lab(aim.l(), 45 * Math.cos(0.5), 45 * Math.sin(0.5))
                                    : aim;
                        });
        ColourDetail.Hue red = detail.hues().get(0);
        assertEquals("red", red.name());
        assertEquals(45, red.mostChroma(), 1e-6);
        Integer from = red.noMoreFromPercent();
        assertNotNull(from);
        // The step at which the aim first passes 45, by an independent walk over the codes.
        int expected = 0;
        for (int rest : new int[] {255, 224, 191, 160, 128, 96, 64, 32, 0}) {
            if (Prints.AIM.absoluteLab(RgbSpace.SRGB, new Rgb8(255, rest, rest)).chroma() >= 44) {
                expected = (int) Math.round(100 * (255 - rest) / 255.0);
                break;
            }
        }
        assertEquals(expected, from);
        assertNull(detail.hues().get(3).noMoreFromPercent(), "cyan goes on");
    }

    /** Every hue of a print whose reds reach so much of the way, by the file's share of red. */
    private static ColourDetail reds(DoubleUnaryOperator chroma, double turnAtFull) {
        return detail(
                (code, at, aim) -> {
                    if (code.r() != 255 || code.g() != code.b() || code.isNeutral()) {
                        return aim;
                    }
                    double share = (255 - code.g()) / 255.0;
                    double hue = Math.toRadians(30 + turnAtFull * share);
                    double c = chroma.applyAsDouble(share);
                    double a = Prints.WHITE.a() + c * Math.cos(hue);
                    return new Lab(aim.l(), a, Prints.WHITE.b() + c * Math.sin(hue));
                });
    }

    private static @Nullable Integer redsGainNothingFrom(
            DoubleUnaryOperator chroma, double turnAtFull) {
        return reds(chroma, turnAtFull).hues().get(0).noMoreFromPercent();
    }

    /** Paper's own tint is no colour that the file asked for: weak inks on brown paper. */
    @Test
    void tintOfPaperIsNoColour() {
        Prints.Fault brown =
                (code, at, aim) -> {
                    double fade = (aim.l() - Prints.BLACK.l()) / 84;
                    return new Lab(
                            12 + 54 * fade, 0.45 * aim.a() + 8 * fade, 0.45 * aim.b() + 21 * fade);
                };
        for (ColourDetail.Hue hue : detail(brown).hues()) {
            assertNull(hue.noMoreFromPercent(), hue.name());
        }
    }

    @Test
    void noMoreColourHoldsForAllFurtherSteps() {
        assertEquals(50, redsGainNothingFrom(s -> 80 * Math.min(s, 0.5), 0));
        assertEquals(50, redsGainNothingFrom(s -> s <= 0.5 ? 80 * s : 60 - 40 * s, 0), "falls");
        // Falls and rises again: what the file asks for there is on paper.
        assertEquals(
                87, redsGainNothingFrom(s -> s > 0.6 && s < 0.8 ? 35 : 80 * Math.min(s, 0.5), 0));
        assertNull(redsGainNothingFrom(s -> s > 0.6 && s < 0.9 ? 35 : 80 * Math.min(s, 0.5), 0));
        // Little a step, but more and more.
        assertEquals(
                87, redsGainNothingFrom(s -> 80 * Math.min(s, 0.5) + 6 * Math.max(0, s - 0.5), 0));
        // As far from paper, yet of another hue.
        assertNull(redsGainNothingFrom(s -> 80 * Math.min(s, 0.5), 40));
    }

    @Test
    void hueTurnsHaveTheirSignAndSize() {
        double turn = Math.toRadians(8);
        ColourDetail detail =
                detail(
                        (code, at, aim) ->
                                code.isNeutral()
                                        ? aim
                                        : new Lab(
                                                aim.l(),
                                                aim.a() * Math.cos(turn) - aim.b() * Math.sin(turn),
                                                aim.a() * Math.sin(turn)
                                                        + aim.b() * Math.cos(turn)));
        for (ColourDetail.Hue hue : detail.hues()) {
            // dH = 2 sqrt(C1 C2) sin(dh / 2), CIE 15.
            assertEquals(2 * hue.aim().chroma() * Math.sin(turn / 2), hue.deltaHue(), 1e-6);
        }
        for (ColourDetail.SkinTone tone : detail.skin()) {
            assertEquals(8, tone.hueShiftDegrees(), 1e-6);
            assertTrue(tone.words().contains("yellower"), tone.words());
            assertEquals(DeltaE.ciede2000(tone.aim(), tone.measured()), tone.deltaE00(), 1e-9);
        }
    }

    @Test
    void darkAndRedSkinIsSaidSo() {
        assertEquals("darker, redder", SkinJudge.words(-2, 0.2, -1.5));
        assertEquals("lighter, duller", SkinJudge.words(1.4, -3, 0.4));
        assertEquals("a little off", SkinJudge.words(0.4, 0.4, 0.4));
    }

    @Test
    void withoutBlackNothingIsJudged() {
        ReadingSet print = Prints.print(Prints.fault(aim -> aim), 0, 1);
        ReadingSet without =
                new ReadingSet(
                        print.readings().stream()
                                .filter(r -> !r.rgb().equals(Rgb8.grey(0)))
                                .toList(),
                        print.space(),
                        print.trust(),
                        true);
        assertNull(ColourJudge.detail(without));
    }
}
