package org.printassay.sample;

import java.util.Arrays;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.reading.ReadingFlag;
import org.printassay.sheet.Patch;
import org.printassay.sheet.RectMm;
import org.printassay.sheet.Section;

/** The middle of one patch drawn here with grain and noise, and dirt laid on it. All simulated. */
final class MadePatch {
    static final double SIDE_MM = 7;
    private static final double GAMMA = 2.2;
    private static final float[] CURVE = curve();

    private final int side;
    private final double perMm;
    private final double[] light;
    private final double[] cover;
    private final double[] factor;

    /** A patch of a lightness, its grain in L* for spots of a tenth of a millimetre. */
    MadePatch(double lightness, double samplesPerInch, double grainL, Random random) {
        perMm = samplesPerInch / 25.4;
        side = (int) Math.round(SIDE_MM * perMm);
        double y = Lab.luminanceFactor(lightness);
        double slope = Lab.luminanceFactor(lightness + 0.5) - Lab.luminanceFactor(lightness - 0.5);
        double[] grain = grain(random);
        light = new double[side * side];
        for (int i = 0; i < light.length; i++) {
            double noise = Math.sqrt(y / 20_000 + 0.0004 * 0.0004) * random.nextGaussian();
            light[i] = y + slope * grainL * grain[i] + noise;
        }
        cover = new double[side * side];
        factor = new double[side * side];
        Arrays.fill(factor, 1);
    }

    /**
     * A patch without grain or noise, lighter by 0.6 of an 8 bit code in its right part, with the
     * border of the two codes between.
     *
     * @param share of the patch that is the right part
     */
    static MadePatch smoothed(double lightness, double samplesPerInch, double share) {
        MadePatch patch = new MadePatch(lightness, samplesPerInch, 0, new Random(1));
        double code = Math.round(255 * Math.pow(Lab.luminanceFactor(lightness), 1 / GAMMA));
        for (int i = 0; i < patch.light.length; i++) {
            boolean right = (double) (i % patch.side) / patch.side > 1 - share;
            patch.light[i] = Math.pow((code + (right ? 0.8 : 0.2)) / 255, GAMMA);
        }
        return patch;
    }

    private static float[] curve() {
        float[] curve = new float[65536];
        for (int i = 0; i < curve.length; i++) {
            curve[i] = (float) Math.pow(i / 65535.0, GAMMA);
        }
        return curve;
    }

    /** Unit spread, made of spots a tenth of a millimetre wide. */
    private double[] grain(Random random) {
        int cell = Math.max(1, (int) Math.round(0.1 * perMm));
        int across = side / cell + 2;
        double[] coarse = new double[across * across];
        for (int i = 0; i < coarse.length; i++) {
            coarse[i] = random.nextGaussian();
        }
        double[] grain = new double[side * side];
        for (int i = 0; i < grain.length; i++) {
            grain[i] = coarse[i / side / cell * across + i % side / cell];
        }
        return grain;
    }

