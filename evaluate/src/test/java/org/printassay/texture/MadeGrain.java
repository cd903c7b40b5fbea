package org.printassay.texture;

import java.util.Random;

/** Grain as a scan at 600 samples an inch shows it, simulated. */
final class MadeGrain {
    static final double PITCH_MM = 25.4 / 600;
    private static final int FINER = 2;

    private MadeGrain() {}

    /**
     * A flat area with grain.
     *
     * @param side pixels
     * @param deviation of dY/Y before the optics
     * @param lengthMm white noise smoothed by a Gaussian of this standard deviation
     * @param blurMm optics, standard deviation of a Gaussian
     * @param noise standard deviation of the sensor's noise, relative
     */
    static PixelTile tile(
            Random random,
            int side,
            double deviation,
            double lengthMm,
            double blurMm,
            double noise) {
        double step = PITCH_MM / FINER;
        double length = Math.hypot(lengthMm, blurMm);
        int reach = (int) Math.ceil(4 * length / step);
        int inner = side * FINER;
        int outer = inner + 2 * reach;
        double[] kernel = new double[2 * reach + 1];
        double squares = 0;
        for (int k = -reach; k <= reach; k++) {
            kernel[k + reach] = Math.exp(-Math.pow(k * step / length, 2) / 2);
            squares += kernel[k + reach] * kernel[k + reach];
        }
        double scale = deviation * lengthMm / length / squares;
        double[][] across = new double[outer][inner];
        double[] white = new double[outer];
        for (int y = 0; y < outer; y++) {
            for (int x = 0; x < outer; x++) {
                white[x] = random.nextGaussian();
            }
            for (int x = 0; x < inner; x++) {
                for (int k = 0; k < kernel.length; k++) {
                    across[y][x] += kernel[k] * white[x + k];
                }
            }
        }
        float[] light = new float[side * side];
        for (int y = 0; y < inner; y++) {
            for (int x = 0; x < inner; x++) {
                double sum = 0;
                for (int k = 0; k < kernel.length; k++) {
                    sum += kernel[k] * across[y + k][x];
                }
                light[y / FINER * side + x / FINER] += (float) (scale * sum / (FINER * FINER));
            }
        }
        for (int i = 0; i < light.length; i++) {
            light[i] = (float) (0.3 * (1 + light[i] + noise * random.nextGaussian()));
        }
        return new PixelTile(side, side, 1 / PITCH_MM, new PixelTile.Pixels(light));
    }
}
