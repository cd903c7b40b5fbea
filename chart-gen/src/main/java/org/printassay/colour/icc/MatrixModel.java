package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.List;
import org.printassay.colour.Xyz;

/** RGB by three curves and a matrix (ISO 15076-1, F.3). */
public final class MatrixModel implements DeviceModel {
    private final List<IccCurve> curves;

    /** Row-major, light to XYZ with Y = 1 for white. */
    private final double[] matrix;

    MatrixModel(List<IccCurve> curves, double[] matrix) {
        this.curves = List.copyOf(curves);
        this.matrix = matrix.clone();
    }

    @Override
    public int channels() {
        return 3;
    }

    @Override
    public double linear(int channel, double code) {
        return curves.get(channel).at(code);
    }

    @Override
    public Xyz lightToXyz(double... light) {
        double[] m = matrix;
        return new Xyz(
                100 * (m[0] * light[0] + m[1] * light[1] + m[2] * light[2]),
                100 * (m[3] * light[0] + m[4] * light[1] + m[5] * light[2]),
                100 * (m[6] * light[0] + m[7] * light[1] + m[8] * light[2]));
    }

    /** As {@link #linear}, in {@link Words}. */
    double linearInWords(int channel, double code) {
        return curves.get(channel).inWords(code);
    }

    /** From device values to XYZ ({@link PcsCode}), curves in {@link Words}. */
    List<Step> toPcs() {
        double[] coded = Arrays.stream(matrix).map(m -> m / PcsCode.XYZ_RANGE).toArray();
        return List.of(IccCurve.inWords(curves), new Linear(coded));
    }

    /** The other way; colours out of reach are held. */
    List<Step> fromPcs() {
        return List.of(new Linear(codedInverse()), IccCurve.inWords(turnedCurves()));
    }

    private double[] codedInverse() {
        return Arrays.stream(Matrix3.inverse(matrix)).map(m -> m * PcsCode.XYZ_RANGE).toArray();
    }

    /** Curves from light to codes. */
    List<IccCurve> turnedCurves() {
        return curves.stream().map(IccCurve::turned).toList();
    }

    /** Light of XYZ ({@link PcsCode}), in place, not held; needs {@link #hasInverse}. */
    void xyzToLight(double[] v) {
        Matrix3.apply(codedInverse(), v);
    }

    /** The first channel whose curve this channel shares, itself if there is none before it. */
    int sameCurve(int channel) {
        return curves.indexOf(curves.get(channel));
    }

    /** Whether the matrix can be turned round. */
    boolean hasInverse() {
        return Matrix3.hasInverse(matrix);
    }

    @Override
    public Xyz toXyz(double... code) {
        return lightToXyz(linear(0, code[0]), linear(1, code[1]), linear(2, code[2]));
    }
}
