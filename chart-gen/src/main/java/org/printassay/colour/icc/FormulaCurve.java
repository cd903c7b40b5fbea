package org.printassay.colour.icc;

/**
 * The parametric curves of ISO 15076-1, 10.18, all in the form of the last one: (a x + b)^g + e
 * from x = d on, c x + f below.
 */
record FormulaCurve(double g, double a, double b, double c, double d, double e, double f)
        implements IccCurve {
    static final FormulaCurve IDENTITY = power(1);

    /** Bases this little below 0 are rounding of the parameters, not a fault. */
    private static final double ROUNDING = 1e-3;

    static FormulaCurve power(double exponent) {
        return new FormulaCurve(exponent, 1, 0, 0, Double.NEGATIVE_INFINITY, 0, 0);
    }

    /**
     * A curve by the standard's table 68.
     *
     * @param kind function type, 0-4
     * @param p parameters in the order of the standard, g first
     */
    static FormulaCurve of(int kind, double[] p) {
        return switch (kind) {
            case 0 -> power(p[0]);
            case 1 -> new FormulaCurve(p[0], p[1], p[2], 0, -p[2] / p[1], 0, 0);
            case 2 -> new FormulaCurve(p[0], p[1], p[2], 0, -p[2] / p[1], p[3], p[3]);
            case 3 -> new FormulaCurve(p[0], p[1], p[2], p[3], p[4], 0, 0);
            default -> new FormulaCurve(p[0], p[1], p[2], p[3], p[4], p[5], p[6]);
        };
    }

    /**
     * A place within 0-1 where a power of a negative number is asked for; NaN when there is none.
     */
    double undefinedAt() {
        double from = Math.max(0, d);
        if (from > 1) {
            return Double.NaN;
        }
        // The base is linear in x, so its ends decide.
        if (a * from + b < -ROUNDING) {
            return from;
        }
        return a + b < -ROUNDING ? 1 : Double.NaN;
    }

    @Override
    public double at(double x) {
        double held = IccCurve.clamp(x);
        return IccCurve.clamp(
                held >= d ? Math.pow(Math.max(a * held + b, 0), g) + e : c * held + f);
    }

    @Override
    public IccCurve turned() {
        return new Turned(this);
    }

    /** A formula solved for its input. */
    private record Turned(FormulaCurve curve) implements IccCurve {
        @Override
        public double at(double x) {
            return curve.inverse(x);
        }

        @Override
        public IccCurve turned() {
            return curve;
        }
    }

    private double inverse(double y) {
        double held = IccCurve.clamp(y);
        double upper = IccCurve.clamp((Math.pow(Math.max(held - e, 0), 1 / g) - b) / a);
        if (d <= 0) {
            return upper;
        }
        double above = Math.max(upper, Math.min(d, 1));
        double below = c == 0 ? Math.min(d, 1) : Math.max(0, Math.min((held - f) / c, d));
        // Both branches may reach the value where they overlap; neither where they leave a gap.
        return d < 1 && Math.abs(at(above) - held) <= Math.abs(at(below) - held) ? above : below;
    }
}
