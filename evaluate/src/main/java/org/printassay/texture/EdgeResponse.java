package org.printassay.texture;

import java.util.ArrayList;
import java.util.List;

/**
 * Modulation left by frequency, 1 at frequency 0.
 *
 * @param stepPerMm frequency from value to value, cycles per millimetre; the first is 0
 * @param modulation values
 * @param halfPerMm frequency at which half of the modulation is left; NaN when it never falls so
 *     far
 */
public record EdgeResponse(double stepPerMm, List<Double> modulation, double halfPerMm) {
    /** The response is followed down to this. */
    private static final double LOWEST = 0.05;

    public EdgeResponse {
        modulation = List.copyOf(modulation);
    }

    /**
     * From an edge spread function.
     *
     * @param spread light by distance, 0 to 1, the edge in the middle
     * @param binMm from value to value
     */
    static EdgeResponse of(double[] spread, double binMm, double stepPerMm) {
        int n = spread.length;
        double[] line = new double[n];
        double total = 0;
        for (int i = 1; i < n - 1; i++) {
            // Hamming window, as ISO 12233 has it.
            double window = 0.54 + 0.46 * Math.cos(2 * Math.PI * (i - (n - 1) / 2.0) / (n - 1));
            line[i] = window * (spread[i + 1] - spread[i - 1]);
            total += line[i];
        }
        List<Double> response = new ArrayList<>();
        double half = Double.NaN;
        double highest = 0.4 / binMm;
        for (int k = 0; k * stepPerMm <= highest; k++) {
            double f = k * stepPerMm;
            double re = 0;
            double im = 0;
            for (int i = 1; i < n - 1; i++) {
                double angle = 2 * Math.PI * f * i * binMm;
                re += line[i] * Math.cos(angle);
                im += line[i] * Math.sin(angle);
            }
            double value =
                    Math.hypot(re, im) / Math.abs(total) / sinc(2 * f * binMm) / sinc(f * binMm);
            if (k > 0 && Double.isNaN(half) && value <= 0.5) {
                double before = response.get(k - 1);
                half = stepPerMm * (k - 1 + (before - 0.5) / (before - value));
            }
            response.add(value);
            if (value < LOWEST) {
                break;
            }
        }
        return new EdgeResponse(stepPerMm, response, half);
    }

    /** Modulation left at a frequency; that of the last value beyond the end. */
    public double at(double perMm) {
        double at = Math.max(0, perMm / stepPerMm);
        int left = (int) Math.min(modulation.size() - 1.0, Math.floor(at));
        int right = Math.min(modulation.size() - 1, left + 1);
        double share = Math.min(1, at - left);
        return (1 - share) * modulation.get(left) + share * modulation.get(right);
    }

    private static double sinc(double x) {
        return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    }
}
