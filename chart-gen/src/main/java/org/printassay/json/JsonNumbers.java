package org.printassay.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.NullNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/** Numbers of results as files have them: rounded, never in exponent notation. */
public final class JsonNumbers {
    /** Below this a double tells every unit apart. */
    private static final double EXACT_BELOW = 1e15;

    private JsonNumbers() {}

    /** With up to so many decimals; JSON's null for nothing, and for what is no number. */
    public static JsonNode decimal(@Nullable Double value, int decimals) {
        if (value == null || !Double.isFinite(value)) {
            return NullNode.instance;
        }
        BigDecimal shortest = rounded(value, decimals).stripTrailingZeros();
        return DecimalNode.valueOf(shortest.scale() < 0 ? shortest.setScale(0) : shortest);
    }

    /** With just so many decimals, for files of other kinds beside JSON. */
    public static BigDecimal rounded(double value, int decimals) {
        double units = value * Math.pow(10, decimals);
        return Math.abs(units) < EXACT_BELOW
                ? BigDecimal.valueOf(Math.round(units), decimals)
                : BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    }
}
