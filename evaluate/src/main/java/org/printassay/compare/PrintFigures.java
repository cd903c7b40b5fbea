package org.printassay.compare;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.printassay.evaluation.Evaluation;

/**
 * The figures of one print that others can be compared with. Figures that were not judged are not
 * there.
 */
public final class PrintFigures {
    private final Map<Figure, FigureValue> values;

    private PrintFigures(Map<Figure, FigureValue> values) {
        this.values = values;
    }

    /** Every figure that an evaluation gives. */
    public static PrintFigures of(Evaluation evaluation) {
        Collected collected = new Collected(new EnumMap<>(Figure.class));
        Uncertainties uncertainties = new Uncertainties(evaluation);
        new ToneFigures(evaluation, uncertainties).collect(collected);
        new ColourFigures(evaluation, uncertainties).collect(collected);
        SurfaceFigures.collect(evaluation, uncertainties, collected);
        return new PrintFigures(collected.values);
    }

    /** One of them; empty when it was not judged. */
    public Optional<FigureValue> get(Figure figure) {
        return Optional.ofNullable(values.get(figure));
    }

    /** All of them, in the order of {@link Figure}. */
    public List<FigureValue> all() {
        return List.copyOf(values.values());
    }

    /** Where figures are put as they are found. */
    record Collected(Map<Figure, FigureValue> values) {
        void put(Figure figure, @Nullable Number value, Uncertainties.Split uncertainty) {
            put(figure, value, uncertainty.random(), uncertainty.systematic());
        }

        void put(
                Figure figure, @Nullable Number value, @Nullable Double random, double systematic) {
            if (value != null && Double.isFinite(value.doubleValue())) {
                values.put(
                        figure, new FigureValue(figure, value.doubleValue(), random, systematic));
            }
        }
    }
}
