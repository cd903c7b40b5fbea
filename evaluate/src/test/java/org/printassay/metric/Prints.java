package org.printassay.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.colour.PaperAim;
import org.printassay.colour.Rgb8;
import org.printassay.colour.RgbSpace;
import org.printassay.reading.Reading;
import org.printassay.reading.ReadingFlag;
import org.printassay.reading.ReadingSet;
import org.printassay.reading.Trust;
import org.printassay.sheet.PointMm;
import org.printassay.sheet.Section;

/** Simulated prints that depart from their aim in a known way; nothing of them is real. */
final class Prints {
    static final Lab WHITE = new Lab(96, 0.5, -1.5);
    static final Lab BLACK = new Lab(12, 0, 0);
    static final PaperAim AIM = PaperAim.relativeColorimetric(WHITE, BLACK);
    private static final int[] CUBE = {0, 64, 128, 191, 255};
    private static final int[] RAMP = {32, 96, 160, 224};

    private final List<Reading> readings = new ArrayList<>();
    private final Random random;
    private final double noise;

    private Prints(double noise, long seed) {
        this.noise = noise;
        this.random = new Random(seed);
    }

    /** How a print departs from its aim. */
    @FunctionalInterface
    interface Fault {
        Lab of(Rgb8 code, PointMm at, Lab aim);
    }

    /** A colour at a place nobody looks at. */
    static Fault fault(UnaryOperator<Lab> change) {
        return (code, at, aim) -> change.apply(aim);
    }

    /** Neutrals four times, cube, ramps of the hues and skin twice, with a fault and noise. */
    static ReadingSet print(Fault fault, double noise, long seed) {
        Prints prints = new Prints(noise, seed);
        for (int copy = 0; copy < 4; copy++) {
            for (int step = 0; step <= 32; step++) {
                prints.add(Section.NEUTRAL_RAMP, Rgb8.grey(Math.round(255f * step / 32)), fault);
            }
        }
        for (int r : CUBE) {
            for (int g : CUBE) {
                for (int b : CUBE) {
                    prints.add(Section.CUBE, new Rgb8(r, g, b), fault);
                }
            }
        }
        for (int rest : RAMP) {
            prints.add(Section.HUE_RAMPS, new Rgb8(255, rest, rest), fault);
            prints.add(Section.HUE_RAMPS, new Rgb8(rest, 255, 255), fault);
        }
        for (int copy = 0; copy < 2; copy++) {
            prints.add(Section.SKIN, new Rgb8(114, 82, 67), fault);
            prints.add(Section.SKIN, new Rgb8(191, 153, 134), fault);
        }
        return new ReadingSet(prints.readings, RgbSpace.SRGB, Trust.INSTRUMENT, true);
    }

    private void add(Section section, Rgb8 code, Fault fault) {
        PointMm at = new PointMm(10 + 190 * random.nextDouble(), 10 + 270 * random.nextDouble());
        Lab lab = fault.of(code, at, AIM.absoluteLab(RgbSpace.SRGB, code));
        Lab read =
                new Lab(
                        lab.l() + noise * random.nextGaussian(),
                        lab.a() + noise * random.nextGaussian(),
                        lab.b() + noise * random.nextGaussian());
        readings.add(
                new Reading(
                        "p" + readings.size(),
                        Optional.of(section),
                        code,
                        read,
                        read,
                        null,
                        null,
                        Set.of(),
                        at,
                        1));
    }

    /** The same patch under something that lies on it, and flagged for it. */
    static Reading hidden(Reading reading) {
        Lab seen = new Lab(57, 16, 17);
        return new Reading(
                reading.id(),
                reading.section(),
                reading.rgb(),
                seen,
                seen,
                reading.standardError(),
                reading.density(),
                Set.of(ReadingFlag.UNEVEN),
                reading.centre(),
                reading.sheet());
    }
}
