package org.printassay.check;

import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.evaluation.Evaluation;
import org.printassay.evaluation.MadePrint;
import org.printassay.evaluation.PrintBand;
import org.printassay.evaluation.PrintLine;
import org.printassay.evaluation.PrintSurface;
import org.printassay.evaluation.SurfaceCause;
import org.printassay.surface.Along;
import org.printassay.surface.ContrastSensitivity;
import org.printassay.surface.FoundBand;
import org.printassay.surface.FoundLine;

/**
 * Simulated reprints of an unchanged printer: each wanders from the last in its white, in
 * blackness, in tone, in the lean of its greys, in where its wedges end and in grain, by the
 * standard deviations that the tolerances <i>fine</i> and <i>workshop</i> state, and has the same
 * two lines and the same band again; and each is read with its own errors.
 */
final class Reprints {
    private static final double TONE = 0.15;
    private static final double LEAN = 0.10;
    private static final double BLACK = 0.15;
    private static final double WEDGE = 0.15;
    private static final double WHITE_L = 0.12;
    private static final double WHITE_A = 0.06;
    private static final double WHITE_B = 0.08;
    private static final double GRAIN = 0.02;

    /** Of reading grain, as figures of grain take it: a share, and the least. */
    private static final double GRAIN_READ = 0.05;

    private static final double GRAIN_LEAST = 0.02;

    /** Scatter of lines and bands that are read again: see the tests of their detectors. */
    private static final double STRENGTH_READ = 0.08;

    private static final double BAND_READ = 0.25;

    private Reprints() {}

    /** Prints and reads once more. */
    static Evaluation of(MadePrint print, long seed) {
        Random random = new Random(31 * seed + 5);
        double tone = TONE * random.nextGaussian();
        double a = LEAN * random.nextGaussian();
        double b = LEAN * random.nextGaussian();
        double blacker = BLACK * random.nextGaussian();
        double shadows = WEDGE * random.nextGaussian();
        double highlights = WEDGE * random.nextGaussian();
        Lab white =
                new Lab(
                        WHITE_L * random.nextGaussian(),
                        WHITE_A * random.nextGaussian(),
                        WHITE_B * random.nextGaussian());
        UnaryOperator<Lab> change = print.change();
        Evaluation read =
                print.withBlack(print.black() + blacker)
                        .withShifts(
                                print.shadowShift() + shadows, print.highlightShift() + highlights)
                        .withChange(truth -> moved(change.apply(truth), tone, a, b, white))
                        .evaluation(seed);
        return MadePrint.withSurface(read, surface(random));
    }

    /** Tone and lean are largest in the middle; the white moves light colours with it. */
    private static Lab moved(Lab c, double tone, double a, double b, Lab white) {
        double middle = Math.sin(Math.PI * Math.min(100, c.l()) / 100);
        double light = Math.max(0, c.l() / 96);
        return new Lab(
                c.l() + tone * middle + white.l() * light,
                c.a() + a * middle + white.a() * light,
                c.b() + b * middle + white.b() * light);
    }

    private static PrintSurface surface(Random random) {
        return new PrintSurface(
                List.of(line(random, 80, 0.17, 0.2, 25), line(random, 150, 0.085, -0.5, 30)),
                null,
                List.of(
                        new PrintBand(
                                1,
                                new FoundBand(
                                        Along.Y,
                                        4,
                                        0.2,
                                        true,
                                        5 + BAND_READ * random.nextGaussian(),
                                        List.of("T1"),
                                        false),
                                SurfaceCause.PRINT)),
                List.of(),
                List.of(),
                null,
                null,
                ContrastSensitivity.USUAL,
                new PrintSurface.Grain(
                        zone(random, 0.7),
                        zone(random, 0.9),
                        zone(random, 0.4),
                        zone(random, 0.3),
                        10,
                        true,
                        24),
                null,
                null);
    }

    private static PrintSurface.Zone zone(Random random, double grain) {
        double printed = grain + GRAIN * random.nextGaussian();
        double read = Math.max(GRAIN_LEAST, GRAIN_READ * printed) * random.nextGaussian();
        return new PrintSurface.Zone(printed + read, null);
    }

    private static PrintLine line(
            Random random, double mm, double width, double contrast, double z) {
        double strength = 1 + STRENGTH_READ * random.nextGaussian();
        FoundLine found =
                new FoundLine(
                        Along.Y,
                        mm + 0.1 * random.nextGaussian(),
                        width,
                        contrast * strength,
                        z,
                        List.of("T1"),
                        List.of(),
                        false,
                        50.0);
        return new PrintLine(1, found, SurfaceCause.PRINT, List.of());
    }
}
