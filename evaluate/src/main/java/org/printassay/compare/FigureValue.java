package org.printassay.compare;

import org.jspecify.annotations.Nullable;

/**
 * One figure of one print with where its uncertainty comes from, split by what happens to it when
 * prints are compared (ISO/IEC Guide 98-3, 5.2: correlated inputs).
 *
 * @param figure which
 * @param value in the unit of the figure; gamut volume in cubic CIELAB units
 * @param random standard uncertainty that would be another if the same print were read again; null
 *     when one print does not tell it
 * @param systematic standard uncertainty that prints read alike share; 0 when there is none
 */
public record FigureValue(Figure figure, double value, @Nullable Double random, double systematic) {
    public FigureValue {
        if (!Double.isFinite(value) || !Double.isFinite(systematic) || systematic < 0) {
            throw new IllegalArgumentException(
                    figure.key() + ": needs finite numbers, got " + value + ", " + systematic);
        }
        if (random != null && !(random >= 0 && Double.isFinite(random))) {
            throw new IllegalArgumentException(figure.key() + ": random part is " + random);
        }
    }

    /** Standard uncertainty of the value by itself; null when the random part is not known. */
    public @Nullable Double standard() {
        return random == null ? null : Math.hypot(random, systematic);
    }
}
