package org.printassay.texture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.printassay.robust.Median;

/**
 * Responses of several edges of one direction, taken together by their medians.
 *
 * @param edges any number of them, their frequencies the same
 */
public record EdgeResponses(List<EdgeResponse> edges) {
    public EdgeResponses {
        edges = List.copyOf(edges);
    }

    /** Frequency at which half of the modulation is left; null where no edge falls so far. */
    public @Nullable Double halfPerMm() {
        double[] values =
                edges.stream()
                        .mapToDouble(EdgeResponse::halfPerMm)
                        .filter(v -> !Double.isNaN(v))
                        .toArray();
        return values.length == 0 ? null : Double.valueOf(Median.of(values));
    }

    /** Modulation left at a frequency; null without edges. */
    public @Nullable Double at(double perMm) {
        return edges.isEmpty() ? null : Double.valueOf(median(perMm));
    }

    private double median(double perMm) {
        return Median.of(edges.stream().mapToDouble(edge -> edge.at(perMm)).toArray());
    }

    /**
     * Modulation left, from frequency 0 on.
     *
     * @param every so many of the responses' own steps from value to value
     * @param highestPerMm what the sampling carries
     * @return empty without edges
     */
    public List<Double> curve(int every, double highestPerMm) {
        List<Double> curve = new ArrayList<>();
        if (!edges.isEmpty()) {
            double step = every * edges.get(0).stepPerMm();
            for (int k = 0; k * step <= highestPerMm; k++) {
                curve.add(median(k * step));
            }
        }
        return curve;
    }
}
