package org.printassay.colour.icc;

import java.util.Arrays;
import java.util.List;

/** Curves, one matrix, curves: between two matrix profiles, as exact as its codes. */
final class ShaperKernel implements PixelKernel {
    /** Light of codes, channel by channel. */
    private final float[][] light8;

    private final float[][] light16;

    /** Three rows of the matrix from light to light, then three numbers to add. */
    private final float[] m;

    /** Codes 0-65535 by the root of light, which spaces them evenly; one entry more at the end. */
    private final float[][] code;

    private final byte[][] code8;

    private ShaperKernel(MatrixModel source, double[] matrix, MatrixModel destination) {
        light8 = new float[3][];
        light16 = new float[3][];
        code = new float[3][];
        code8 = new byte[3][];
        List<IccCurve> turned = destination.turnedCurves();
        m = new float[12];
        for (int i = 0; i < m.length; i++) {
            m[i] = (float) matrix[i];
        }
        for (int c = 0; c < 3; c++) {
            int same = source.sameCurve(c);
            light8[c] = same < c ? light8[same] : light(source, c, 256);
            light16[c] = same < c ? light16[same] : light(source, c, CODES);
            same = destination.sameCurve(c);
            code[c] = same < c ? code[same] : codes(turned.get(c));
            code8[c] = same < c ? code8[same] : bytes(code[c]);
        }
    }

    /** The matrix between is found by sending light's corners through the exact transform. */
    static ShaperKernel of(MatrixModel source, IccTransform exact, MatrixModel destination) {
        double[] matrix = new double[12];
        double[] black = between(source, exact, destination, 0, 0, 0);
        System.arraycopy(black, 0, matrix, 9, 3);
        for (int c = 0; c < 3; c++) {
            double[] corner =
                    between(
                            source,
                            exact,
                            destination,
                            c == 0 ? 1 : 0,
                            c == 1 ? 1 : 0,
                            c == 2 ? 1 : 0);
            for (int row = 0; row < 3; row++) {
                matrix[3 * row + c] = corner[row] - black[row];
            }
        }
        return new ShaperKernel(source, matrix, destination);
    }

    private static double[] between(
            MatrixModel source, IccTransform exact, MatrixModel destination, double... light) {
        double[] v = Arrays.copyOf(light, Step.ROOM);
        PcsCode.set(v, source.lightToXyz(light));
        exact.connect(v);
        destination.xyzToLight(v);
        return v;
    }

    private static float[] light(MatrixModel model, int channel, int codes) {
        float[] light = new float[codes];
        for (int i = 0; i < codes; i++) {
            light[i] = (float) model.linearInWords(channel, i / (codes - 1.0));
        }
        return light;
    }

    private static float[] codes(IccCurve turned) {
        float[] codes = new float[CODES + 1];
        for (int i = 0; i < CODES; i++) {
            double root = i / 65535.0;
            codes[i] = (float) (65535 * turned.at(root * root));
        }
        codes[CODES] = codes[CODES - 1];
        return codes;
    }

    private static byte[] bytes(float[] codes) {
        byte[] bytes = new byte[CODES];
        for (int i = 0; i < CODES; i++) {
            bytes[i] = (byte) Math.round(codes[i] / 257);
        }
        return bytes;
    }

    @Override
    public void convert(byte[] from, byte[] to, int pixels) {
        float[] red = light8[0];
        float[] green = light8[1];
        float[] blue = light8[2];
        byte[] code0 = code8[0];
        byte[] code1 = code8[1];
        byte[] code2 = code8[2];
        float[] k = m.clone();
        for (int i = 0; i < 3 * pixels; i += 3) {
            float r = red[from[i] & 0xFF];
            float g = green[from[i + 1] & 0xFF];
            float b = blue[from[i + 2] & 0xFF];
            to[i] = code0[(int) (place(k[0] * r + k[1] * g + k[2] * b + k[9]) + 0.5f)];
            to[i + 1] = code1[(int) (place(k[3] * r + k[4] * g + k[5] * b + k[10]) + 0.5f)];
            to[i + 2] = code2[(int) (place(k[6] * r + k[7] * g + k[8] * b + k[11]) + 0.5f)];
        }
    }

    @Override
    public void convert(short[] from, short[] to, int pixels) {
        float[] red = light16[0];
        float[] green = light16[1];
        float[] blue = light16[2];
        float[] k = m.clone();
        for (int i = 0; i < 3 * pixels; i += 3) {
            float r = red[from[i] & 0xFFFF];
            float g = green[from[i + 1] & 0xFFFF];
            float b = blue[from[i + 2] & 0xFFFF];
            to[i] = between(code[0], place(k[0] * r + k[1] * g + k[2] * b + k[9]));
            to[i + 1] = between(code[1], place(k[3] * r + k[4] * g + k[5] * b + k[10]));
            to[i + 2] = between(code[2], place(k[6] * r + k[7] * g + k[8] * b + k[11]));
        }
    }

    private static short between(float[] codes, float place) {
        int low = (int) place;
        return (short) (int) (codes[low] + (place - low) * (codes[low + 1] - codes[low]) + 0.5f);
    }

    /** Root of light, 0-65535. */
    private static float place(float light) {
        return 65535f * (float) Math.sqrt(Math.max(0f, Math.min(light, 1f)));
    }
}
