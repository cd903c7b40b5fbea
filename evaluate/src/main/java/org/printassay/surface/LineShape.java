package org.printassay.surface;

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
    private static final double AROUND_MM = 0.6;

    static LineShape fit(LineTrace trace, LineTrace.Candidate line) {
        double[] values = trace.departures();
        TintTrace tint = trace.tint();
        double reach = AROUND_MM + line.widthMm();
        int from = (int) Math.max(0, Math.ceil(tint.binOf(line.positionMm() - reach)));
        int to =
                (int)
                        Math.min(
                                values.length - 1.0,
                                Math.floor(tint.binOf(line.positionMm() + reach)));
        double noise = Baseline.deviation(values);
        double best = Double.POSITIVE_INFINITY;
        int count = (int) (Math.log(WIDEST_MM / NARROWEST_MM) / Math.log(RATIO)) + 1;
        double[] misfits = new double[count];
        double[] contrasts = new double[count];
        for (int k = 0; k < count; k++) {
            double width = NARROWEST_MM * Math.pow(RATIO, k);
            double[] fitted = amplitude(values, tint, line.positionMm(), width, trace, from, to);
            contrasts[k] = fitted[0];
            misfits[k] = fitted[1];
            best = Math.min(best, misfits[k]);
        }
        double weights = 0;
        double logWidth = 0;
        double area = 0;
        for (int k = 0; k < count; k++) {
            double width = NARROWEST_MM * Math.pow(RATIO, k);
            double variance = Math.max(noise * noise, 1e-12);
            double weight = Math.exp(-(misfits[k] - best) / (2 * variance));
            weights += weight;
            logWidth += weight * Math.log(width);
            area += weight * width * contrasts[k];
        }
        double width = Math.exp(logWidth / weights);
        return new LineShape(width, area / weights / width);
    }

    /** Contrast that fits best at a width, and the sum of squares left. */
    private static double[] amplitude(
            double[] values,
            TintTrace tint,
            double atMm,
            double widthMm,
            LineTrace trace,
            int from,
            int to) {
        int n = to - from + 1;
        double meanShape = 0;
        double meanValue = 0;
        double[] shape = new double[n];
        for (int i = 0; i < n; i++) {
            shape[i] = LineFilter.shape(tint.positionMm(from + i) - atMm, widthMm, trace.sigmaMm());
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
