package org.printassay.acceptance;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.demo.flatbed.Dirt;
import org.printassay.demo.flatbed.Encoding;
import org.printassay.demo.flatbed.Flatbed;
import org.printassay.demo.flatbed.Light;
import org.printassay.demo.flatbed.Optics;
import org.printassay.demo.flatbed.Placing;
import org.printassay.demo.flatbed.ScanFile;
import org.printassay.demo.flatbed.Sensor;
import org.printassay.demo.paper.Cast;
import org.printassay.demo.paper.PaperModel;
import org.printassay.demo.paper.Surface;
import org.printassay.demo.paper.Tone;
import org.printassay.demo.print.Printing;

/**
 * A paper, a printing and a flatbed drawn at random over the whole range that people bring. Three
 * of four are hard in every respect at once; every fourth is a clean scan. All simulated.
 *
 * @param clean whether the scan is a clean one
 */
record RandomConditions(
        long seed, boolean clean, PaperModel paper, Printing printing, Flatbed flatbed) {
    private static final double[] SAMPLINGS = {150, 200, 240, 300, 300, 300, 360, 400, 600};
    private static final List<Encoding> ENCODINGS = List.of(Encoding.values());
    private static final List<Light.Shape> SHAPES = List.of(Light.Shape.values());
    private static final double FINEST = 1200;
    private static final double FINEST_SHARE = 0.01;

    static RandomConditions of(long seed) {
        Random random = new Random(0x9E3779B97F4A7C15L * (seed + 1));
        for (int i = 0; i < 8; i++) {
            random.nextLong();
        }
        boolean clean = seed % 4 == 0;
        PaperModel paper = paper(random, seed);
        double scale = clean ? 1 : between(random, 0.95, 1.05);
        double squeeze = clean ? 1 : between(random, 0.998, 1.002);
        Printing printing =
                new Printing(
                        scale * squeeze,
                        scale / squeeze,
                        between(random, -1, 1),
                        between(random, -1, 1),
                        List.of(),
                        List.of());
        return new RandomConditions(
                seed, clean, paper, printing, clean ? good(random) : hard(random));
    }

    private static PaperModel paper(Random random, long seed) {
        double grain = between(random, 0.1, 0.6);
        double spread = between(random, 0.03, 0.25);
        Tone tone =
                Tone.AIM
                        .withGamma(between(random, 0.92, 1.12))
                        .withDotGain(between(random, -0.02, 0.05));
        if (random.nextInt(3) > 0) {
            tone =
                    tone.withBlocked(
                            between(random, 0, 20), between(random, 3, 12), random.nextBoolean());
        }
        if (random.nextInt(3) > 0) {
            tone =
                    tone.withMerged(
                            between(random, 243, 255), between(random, 3, 9), random.nextBoolean());
        }
        double lean = random.nextInt(3) == 0 ? 0 : between(random, 0, 2.5);
        double towards = 2 * Math.PI * random.nextDouble();
        double a = lean * Math.cos(towards);
        double b = lean * Math.sin(towards);
        return PaperModel.faultless(
                        "Paper " + seed + " (simulated)",
                        new Lab(
                                between(random, 90, 98),
                                between(random, -1, 1.5),
                                between(random, -5, 7)),
                        new Lab(
                                between(random, 3, 22),
                                between(random, -1, 1),
                                between(random, -1.5, 1.5)))
                .withTone(tone)
                .withCast(new Cast(0.7 * a, 0.7 * b, a, b, 0.6 * a, 0.6 * b))
                .withSurface(
                        new Surface(
                                spread,
                                spread,
                                grain,
                                between(random, 0.04, 0.12),
                                between(random, 0, 0.4),
                                between(random, 0.15, 0.4),
                                between(random, 0, 0.2)));
    }

    private static Flatbed good(Random random) {
        return new Flatbed(
                300,
                Placing.STRAIGHT
                        .withDegrees(between(random, -2, 2))
                        .withOffset(between(random, -2, 2), between(random, -2, 2))
                        .withWobble(between(random, 0, 0.05), 90),
                Optics.CLEAR.withBlur(45).withStrayLight(0.01, between(random, 0, 0.005)),
                new Light(between(random, 0, 0.02), shape(random), between(random, 0, 360)),
                new Sensor(30_000, 0.0004, 1, false, Encoding.SCANNER),
                new Dirt(10, 0),
                ScanFile.TIFF16);
    }

    private static Flatbed hard(Random random) {
        double sampling =
                random.nextDouble() < FINEST_SHARE
                        ? FINEST
                        : SAMPLINGS[random.nextInt(SAMPLINGS.length)];
        Placing placing =
                Placing.STRAIGHT
                        .withDegrees(between(random, 0, 360))
                        .withOffset(between(random, -3, 3), between(random, -3, 3))
                        .withBorder(between(random, 4, 20))
                        .withWobble(between(random, 0, 0.3), between(random, 60, 200));
        Optics optics =
                Optics.CLEAR
                        .withBlur(between(random, 20, 90))
                        .withStrayLight(between(random, 0, 0.03), between(random, 0, 0.03))
                        .withSurround(between(random, 0.4, 0.7));
        optics =
                random.nextBoolean()
                        ? optics.withKernel(
                                Optics.Core.GAUSSIAN,
                                between(random, 3, 12),
                                between(random, 6, 16),
                                random.nextInt(3) > 0 ? 0 : between(random, 0, 0.6))
                        : optics.withKernel(
                                Optics.Core.EXPONENTIAL,
                                between(random, 1.5, 6),
                                between(random, 6, 16),
                                between(random, 0, 0.6));
        ScanFile file =
                switch (random.nextInt(5)) {
                    case 0 -> ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 8);
                    case 1 -> ScanFile.TIFF16.withFormat(ScanFile.Format.PNG, 16);
                    case 2 ->
                            ScanFile.TIFF16
                                    .withFormat(ScanFile.Format.JPEG, 8)
                                    .withJpegQuality(between(random, 0.75, 0.95));
                    case 3 -> ScanFile.TIFF16.withFormat(ScanFile.Format.TIFF, 8);
                    default -> ScanFile.TIFF16;
                };
        return new Flatbed(
                sampling,
                placing,
                optics,
                new Light(between(random, 0, 0.08), shape(random), between(random, 0, 360)),
                new Sensor(
                        between(random, 8_000, 40_000),
                        between(random, 0.0002, 0.001),
                        1,
                        false,
                        ENCODINGS.get(random.nextInt(ENCODINGS.size()))),
                new Dirt(random.nextInt(401), random.nextInt(8)),
                file);
    }

    private static Light.Shape shape(Random random) {
        return SHAPES.get(random.nextInt(SHAPES.size()));
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d %s %.0f/in %s%d turned %.1f wobble %.2f/%.0f blur %.0f glare %.4f returned %.4f"
                        + " kernel %s %.1f %.1f %.2f falloff %.3f %s dust %d hairs %d spread %.2f"
                        + " %s white %.1f black %.1f",
                seed,
                clean ? "clean" : "hard",
                flatbed.samplesPerInch(),
                flatbed.file().format(),
                flatbed.file().bits(),
                flatbed.placing().degrees(),
                flatbed.placing().wobbleMm(),
                flatbed.placing().wobblePeriodMm(),
                flatbed.optics().blurSigmaUm(),
                flatbed.optics().glare(),
                flatbed.optics().returnedLight(),
                flatbed.optics().core(),
                flatbed.optics().coreMm(),
                flatbed.optics().tailMm(),
                flatbed.optics().tailShare(),
                flatbed.light().falloff(),
                flatbed.light().shape(),
                flatbed.dirt().dustMarks(),
                flatbed.dirt().hairs(),
                paper.surface().twinL(),
                flatbed.sensor().encoding(),
                paper.white().l(),
                paper.black().l());
    }
}
