package org.printassay.calibrate;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Convolution of a picture with any kernel, alike to both sides, by Fourier transform, for
 * simulated scans. Shares nothing with the blur of the correction.
 */
public final class Convolution {
    private static final int N = 1024;
    private static final int TOGETHER = 16;
    private static final double[] COSINE = turns(Math::cos);
    private static final double[] SINE = turns(Math::sin);
    private final double[] kernelRe = new double[N * N];
    private final double[] kernelIm = new double[N * N];

    /**
     * @param byRadius weight by distance in millimetres, any scale
     */
    public Convolution(DoubleUnaryOperator byRadius, double stepMm) {
        this((x, y) -> byRadius.applyAsDouble(Math.hypot(x, y)), stepMm);
    }

    private Convolution(DoubleBinaryOperator byOffset, double stepMm) {
        double sum = 0;
        for (int y = 0; y < N; y++) {
            for (int x = 0; x < N; x++) {
                double dx = Math.min(x, N - x) * stepMm;
                double dy = Math.min(y, N - y) * stepMm;
                kernelRe[y * N + x] = byOffset.applyAsDouble(dx, dy);
                sum += kernelRe[y * N + x];
            }
        }
        for (int i = 0; i < kernelRe.length; i++) {
            kernelRe[i] /= sum;
        }
        transform(kernelRe, kernelIm, false);
    }

    private static double[] turns(DoubleUnaryOperator of) {
        return IntStream.range(0, N / 2)
                .mapToDouble(k -> of.applyAsDouble(2 * Math.PI * k / N))
                .toArray();
    }

    public static Convolution gaussian(double sigmaMm, double stepMm) {
        return new Convolution(r -> Math.exp(-r * r / (2 * sigmaMm * sigmaMm)), stepMm);
    }

    /** Long tails: falls to 1/e in every {@code lengthMm}. */
    public static Convolution exponential(double lengthMm, double stepMm) {
        return new Convolution(r -> Math.exp(-r / lengthMm), stepMm);
    }

    /** The same, farther across or down the picture. */
    public static Convolution exponential(double acrossMm, double downMm, double stepMm) {
        return new Convolution((x, y) -> Math.exp(-Math.hypot(x / acrossMm, y / downMm)), stepMm);
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
        // Columns several at a time, for memory is read by rows.
        double[][] columnsRe = new double[TOGETHER][N];
        double[][] columnsIm = new double[TOGETHER][N];
        for (int x = 0; x < N; x += TOGETHER) {
            for (int y = 0; y < N; y++) {
                for (int k = 0; k < TOGETHER; k++) {
                    columnsRe[k][y] = re[y * N + x + k];
                    columnsIm[k][y] = im[y * N + x + k];
                }
            }
            for (int k = 0; k < TOGETHER; k++) {
                line(columnsRe[k], columnsIm[k], inverse);
            }
            for (int y = 0; y < N; y++) {
                for (int k = 0; k < TOGETHER; k++) {
                    re[y * N + x + k] = columnsRe[k][y];
                    im[y * N + x + k] = columnsIm[k][y];
                }
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
            for (int k = 0; k < size / 2; k++) {
                double cos = COSINE[k * (N / size)];
                double sin = inverse ? SINE[k * (N / size)] : -SINE[k * (N / size)];
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
