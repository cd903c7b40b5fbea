package org.printassay.colour.icc;

import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;

/**
 * Estimates the black of a printing profile from a ramp of lightness sent to the device and back
 * (ISO 18619:2015, 4.2.5.3). Such a ramp runs flat at black, bends, and goes on nearly straight to
 * white. Where its middle is straight anyway the start value is the black; else a parabola through
 * the shadows is followed down to its foot, so that a smooth bend counts as part of the tones.
 */
final class BlackRamp {
    private static final int STEPS = 256;

    /** Tinted blacks are followed up to this far from neutral. */
    private static final double MOST_TINT = 50;

    /** Share of the range from which on a colorimetric ramp must be straight. */
    private static final double MIDDLE = 0.2;

    /** How near, in L*, counts as straight. */
    private static final double STRAIGHT = 4;

    /** Fewest points a parabola may rest on. */
    private static final int FEWEST = 3;

    private static final Lab PURE = new Lab(0, 0, 0);

    private final double[] in;
    private final double[] out;
    private final Lab start;

    private BlackRamp(double[] in, double[] out, Lab start) {
        this.in = in;
        this.out = out;
        this.start = start;
    }

    /** Sends the ramp; the start's tint is kept along it. */
    static BlackRamp of(UnaryOperator<Lab> thereAndBack, Lab start) {
        double[] in = new double[STEPS];
        double[] out = new double[STEPS];
        double a = Math.max(-MOST_TINT, Math.min(MOST_TINT, start.a()));
        double b = Math.max(-MOST_TINT, Math.min(MOST_TINT, start.b()));
        for (int i = 0; i < STEPS; i++) {
            in[i] = 100.0 * i / (STEPS - 1);
            out[i] = thereAndBack.apply(new Lab(in[i], a, b)).l();
        }
        // Never falls towards white. The first stays: the range begins at what L* 0 prints.
        for (int i = STEPS - 2; i > 0; i--) {
            out[i] = Math.min(out[i], out[i + 1]);
        }
        return new BlackRamp(in, out, start);
    }

    /** The black, media-relative; pure black when the ramp tells nothing. */
    Lab black(Intent intent) {
        double darkest = out[0];
        double range = out[STEPS - 1] - darkest;
        if (!(range > 0)) {
            return PURE;
        }
        boolean colorimetric = intent == Intent.RELATIVE;
        if (colorimetric && straight(darkest + MIDDLE * range)) {
            return start;
        }
        double from = colorimetric ? 0.1 : 0.03;
        double to = colorimetric ? 0.5 : 0.25;
        Parabola fit = new Parabola();
        for (int i = 0; i < STEPS; i++) {
            double share = (out[i] - darkest) / range;
            if (share >= from && share < to) {
                fit.add(in[i], share);
            }
        }
        return fit.points() < FEWEST ? PURE : new Lab(fit.foot(), start.a(), start.b());
    }

    private boolean straight(double shadowEnd) {
        for (int i = 0; i < STEPS; i++) {
            if (in[i] > shadowEnd && Math.abs(in[i] - out[i]) >= STRAIGHT) {
                return false;
            }
        }
        return true;
    }
}
