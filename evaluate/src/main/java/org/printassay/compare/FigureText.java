package org.printassay.compare;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as sentences have them, in plain characters. */
final class FigureText {
    private FigureText() {}

    /** A value with its unit. */
    static String value(Figure figure, double value) {
        String number = number(value, figure.decimals(value));
        return switch (figure.unit()) {
            case "", "steps" -> number;
            case "levels" -> "level " + number;
            case "per mm" -> number + " per mm";
            default -> figure.unit() + " " + number;
        };
    }

    /** The size of a difference with its 95 % half-width, where it has one. */
    static String interval(Difference d) {
        Figure figure = d.figure();
        String size = number(Math.abs(d.value()), figure.decimals(d.value()));
        Double half = d.halfWidth();
        String within = half == null ? size : size + " +- " + number(half, figure.decimals(half));
        return switch (figure.unit()) {
            case "" -> within;
            case "levels", "steps", "per mm" -> within + " " + figure.unit();
            default -> figure.unit() + " " + within;
        };
    }

    private static String number(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        String plain = rounded.setScale(Math.max(0, decimals)).toPlainString();
        return rounded.signum() == 0 ? plain.replace("-", "") : plain;
    }
}