    /**
     * Lays something with a reflectance of its own on the patch: a line with round ends, its edges
     * soft over a twentieth of a millimetre.
     */
    void line(double x0, double y0, double x1, double y1, double widthMm, double own) {
        double dx = x1 - x0;
        double dy = y1 - y0;
        double length = Math.max(1e-9, dx * dx + dy * dy);
        for (int i = 0; i < light.length; i++) {
            double x = (i % side + 0.5) / perMm;
            int down = i / side;
            double y = (down + 0.5) / perMm;
            double t = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / length));
            double away = Math.hypot(x - x0 - t * dx, y - y0 - t * dy) - widthMm / 2;
            double share = 1 / (1 + Math.exp(away / 0.025));
            if (share > cover[i]) {
                cover[i] = share;
                factor[i] = 1 + share * (own / light[i] - 1);
            }
        }
    }

    /** Ridges half a millimetre apart over the left part of the patch. */
    void ridges(double sharePart, double by) {
        for (int i = 0; i < light.length; i++) {
            double x = (i % side + 0.5) / side;
            int down = i / side;
            double y = (down + 0.5) / perMm;
            if (x < sharePart) {
                cover[i] = 1;
                factor[i] = 1 + (by - 1) * (0.5 + 0.5 * Math.sin(4 * Math.PI * (y + x)));
            }
        }
    }

    /** A neighbour of another lightness that reaches in over the left edge. */
    void neighbour(double lightness, double reachMm) {
        double other = Lab.luminanceFactor(lightness);
        for (int i = 0; i < light.length; i++) {
            double x = (i % side + 0.5) / perMm;
            double share = 0.5 * Math.exp(-x / reachMm * 3);
            light[i] += share * (other - light[i]);
        }
    }

    /** A soft spot of the print itself in the middle, lighter by a share. */
    void softSpot(double radiusMm, double share) {
        for (int i = 0; i < light.length; i++) {
            int row = i / side;
            double x = (i % side + 0.5) / perMm - SIDE_MM / 2;
            double y = (row + 0.5) / perMm - SIDE_MM / 2;
            light[i] *= 1 + share / (1 + Math.exp((Math.hypot(x, y) - radiusMm) / 0.2));
        }
    }

    /** Neighbours of another lightness that blur brings over all four edges. */
    void blurredNeighbours(double lightness, double reachMm) {
        double other = Lab.luminanceFactor(lightness);
        for (int i = 0; i < light.length; i++) {
            int row = i / side;
            int column = i % side;
            int from = Math.min(Math.min(column, side - 1 - column), Math.min(row, side - 1 - row));
            double share = 0.5 * Math.exp(-(from + 0.5) / perMm / reachMm * 3);
            light[i] += share * (other - light[i]);
        }
    }

    /**
     * Drops of one ink strewn at random over bare paper, each a fortieth of a millimetre in radius,
     * until they cover a share of it. They belong to the patch.
     */
    void drops(double share, double ink, Random random) {
        double radius = 0.025 * perMm;
        int reach = (int) Math.ceil(radius + 1);
        long count = Math.round(share * side * side / (Math.PI * radius * radius));
        for (long n = 0; n < count; n++) {
            double x = side * random.nextDouble();
            double y = side * random.nextDouble();
            for (int v = Math.max(0, (int) y - reach); v <= Math.min(side - 1, y + reach); v++) {
                for (int u = Math.max(0, (int) x - reach);
                        u <= Math.min(side - 1, x + reach);
                        u++) {
                    double hidden = overlap(u - x, radius) * overlap(v - y, radius);
                    int i = v * side + u;
                    light[i] += hidden * (ink - light[i]);
                }
            }
        }
    }

    /** Length of a drop, taken as a square of its area, in a pixel that begins so far from it. */
    private static double overlap(double from, double radius) {
        double half = radius * Math.sqrt(Math.PI) / 2;
        return Math.max(0, Math.min(from + 1, half) - Math.max(from, -half));
    }

    /** Share that dirt covers. */
    double covered() {
        double sum = 0;
        for (double c : cover) {
            sum += c;
        }
        return sum / cover.length;
    }

    PatchSample read(int bits, boolean withDirt) {
        return reads(bits, withDirt).robust();
    }

    PatchReads reads(int bits, boolean withDirt) {
        return reads(bits, withDirt, 0);
    }

    /** What is read where the page's x runs askew by an angle against the rows, radians. */
    PatchReads reads(int bits, boolean withDirt, double turn) {
        int step = bits == 8 ? 257 : 1;
        float[][] curves = {CURVE, CURVE, CURVE};
        PatchCells cells = new PatchCells(side, side, perMm, 3);
        for (int y = 0; y < side; y++) {
            char[] row = new char[3 * side];
            for (int x = 0; x < side; x++) {
                int i = y * side + x;
                double seen = light[i] * (withDirt ? factor[i] : 1);
                double code = 65535 * Math.pow(Math.max(0, seen), 1 / GAMMA);
                int whole = (int) Math.min(65535, Math.round(code / step) * step);
                row[3 * x] = (char) whole;
                row[3 * x + 1] = (char) whole;
                row[3 * x + 2] = (char) whole;
            }
            cells.add(row, 0, side, 0, y, curves);
        }
        Patch patch =
                new Patch("A1", Section.CUBE, Rgb8.grey(90), new RectMm(0, 0, SIDE_MM, SIDE_MM));
        return RobustPatch.of(patch, cells, new int[] {step, step, step}, curves, false, turn);
    }

    /** Lightness of the mean light of all pixels, before coding. */
    double plainLightness() {
        return Lab.lightness(Arrays.stream(light).average().orElseThrow());
    }

    /** Lightness that a sample stands for. */
    static double lightness(PatchSample sample) {
        return Lab.lightness(sample.linear().g());
    }

    static boolean doubtful(PatchSample sample) {
        return sample.flags().contains(ReadingFlag.DUSTY)
                || sample.flags().contains(ReadingFlag.UNEVEN);
    }
}
