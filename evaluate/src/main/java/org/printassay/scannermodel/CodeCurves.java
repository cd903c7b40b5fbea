package org.printassay.scannermodel;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.printassay.scan.CodeLight;

/**
 * Light of the codes of each channel, kept at even steps of code with straight lines between: fine
 * enough for an error below 0.001 L* on the usual curves.
 *
 * @param red light at {@link #NODES} codes from 0 to the highest, rising
 * @param green the same
 * @param blue the same
 */
public record CodeCurves(List<Double> red, List<Double> green, List<Double> blue)
        implements CodeLight {
    /** How many codes are kept. */
    public static final int NODES = 1025;

    private static final int CODES = 65536;

    public CodeCurves {
        red = checked(red);
        green = checked(green);
        blue = checked(blue);
    }

    private static List<Double> checked(List<Double> curve) {
        if (curve.size() != NODES) {
            throw new IllegalArgumentException(NODES + " values a curve, got " + curve.size());
        }
        for (int i = 0; i < NODES; i++) {
            double value = curve.get(i);
            boolean falls = i > 0 && value < curve.get(i - 1);
            if (!(value >= 0 && value <= 2) || falls) {
                throw new IllegalArgumentException(
                        "a curve rises between 0 and 2; value " + i + " is " + value);
            }
        }
        return List.copyOf(curve);
    }

    /** The curves of codes, straightened. */
    public static CodeCurves of(CodeLight codes, Straightening straight) {
        return new CodeCurves(
                nodes(codes, straight, 0), nodes(codes, straight, 1), nodes(codes, straight, 2));
    }

    /** The curves of codes as they are. */
    public static CodeCurves of(CodeLight codes) {
        return new CodeCurves(plain(codes, 0), plain(codes, 1), plain(codes, 2));
    }

    private static List<Double> plain(CodeLight codes, int channel) {
        float[] curve = codes.curve(channel);
        return rising(
                DoubleStream.iterate(0, i -> i + 1)
                        .limit(NODES)
                        .map(i -> lightAt(curve, i / (NODES - 1)))
                        .boxed()
                        .toList());
    }

    private static List<Double> nodes(CodeLight codes, Straightening straight, int channel) {
        return rising(
                plain(codes, channel).stream().map(light -> straight.at(channel, light)).toList());
    }

    private static List<Double> rising(List<Double> values) {
        List<Double> rising = new ArrayList<>();
        double reached = 0;
        for (double value : values) {
            reached = Math.max(reached, Math.min(2, value));
            rising.add(reached);
        }
        return rising;
    }

    private static double lightAt(float[] curve, double code) {
        double at = code * (curve.length - 1);
        int low = Math.min(curve.length - 2, (int) at);
        return curve[low] + (at - low) * (curve[low + 1] - curve[low]);
    }

    @Override
    public float[] curve(int channel) {
        List<Double> nodes = channel == 0 ? red : channel == 1 ? green : blue;
        float[] curve = new float[CODES];
        for (int i = 0; i < CODES; i++) {
            double at = (double) i / (CODES - 1) * (NODES - 1);
            int low = Math.min(NODES - 2, (int) at);
            double from = nodes.get(low);
            curve[i] = (float) (from + (at - low) * (nodes.get(low + 1) - from));
        }
        return curve;
    }
}
