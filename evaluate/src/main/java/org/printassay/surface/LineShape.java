package org.printassay.surface;

import java.util.Arrays;
import java.util.List;

/**
 * Width and contrast of a line by least squares: a box blurred by a known Gaussian on a flat
 * ground. Widths well below the blur fit equally well with a contrast in proportion, so the widths
 * are averaged by how well they fit (their likelihood, no preference in the logarithm of width).
 *
 * @param widthMm width of the box
 * @param contrast dR/R inside it
 */
record LineShape(double widthMm, double contrast) {
    private static final double NARROWEST_MM = 0.03;
    private static final double WIDEST_MM = 2;
    private static final double RATIO = 1.15;
    private static final double AROUND_MM = 1.4;
    private static final double LEAST_VARIANCE = 1e-7;

    /** The same line in one of the tints that show it. */
    record View(LineTrace trace, double positionMm) {}

    /**
     * The width that all tints agree on, and the contrast of the first.
     *
     * @param views the line in each tint that shows it, the clearest first
     */
    static LineShape fit(List<View> views) {
        int count = (int) (Math.log(WIDEST_MM / NARROWEST_MM) / Math.log(RATIO)) + 1;
        double[] misfits = new double[count];
        double[] contrasts = new double[count];
        for (int v = 0; v < views.size(); v++) {
            View view = views.get(v);
            double noise = RunningMedian.deviation(view.trace().departures());
            double variance = Math.max(noise * noise, LEAST_VARIANCE);
            for (int k = 0; k < count; k++) {
                double[] fitted = amplitude(view, width(k));
                misfits[k] += fitted[1] / (2 * variance);
                contrasts[k] = v == 0 ? fitted[0] : contrasts[k];
            }
        }
        double best = Arrays.stream(misfits).min().orElse(0);
        double weights = 0;
        double logWidth = 0;
        double area = 0;
        for (int k = 0; k < count; k++) {
            double weight = Math.exp(best - misfits[k]);
            weights += weight;
            logWidth += weight * Math.log(width(k));
            area += weight * width(k) * contrasts[k];
        }
        double width = Math.exp(logWidth / weights);
        return new LineShape(width, area / weights / width);
    }

    private static double width(int step) {
        return NARROWEST_MM * Math.pow(RATIO, step);
    }

    /** Contrast that fits best at a width, and the sum of squares left. */
    private static double[] amplitude(View view, double widthMm) {
        double[] values = view.trace().departures();
        TintTrace tint = view.trace().tint();
        double atMm = view.positionMm();
        double sigmaMm = view.trace().sigmaMm();
        int from = (int) Math.max(0, Math.ceil(tint.binOf(atMm - AROUND_MM)));
        int to = (int) Math.min(values.length - 1.0, Math.floor(tint.binOf(atMm + AROUND_MM)));
        int n = to - from + 1;
        double meanShape = 0;
        double meanValue = 0;
        double[] shape = new double[n];
        for (int i = 0; i < n; i++) {
            shape[i] = LineFilter.shape(tint.positionMm(from + i) - atMm, widthMm, sigmaMm);
            meanShape += shape[i] / n;
            meanValue += values[from + i] / n;
        }
        double product = 0;
        double squares = 0;
        double total = 0;
        for (int i = 0; i < n; i++) {
            double s = shape[i] - meanShape;
            double v = values[from + i] - meanValue;
            product += s * v;
            squares += s * s;
            total += v * v;
        }
        return new double[] {product / squares, total - product * product / squares};
    }
}
