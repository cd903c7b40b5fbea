package org.printassay.colour.icc;

import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/**
 * Grey by one curve (ISO 15076-1, F.2): to luminance when the connection space is XYZ, to L* when
 * it is CIELAB; {@link #linear} gives luminance in both cases.
 */
public final class GreyModel implements DeviceModel {
    private final IccCurve curve;
    private final boolean toLightness;

    GreyModel(IccCurve curve, boolean toLightness) {
        this.curve = curve;
        this.toLightness = toLightness;
    }

    @Override
    public int channels() {
        return 1;
    }

    @Override
    public double linear(int channel, double code) {
        double value = curve.at(code);
        return toLightness ? Lab.luminanceFactor(100 * value) : value;
    }

    @Override
    public Xyz lightToXyz(double... light) {
        return Xyz.PCS_WHITE.times(light[0]);
    }

    /** The code of media-relative XYZ (Y = 1), in place: only Y counts. */
    Step inverse() {
        return v -> v[0] = curve.inverse(toLightness ? Lab.lightness(v[1]) / 100 : v[1]);
    }

    @Override
    public Xyz toXyz(double... code) {
        return lightToXyz(linear(0, code[0]));
    }
}
