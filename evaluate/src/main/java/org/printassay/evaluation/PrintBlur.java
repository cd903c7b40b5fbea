package org.printassay.evaluation;

import org.printassay.sample.SheetSamples;
import org.printassay.sample.SurfaceSamples;
import org.printassay.texture.EdgeResponses;

/** Blur of print and scan together. */
final class PrintBlur {
    /** Of a good flatbed, where no edge tells (common practice, no source). */
    private static final double USUAL_MM = 0.045;

    private static final double LEAST_MM = 0.015;

    /** From 10 % to 90 % of a step blurred by a Gaussian, in standard deviations. */
    private static final double TEN_TO_NINETY = 2.563;

    /**
     * What the bins of an edge profile add, as a variance: 1.6 to 4.1 times that of one bin, found
     * by simulated edges.
     */
    private static final double BINS = 3 * 0.04 * 0.04 / 12;

    private PrintBlur() {}

    /** Standard deviation of a Gaussian, by slanted edges, else by the edges of the markers. */
    static double sigmaMm(SheetSamples samples) {
        Double half =
                new EdgeResponses(
                                samples.surface().edges().stream()
                                        .map(SurfaceSamples.Edge::response)
                                        .toList())
                        .halfPerMm();
        if (half != null) {
            return Math.sqrt(2 * Math.log(2)) / (2 * Math.PI * half);
        }
        double width = samples.edges().widthMm();
        if (Double.isNaN(width)) {
            return USUAL_MM;
        }
        double sigma = width / TEN_TO_NINETY;
        return Math.max(LEAST_MM, Math.sqrt(Math.max(0, sigma * sigma - BINS)));
    }
}
