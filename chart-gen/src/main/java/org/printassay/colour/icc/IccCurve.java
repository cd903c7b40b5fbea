package org.printassay.colour.icc;

import java.util.List;

/**
 * A one-dimensional curve, fraction to fraction. Inputs and results are held within 0-1, the domain
 * and range of the standard; never NaN.
 */
interface IccCurve {
    /** Most points a table may have; the standard's lut16 stops at 4096, curv goes on. */
    int MAX_POINTS = 65536;

    /** Result for an input, exact. */
    double at(double x);

    /** Result for an input, in {@link Words} where the curve is a table. */
    default double inWords(double x) {
        return at(x);
    }

    /**
     * The curve from results to the inputs that give them or come nearest. Where several do, the
     * one furthest along: light that a scanner or screen cannot tell from black counts as its last
     * black code. Exact for formulas; of tables see {@link TableCurve#turned}.
     */
    IccCurve turned();

    /** A curve for each of the first values, exact. */
    static Step exact(List<IccCurve> curves) {
        IccCurve[] all = curves.toArray(new IccCurve[0]);
        return v -> {
            for (int i = 0; i < all.length; i++) {
                v[i] = all[i].at(v[i]);
            }
        };
    }

    /** A curve for each of the first values, as {@link #inWords(double)}. */
    static Step inWords(List<IccCurve> curves) {
        IccCurve[] all = curves.toArray(new IccCurve[0]);
        return v -> {
            for (int i = 0; i < all.length; i++) {
                v[i] = all[i].inWords(v[i]);
            }
        };
    }

    /** A curve and how many bytes its element took. */
    record Parsed(IccCurve curve, long length) {}

    /** Reads a {@code curv} or {@code para} element (ISO 15076-1, 10.6 and 10.18). */
    static Parsed parse(IccBytes in) throws IccException {
        String type = in.ascii(0, 4);
        return switch (type) {
            case "curv" -> table(in);
            case "para" -> parametric(in);
            default -> throw in.fault(0, "expected a curve, found element type '" + type + "'");
        };
    }

    /** Holds a value within 0-1; 0 for NaN. */
    static double clamp(double x) {
        return x > 0 ? Math.min(x, 1) : 0;
    }

    private static Parsed table(IccBytes in) throws IccException {
        long count = in.u32(8);
        if (count > MAX_POINTS) {
            throw in.fault(8, "a curve of " + count + " points; at most 65536 make sense");
        }
        IccBytes data = in.part(12, 2 * count);
        long length = 12 + 2 * count;
        if (count == 0) {
            return new Parsed(FormulaCurve.IDENTITY, length);
        }
        if (count == 1) {
            double gamma = data.u16(0) / 256.0;
            if (gamma == 0) {
                throw in.fault(12, "a curve with exponent 0");
            }
            return new Parsed(FormulaCurve.power(gamma), length);
        }
        char[] points = new char[(int) count];
        for (int i = 0; i < points.length; i++) {
            points[i] = (char) data.u16(2L * i);
        }
        return new Parsed(new TableCurve(points), length);
    }

    private static Parsed parametric(IccBytes in) throws IccException {
        int kind = in.u16(8);
        int[] counts = {1, 3, 4, 5, 7};
        if (kind >= counts.length) {
            throw in.fault(8, "parametric curve of unknown kind " + kind);
        }
        double[] p = new double[7];
        for (int i = 0; i < counts[kind]; i++) {
            p[i] = in.fixed(12 + 4L * i);
        }
        if (p[0] <= 0 || (kind > 0 && p[1] == 0)) {
            throw in.fault(12, "parametric curve with exponent " + p[0] + " and factor " + p[1]);
        }
        FormulaCurve curve = FormulaCurve.of(kind, p);
        double gap = curve.undefinedAt();
        if (!Double.isNaN(gap)) {
            throw in.fault(12, "parametric curve that gives no number at " + (float) gap);
        }
        return new Parsed(curve, 12 + 4L * counts[kind]);
    }
}
