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

    /** Blurs a plane; returns a new one, or the same when there is nothing to do. */
    float[] apply(float[] plane, int width, int height) {
        if (kernel.length == 1) {
            return plane;
        }
        float[] across = new float[plane.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                float sum = kernel[0] * plane[at];
                for (int k = 1; k < kernel.length; k++) {
                    int left = Math.max(0, x - k);
                    int right = Math.min(width - 1, x + k);
                    sum += kernel[k] * (plane[y * width + left] + plane[y * width + right]);
                }
                across[at] = sum;
            }
        }
        float[] out = new float[plane.length];
        for (int y = 0; y < height; y++) {
            int row = y * width;
            for (int x = 0; x < width; x++) {
                out[row + x] = kernel[0] * across[row + x];
            }
            for (int k = 1; k < kernel.length; k++) {
                int above = Math.max(0, y - k) * width;
                int below = Math.min(height - 1, y + k) * width;
                float weight = kernel[k];
                for (int x = 0; x < width; x++) {
                    out[row + x] += weight * (across[above + x] + across[below + x]);
                }
            }
        }
        return out;
    }
}
