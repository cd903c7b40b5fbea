package org.printassay.demo.flatbed;

/** Gaussian blur of small planes, separable; edges repeat. */
final class Blur {
    private final float[] kernel;

    /** Of a standard deviation in cells. */
    Blur(double sigma) {
        int reach = reach(sigma);
        kernel = new float[reach + 1];
        double[] weights = new double[reach + 1];
        double sum = 0;
        int parts = 16;
        for (int k = 0; k <= reach && sigma > 0; k++) {
            for (int p = 0; p < parts; p++) {
                double x = (k - 0.5 + (p + 0.5) / parts) / sigma;
                weights[k] += Math.exp(-x * x / 2);
            }
            sum += k == 0 ? weights[k] : 2 * weights[k];
        }
        for (int k = 0; k <= reach; k++) {
            kernel[k] = sigma > 0 ? (float) (weights[k] / sum) : 1;
        }
    }

    /** Cells on either side that matter; 0 for next to no blur. */
    static int reach(double sigma) {
        return sigma < 0.12 ? 0 : (int) Math.ceil(3.5 * sigma);
    }

    /**
     * Blurs the cells of a plane that are wanted; returns a new plane, or the same when there is
     * nothing to do.
     */
    float[] apply(float[] plane, int width, Spans wanted) {
        if (kernel.length == 1) {
            return plane;
        }
        int height = wanted.rows();
        float[] across = new float[plane.length];
        for (int y = 0; y < height; y++) {
            acrossRow(plane, across, y * width, width, wanted.from(y), wanted.to(y));
        }
        float[] out = new float[plane.length];
        for (int y = 0; y < height; y++) {
            int row = y * width;
            int from = wanted.from(y);
            int to = wanted.to(y);
            for (int x = from; x < to; x++) {
                out[row + x] = kernel[0] * across[row + x];
            }
            for (int k = 1; k < kernel.length; k++) {
                int above = Math.max(0, y - k) * width;
                int below = Math.min(height - 1, y + k) * width;
                float weight = kernel[k];
                for (int x = from; x < to; x++) {
                    out[row + x] += weight * (across[above + x] + across[below + x]);
                }
            }
        }
        return out;
    }

    private void acrossRow(float[] plane, float[] out, int row, int width, int from, int to) {
        for (int x = from; x < to; x++) {
            out[row + x] = kernel[0] * plane[row + x];
        }
        for (int k = 1; k < kernel.length; k++) {
            float weight = kernel[k];
            int inner = Math.min(to, Math.max(from, k));
            int outer = Math.max(inner, Math.min(to, width - k));
            for (int x = from; x < inner; x++) {
                out[row + x] += weight * (plane[row] + plane[row + Math.min(width - 1, x + k)]);
            }
            for (int x = inner; x < outer; x++) {
                out[row + x] += weight * (plane[row + x - k] + plane[row + x + k]);
            }
            for (int x = outer; x < to; x++) {
                out[row + x] += weight * (plane[row + x - k] + plane[row + width - 1]);
            }
        }
    }
}
