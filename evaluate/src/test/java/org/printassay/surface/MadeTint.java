package org.printassay.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;

/**
 * A tint as a scan at 600 samples an inch traces it, simulated: grain correlated in two directions,
 * averaged over strips, sensor noise, lines and bands behind the scanner's blur, dust.
 */
final class MadeTint {
    static final double STEP_MM = 25.4 / 600;
    static final double SIGMA_MM = 0.045;
    static final int STRIPS = 8;
    static final double STRIP_MM = 1.2;

    record Line(double atMm, double widthMm, double contrast) {}

    record Band(double periodMm, double amplitudeL, double phase) {}

    /** A dark line over some of the strips. */
    record Hair(double atMm, int firstStrip, int strips, double contrast) {}

    private final Random random;
    private final double lengthMm;
    private final double lightness;
    private final double grainL;
    private final double grainLengthMm;
    private final List<Line> lines = new ArrayList<>();
    private final List<Band> bands = new ArrayList<>();
    private final List<Hair> hairs = new ArrayList<>();
    private int dust;
    private double glow;
    private double glowMm = 1;

    MadeTint(long seed, double lengthMm, double lightness, double grainL, double grainLengthMm) {
        this.random = new Random(seed);
        this.lengthMm = lengthMm;
        this.lightness = lightness;
        this.grainL = grainL;
        this.grainLengthMm = grainLengthMm;
    }

    MadeTint with(Line line) {
        lines.add(line);
        return this;
    }

    MadeTint with(Band band) {
        bands.add(band);
        return this;
    }

    MadeTint with(Hair hair) {
        hairs.add(hair);
        return this;
    }

    /** Light of what lies beside the tint, falling off from its ends. */
    MadeTint withGlowAtEnds(double share, double reachMm) {
        glow = share;
        glowMm = reachMm;
        return this;
    }

    MadeTint withDust(int specks) {
        dust = specks;
        return this;
    }

    TintTrace trace(String id, Rgb8 rgb, Along along) {
        return trace(id, rgb, along, 20);
    }

    TintTrace trace(String id, Rgb8 rgb, Along along, double acrossMm) {
        int bins = (int) (lengthMm / STEP_MM);
        float[][][] light = new float[STRIPS][3][bins];
        double reflectance = Lab.luminanceFactor(lightness);
        double perL = 3 / (lightness + 16);
        for (int s = 0; s < STRIPS; s++) {
            double[] grain = grain(bins);
            for (int i = 0; i < bins; i++) {
                double at = (i + 0.5) * STEP_MM;
                double value = 1 + perL * grain[i] + 0.01 * Math.sin(at / 60);
                value += glow * (Math.exp(-at / glowMm) + Math.exp((at - lengthMm) / glowMm));
                for (Line line : lines) {
                    value += line.contrast() * box(at - line.atMm(), line.widthMm());
                }
                for (Hair hair : hairs) {
                    boolean here = s >= hair.firstStrip() && s < hair.firstStrip() + hair.strips();
                    value += here ? -hair.contrast() * box(at - hair.atMm(), 0.06) : 0;
                }
                for (Band band : bands) {
                    value +=
                            perL
                                    * band.amplitudeL()
                                    * Math.sin(2 * Math.PI * (at / band.periodMm() + band.phase()));
                }
                for (int c = 0; c < 3; c++) {
                    double noise = 0.004 / Math.sqrt(STRIP_MM / STEP_MM) * random.nextGaussian();
                    light[s][c][i] = (float) (reflectance * (value + noise));
                }
            }
        }
        for (int d = 0; d < dust; d++) {
            int strip = random.nextInt(STRIPS);
            int at = random.nextInt(bins - 10);
            float loss = 1 - 0.3f * random.nextFloat();
            for (int i = at; i < at + 2 + random.nextInt(6); i++) {
                for (int c = 0; c < 3; c++) {
                    light[strip][c][i] *= loss;
                }
            }
        }
        return new TintTrace(id, rgb, along, STEP_MM / 2, STEP_MM, acrossMm, lightness, light);
    }

    /** Box behind blur, as pixels average it. */
    private static double box(double atMm, double widthMm) {
        double sum = 0;
        for (int k = -2; k <= 2; k++) {
            sum += LineFilter.shape(atMm + k * STEP_MM / 5, widthMm, SIGMA_MM) / 5;
        }
        return sum;
    }

    /**
     * Mean over a strip of grain that is smoothed by a Gaussian in both directions, then by optics.
     */
    private double[] grain(int bins) {
        double length = Math.hypot(grainLengthMm, SIGMA_MM);
        double left = grainLengthMm / length;
        int reach = (int) Math.ceil(4 * length / STEP_MM);
        double[] white = new double[bins + 2 * reach];
        for (int i = 0; i < white.length; i++) {
            white[i] = random.nextGaussian();
        }
        double squares = 0;
        double[] kernel = new double[2 * reach + 1];
        for (int k = -reach; k <= reach; k++) {
            kernel[k + reach] = Math.exp(-Math.pow(k * STEP_MM / length, 2) / 2);
            squares += kernel[k + reach] * kernel[k + reach];
        }
        double mean = Math.sqrt(length * Math.sqrt(4 * Math.PI) / STRIP_MM);
        double scale = grainL * left * mean / Math.sqrt(squares);
        double[] out = new double[bins];
        for (int i = 0; i < bins; i++) {
            for (int k = 0; k < kernel.length; k++) {
                out[i] += scale * kernel[k] * white[i + k];
            }
        }
        return out;
    }
}
