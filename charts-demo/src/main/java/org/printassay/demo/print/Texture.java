package org.printassay.demo.print;

import java.util.Random;

/**
 * A square of smooth noise: mean 0, standard deviation 1, given correlation length. Each time it is
 * used again it starts at another place, and two of them are added, so that nothing on a page
 * repeats: what repeats would be bands.
 */
public final class Texture {
    private static final int SIDE = 512;

    /** Cells per correlation length. */
    private static final double CELLS_PER_LENGTH = 2;

    /** Ratio of the two periods: no simple fraction. */
    private static final double SECOND_PERIOD = 0.8312;

    private static final double HALF_EACH = Math.sqrt(0.5);

    private final double lengthMm;
    private final float[] first;
    private final float[] second;

    /**
     * New noise.
     *
     * @param lengthMm correlation length (standard deviation of the smoothing)
     * @param random source
     */
    Texture(double lengthMm, Random random) {
        this.lengthMm = lengthMm;
        this.first = smooth(random);
        this.second = smooth(random);
    }

    /** Cell numbers of positions along one axis: of the first square, then of the second. */
    public int[][] cells(double startMm, double stepMm, int count) {
        int[][] cells = new int[2][count];
        for (int layer = 0; layer < 2; layer++) {
            double cellMm = lengthMm / CELLS_PER_LENGTH * (layer == 0 ? 1 : SECOND_PERIOD);
            for (int i = 0; i < count; i++) {
                int cell = (int) Math.floor((startMm + i * stepMm) / cellMm);
                int start = scrambled(2 * Math.floorDiv(cell, SIDE) + layer);
                cells[layer][i] = Math.floorMod(cell + start, SIDE);
            }
        }
        return cells;
    }

    /** Where a square starts when it is used for the n-th time. */
    private static int scrambled(int n) {
        int mixed = n * 0x9E3779B9;
        mixed ^= mixed >>> 15;
        mixed *= 0x85EBCA6B;
        return (mixed ^ mixed >>> 13) & (SIDE - 1);
    }

    /**
     * Values along a row: at columns found by {@link #cells} and one row of both squares.
     *
     * @param columns of both squares
     * @param from first place in {@code columns} and {@code to}
     * @param after place after the last
     */
    public void along(int[][] columns, int row1, int row2, int from, int after, float[] to) {
        int start1 = row1 * SIDE;
        int start2 = row2 * SIDE;
        int[] columns1 = columns[0];
        int[] columns2 = columns[1];
        for (int i = from; i < after; i++) {
            to[i] = first[start1 + columns1[i]] + second[start2 + columns2[i]];
        }
    }

    private static float[] smooth(Random random) {
        float[] noise = new float[SIDE * SIDE];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        float[] across = new float[noise.length];
        blur(noise, across, 1, SIDE);
        blur(across, noise, SIDE, 1);
        double sum = 0;
        double squares = 0;
        for (float value : noise) {
            sum += value;
            squares += (double) value * value;
        }
        double mean = sum / noise.length;
        double scale = HALF_EACH / Math.sqrt(squares / noise.length - mean * mean);
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) ((noise[i] - mean) * scale);
        }
        return noise;
    }

    private static void blur(float[] in, float[] out, int step, int stride) {
        int reach = (int) Math.ceil(3 * CELLS_PER_LENGTH);
        double[] kernel = new double[reach + 1];
        for (int k = 0; k <= reach; k++) {
            kernel[k] = Math.exp(-k * k / (2 * CELLS_PER_LENGTH * CELLS_PER_LENGTH));
        }
        for (int line = 0; line < SIDE; line++) {
            for (int i = 0; i < SIDE; i++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) {
                    int at = Math.floorMod(i + k, SIDE);
                    sum += kernel[Math.abs(k)] * in[line * stride + at * step];
                }
                out[line * stride + i * step] = (float) sum;
            }
        }
    }
}
