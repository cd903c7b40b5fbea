package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.List;
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

    /** From codes to the profile's connection space ({@link PcsCode}), in {@link Words}. */
    List<Step> toPcs() {
        Step coded = IccCurve.inWords(List.of(curve));
        return toLightness
                ? List.of(v -> Arrays.fill(v, 1, 3, PcsCode.NO_TINT), coded)
                : List.of(coded, v -> PcsCode.set(v, lightToXyz(v[0])));
    }

    /** The other way; only Y or L* counts. */
    List<Step> fromPcs() {
        Step coded = IccCurve.inWords(List.of(curve.turned()));
        return toLightness ? List.of(coded) : List.of(v -> v[0] = PcsCode.XYZ_RANGE * v[1], coded);
    }

    @Override
    public Xyz toXyz(double... code) {
        return lightToXyz(linear(0, code[0]));
    }
}
