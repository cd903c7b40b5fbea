package org.printassay.compare;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as sentences have them, in plain characters. */
final class FigureText {
    private FigureText() {}

    /** A value with its unit. */
    static String value(Figure figure, double value) {
        String number = number(value, decimals(figure, value));
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
        String size = number(Math.abs(d.value()), decimals(figure, d.value()));
        Double half = d.halfWidth();
        String within = half == null ? size : size + " +- " + number(half, decimals(figure, half));
        return switch (figure.unit()) {
            case "" -> within;
            case "levels", "steps", "per mm" -> within + " " + figure.unit();
            default -> figure.unit() + " " + within;
        };
    }

    /** Means of whole numbers, and their intervals, are no whole numbers. */
    private static int decimals(Figure figure, double value) {
        boolean broken = figure.whole() && value != Math.rint(value);
        return broken ? figure.decimals() + 1 : figure.decimals();
    }

    private static String number(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        String plain = rounded.setScale(Math.max(0, decimals)).toPlainString();
        return rounded.signum() == 0 ? plain.replace("-", "") : plain;
    }
}
