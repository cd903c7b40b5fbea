package org.printassay.demo.flatbed;

import java.util.stream.IntStream;

/**
 * Circular convolution of small square images by the fast Fourier transform (radix 2, Cooley and
 * Tukey 1965).
 */
final class Fourier {
    private final int side;

    /** For images of {@code side} x {@code side}, a power of two. */
    Fourier(int side) {
        this.side = side;
    }

    /**
     * Convolves.
     *
     * @param image row by row, replaced by the result
     * @param kernel row by row, its middle at the first cell, wrapped around
     */
    void convolve(double[] image, double[] kernel) {
        double[] imageIm = new double[image.length];
        double[] kernelRe = kernel.clone();
        double[] kernelIm = new double[kernel.length];
        transform(image, imageIm, false);
        transform(kernelRe, kernelIm, false);
        double scale = 1.0 / image.length;
        for (int i = 0; i < image.length; i++) {
            double re = image[i] * kernelRe[i] - imageIm[i] * kernelIm[i];
            imageIm[i] = scale * (image[i] * kernelIm[i] + imageIm[i] * kernelRe[i]);
            image[i] = scale * re;
        }
        transform(image, imageIm, true);
    }

    private void transform(double[] re, double[] im, boolean back) {
        IntStream.range(0, side).parallel().forEach(row -> line(re, im, row * side, 1, back));
        IntStream.range(0, side).parallel().forEach(column -> line(re, im, column, side, back));
    }

    private void line(double[] re, double[] im, int start, int step, boolean back) {
        double[] a = new double[side];
        double[] b = new double[side];
        int shift = 32 - Integer.numberOfTrailingZeros(side);
        for (int i = 0; i < side; i++) {
            int to = Integer.reverse(i) >>> shift;
            a[to] = re[start + i * step];
            b[to] = im[start + i * step];
        }
        for (int half = 1; half < side; half *= 2) {
            double angle = (back ? Math.PI : -Math.PI) / half;
            for (int k = 0; k < half; k++) {
                double cos = Math.cos(angle * k);
                double sin = Math.sin(angle * k);
                for (int i = k; i < side; i += 2 * half) {
                    double c = a[i + half] * cos - b[i + half] * sin;
                    double s = a[i + half] * sin + b[i + half] * cos;
                    a[i + half] = a[i] - c;
                    b[i + half] = b[i] - s;
                    a[i] += c;
                    b[i] += s;
                }
            }
        }
        for (int i = 0; i < side; i++) {
            re[start + i * step] = a[i];
            im[start + i * step] = b[i];
        }
    }
}
