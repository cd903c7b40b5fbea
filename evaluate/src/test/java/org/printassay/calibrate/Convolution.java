package org.printassay.calibrate;

import java.util.function.DoubleUnaryOperator;

/**
 * Convolution of a picture with any round kernel by Fourier transform, for simulated scans. Shares
 * nothing with the blur of the correction.
 */
public final class Convolution {
    private static final int N = 1024;
    private final double[] kernelRe = new double[N * N];
    private final double[] kernelIm = new double[N * N];

    /**
     * @param byRadius weight by distance in millimetres, any scale
     */
    public Convolution(DoubleUnaryOperator byRadius, double stepMm) {
        double sum = 0;
        for (int y = 0; y < N; y++) {
            for (int x = 0; x < N; x++) {
                double dx = Math.min(x, N - x) * stepMm;
                double dy = Math.min(y, N - y) * stepMm;
                kernelRe[y * N + x] = byRadius.applyAsDouble(Math.hypot(dx, dy));
                sum += kernelRe[y * N + x];
            }
        }
        for (int i = 0; i < kernelRe.length; i++) {
            kernelRe[i] /= sum;
        }
        transform(kernelRe, kernelIm, false);
    }

    public static Convolution gaussian(double sigmaMm, double stepMm) {
        return new Convolution(r -> Math.exp(-r * r / (2 * sigmaMm * sigmaMm)), stepMm);
    }

    /** Long tails: falls to 1/e in every {@code lengthMm}. */
    public static Convolution exponential(double lengthMm, double stepMm) {
        return new Convolution(r -> Math.exp(-r / lengthMm), stepMm);
    }

    /** The picture blurred; beyond it everything has the value {@code outside}. */
    public float[] of(float[] picture, int columns, int rows, double outside) {
        double[] re = new double[N * N];
        double[] im = new double[N * N];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                re[y * N + x] = picture[y * columns + x] - outside;
            }
        }
        transform(re, im, false);
        for (int i = 0; i < re.length; i++) {
            double r = re[i] * kernelRe[i] - im[i] * kernelIm[i];
            im[i] = re[i] * kernelIm[i] + im[i] * kernelRe[i];
            re[i] = r;
        }
        transform(re, im, true);
        float[] result = new float[picture.length];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                result[y * columns + x] = (float) (re[y * N + x] / ((double) N * N) + outside);
            }
        }
        return result;
    }

    private static void transform(double[] re, double[] im, boolean inverse) {
        double[] lineRe = new double[N];
        double[] lineIm = new double[N];
        for (int y = 0; y < N; y++) {
            System.arraycopy(re, y * N, lineRe, 0, N);
            System.arraycopy(im, y * N, lineIm, 0, N);
            line(lineRe, lineIm, inverse);
            System.arraycopy(lineRe, 0, re, y * N, N);
            System.arraycopy(lineIm, 0, im, y * N, N);
        }
        for (int x = 0; x < N; x++) {
            for (int y = 0; y < N; y++) {
                lineRe[y] = re[y * N + x];
                lineIm[y] = im[y * N + x];
            }
            line(lineRe, lineIm, inverse);
            for (int y = 0; y < N; y++) {
                re[y * N + x] = lineRe[y];
                im[y * N + x] = lineIm[y];
            }
        }
    }

    private static void line(double[] re, double[] im, boolean inverse) {
        for (int i = 1, j = 0; i < N; i++) {
            int bit = N >> 1;
            for (; (j & bit) != 0; bit >>= 1) {
                j ^= bit;
            }
            j ^= bit;
            if (i < j) {
                double swap = re[i];
                re[i] = re[j];
                re[j] = swap;
                swap = im[i];
                im[i] = im[j];
                im[j] = swap;
            }
        }
        for (int size = 2; size <= N; size *= 2) {
            double angle = (inverse ? 2 : -2) * Math.PI / size;
            for (int k = 0; k < size / 2; k++) {
                double cos = Math.cos(angle * k);
                double sin = Math.sin(angle * k);
                for (int i = k; i < N; i += size) {
                    int j = i + size / 2;
                    double r = re[j] * cos - im[j] * sin;
                    double s = re[j] * sin + im[j] * cos;
                    re[j] = re[i] - r;
                    im[j] = im[i] - s;
                    re[i] += r;
                    im[i] += s;
                }
            }
        }
    }
}
