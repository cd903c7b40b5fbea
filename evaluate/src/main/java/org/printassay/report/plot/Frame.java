package org.printassay.report.plot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.printassay.report.draw.Drawing;
import org.printassay.report.draw.Ink;
import org.printassay.report.draw.Mark;

/**
 * A rectangle of a drawing with linear axes; y grows upwards.
 *
 * @param left left edge in units of the drawing
 * @param top top edge
 * @param width of the rectangle
 * @param height of the rectangle
 * @param xLow value at the left edge
 * @param xHigh value at the right edge
 * @param yLow value at the bottom edge
 * @param yHigh value at the top edge
 */
record Frame(
        double left,
        double top,
        double width,
        double height,
        double xLow,
        double xHigh,
        double yLow,
        double yHigh) {
    private static final double LABEL_GAP = 7;

    double x(double value) {
        return left + (value - xLow) / (xHigh - xLow) * width;
    }

    double y(double value) {
        return top + height - (value - yLow) / (yHigh - yLow) * height;
    }

    /** The point of two values, kept inside the rectangle. */
    Mark.Point point(double xValue, double yValue) {
        double inside = Math.min(yHigh, Math.max(yLow, yValue));
        return new Mark.Point(x(xValue), y(inside));
    }

    double bottom() {
        return top + height;
    }

    double right() {
        return left + width;
    }

    /** Horizontal lines with their values, and what they are at the top left. */
    void yAxis(Drawing d, double step, String name) {
        for (double v = first(yLow, step); v <= yHigh + step * 1e-6; v += step) {
            boolean zero = Math.abs(v) < step * 1e-6;
            d.line(left, y(v), right(), y(v), zero ? Ink.AXIS : Ink.GRID);
            d.text(left - LABEL_GAP, y(v) + 4, Mark.Anchor.END, Ink.TEXT_QUIET, label(v, step));
        }
        d.text(0, top - 11, Mark.Anchor.START, Ink.TEXT_QUIET, name);
    }

    /** Ticks below with their values, and what they are at the right end of the next line. */
    void xAxis(Drawing d, double step, String name) {
        d.line(left, bottom(), right(), bottom(), Ink.AXIS);
        for (double v = first(xLow, step); v <= xHigh + step * 1e-6; v += step) {
            d.line(x(v), bottom(), x(v), bottom() + 4, Ink.AXIS);
            d.text(x(v), bottom() + 18, Mark.Anchor.MIDDLE, Ink.TEXT_QUIET, label(v, step));
        }
        d.text(right(), bottom() + 36, Mark.Anchor.END, Ink.TEXT_QUIET, name);
    }

    /** A step of 1, 2 or 5 times a power of ten that divides a span into at most so many parts. */
    static double step(double span, int parts) {
        double rough = span / parts;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double factor : new double[] {1, 2, 5}) {
            if (rough <= factor * power * (1 + 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    static String label(double value, double step) {
        int decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() < 0 ? "\u2212" : "") + rounded.abs().toPlainString();
    }

    private static double first(double low, double step) {
        return Math.ceil(low / step - 1e-6) * step;
    }
}
