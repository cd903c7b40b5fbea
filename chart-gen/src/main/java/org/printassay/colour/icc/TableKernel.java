package org.printassay.colour.icc;

import org.printassay.colour.Lab;

/** One table of the whole way; see {@link Clut} for how it is interpolated. */
final class TableKernel implements PixelKernel {
    private static final int[] POINTS = {0, 1025, 0, 33, 17};

    /** Results stand four together, whatever the device needs. */
    private static final int LANES = 4;

    /** The whole of a share of a cell. */
    private static final int ONE = 1 << 15;

    private final int inputs;
    private final int outputs;
    private final int points;
    private final int[] stride;

    /** Place along the table of codes, channel by channel: cell << 16 | share of it. */
    private final int[][] along8;

    private final int[][] along16;

    /** Results as codes 0-65535. */
    private final char[] values;

    private TableKernel(DeviceModel source, IccTransform exact) {
        inputs = exact.inputs();
        outputs = exact.outputs();
        points = POINTS[inputs];
        stride = new int[inputs];
        int step = LANES;
        for (int c = inputs - 1; c >= 0; c--) {
            stride[c] = step;
            step *= points;
        }
        along8 = new int[inputs][];
        along16 = new int[inputs][];
        double[][] codes = new double[inputs][];
        for (int c = 0; c < inputs; c++) {
            int same = source instanceof MatrixModel matrix ? matrix.sameCurve(c) : 0;
            if (same < c) {
                along16[c] = along16[same];
                along8[c] = along8[same];
                codes[c] = codes[same];
            } else {
                float[] along = along(source, c);
                codes[c] = codes(along);
                along16[c] = cells(along, 1);
                along8[c] = cells(along, 257);
            }
        }
        values = fill(exact, codes);
    }

    static TableKernel of(DeviceModel source, IccTransform exact) {
        return new TableKernel(source, exact);
    }

    /** Evenly in lightness where the profile has curves, else evenly in code; always rising. */
    private float[] along(DeviceModel source, int channel) {
        float[] along = new float[CODES];
        boolean even = source instanceof TableModel;
        double black = even ? 0 : Lab.lightness(source.linear(channel, 0));
        double range = even ? 1 : Lab.lightness(source.linear(channel, 1)) - black;
        boolean rises = range > 1;
        float reached = 0;
        for (int i = 0; i < CODES; i++) {
            double code = i / (CODES - 1.0);
            double share =
                    even || !rises
                            ? code
                            : (Lab.lightness(source.linear(channel, code)) - black) / range;
            // A tenth of evenness in code keeps flat stretches of curves apart.
            float place = (float) ((points - 1) * (0.9 * share + 0.1 * code));
            reached = Math.min(points - 1, Math.max(reached, place));
            along[i] = reached;
        }
        return along;
    }

    private int[] cells(float[] along, int everyOther) {
        int[] cells = new int[(CODES - 1) / everyOther + 1];
        for (int i = 0; i < cells.length; i++) {
            float place = along[i * everyOther];
            int cell = Math.min((int) place, points - 2);
            cells[i] = cell << 16 | Math.round((place - cell) * ONE);
        }
        return cells;
    }

    /** Codes, 0-1, that stand at the points of the table. */
    private double[] codes(float[] along16) {
        double[] codes = new double[points];
        int i = 0;
        for (int p = 0; p < points; p++) {
            while (i < CODES - 1 && along16[i] < p) {
                i++;
            }
            double back = i == 0 ? 0 : (along16[i] - p) / (along16[i] - along16[i - 1]);
            codes[p] = (i - (i > 0 && back > 0 && back < 1 ? back : 0)) / (CODES - 1.0);
        }
        codes[points - 1] = 1;
        return codes;
    }

    private char[] fill(IccTransform exact, double[][] codes) {
        int rows = 1;
        for (int c = 0; c < inputs - 1; c++) {
            rows *= points;
        }
        char[] table = new char[rows * points * LANES];
        double[] from = new double[points * inputs];
        double[] to = new double[points * outputs];
        for (int row = 0; row < rows; row++) {
            for (int p = 0; p < points; p++) {
                int rest = row;
                from[p * inputs + inputs - 1] = codes[inputs - 1][p];
                for (int c = inputs - 2; c >= 0; c--) {
                    from[p * inputs + c] = codes[c][rest % points];
                    rest /= points;
                }
            }
            exact.convert(from, to, points);
            for (int i = 0; i < to.length; i++) {
                int at = (row * points + i / outputs) * LANES + i % outputs;
                table[at] = (char) Math.round(65535 * IccCurve.clamp(to[i]));
            }
        }
        return table;
    }

    @Override
    public void convert(byte[] from, byte[] to, int pixels) {
        int[] result = new int[LANES];
        for (int i = 0; i < pixels; i++) {
            int at = i * inputs;
            int last = at + inputs - 1;
            switch (inputs) {
                case 1 -> line(along8[0][from[at] & 0xFF], result);
                case 3 ->
                        tetrahedron(
                                0,
                                along8[0][from[at] & 0xFF],
                                along8[1][from[at + 1] & 0xFF],
                                along8[2][from[last] & 0xFF],
                                result);
                default ->
                        twoTetrahedra(
                                along8[0][from[at] & 0xFF],
                                along8[1][from[at + 1] & 0xFF],
                                along8[2][from[at + 2] & 0xFF],
                                along8[3][from[last] & 0xFF],
                                result);
            }
            for (int o = 0; o < outputs; o++) {
                // Rounds to the nearest multiple of 257, by a multiplication.
                to[i * outputs + o] = (byte) ((result[o] * 255 + 32768) >>> 16);
            }
        }
    }

    @Override
    public void convert(short[] from, short[] to, int pixels) {
        int[] result = new int[LANES];
        for (int i = 0; i < pixels; i++) {
            int at = i * inputs;
            int last = at + inputs - 1;
            switch (inputs) {
                case 1 -> line(along16[0][from[at] & 0xFFFF], result);
                case 3 ->
                        tetrahedron(
                                0,
                                along16[0][from[at] & 0xFFFF],
                                along16[1][from[at + 1] & 0xFFFF],
                                along16[2][from[last] & 0xFFFF],
                                result);
                default ->
                        twoTetrahedra(
                                along16[0][from[at] & 0xFFFF],
                                along16[1][from[at + 1] & 0xFFFF],
                                along16[2][from[at + 2] & 0xFFFF],
                                along16[3][from[last] & 0xFFFF],
                                result);
            }
            for (int o = 0; o < outputs; o++) {
                to[i * outputs + o] = (short) result[o];
            }
        }
    }

    private void line(int x, int[] result) {
        int at = (x >>> 16) * LANES;
        int share = x & 0xFFFF;
        for (int o = 0; o < LANES; o++) {
            result[o] = mix(ONE - share, values[at + o], share, values[at + LANES + o]);
        }
    }

    private void twoTetrahedra(int w, int x, int y, int z, int[] result) {
        int at = (w >>> 16) * stride[0];
        int share = w & 0xFFFF;
        tetrahedron(at, x, y, z, result);
        int r0 = result[0];
        int r1 = result[1];
        int r2 = result[2];
        int r3 = result[3];
        tetrahedron(at + stride[0], x, y, z, result);
        int rest = ONE - share;
        result[0] = mix(rest, r0, share, result[0]);
        result[1] = mix(rest, r1, share, result[1]);
        result[2] = mix(rest, r2, share, result[2]);
        result[3] = mix(rest, r3, share, result[3]);
    }

    private static int mix(int share, int value, int otherShare, int otherValue) {
        return (share * value + otherShare * otherValue + ONE / 2) >>> 15;
    }

    /** In the last three inputs. Shares add up to ONE, so that sums stay below 2^31. */
    private void tetrahedron(int start, int x, int y, int z, int[] result) {
        int stepX = LANES * points * points;
        int stepY = LANES * points;
        int stepZ = LANES;
        int one = x & 0xFFFF;
        int two = y & 0xFFFF;
        int three = z & 0xFFFF;
        int corner = start + (x >>> 16) * stepX + (y >>> 16) * stepY + (z >>> 16) * stepZ;
        // Largest share first, by choices that need no guess of the processor.
        boolean swap = two > one;
        int high = Math.max(one, two);
        int low = Math.min(one, two);
        int stepHigh = swap ? stepY : stepX;
        int stepLow = swap ? stepX : stepY;
        boolean swapHigh = three > high;
        boolean swapLow = three < low;
        int top = Math.max(high, three);
        int least = Math.min(low, three);
        int middle = one + two + three - top - least;
        int stepTop = swapHigh ? stepZ : stepHigh;
        int stepLeast = swapLow ? stepZ : stepLow;
        int second = corner + stepTop;
        int fourth = corner + stepX + stepY + stepZ;
        int third = fourth - stepLeast;
        int w0 = ONE - top;
        int w1 = top - middle;
        int w2 = middle - least;
        char[] v = values;
        int half = ONE / 2;
        result[0] =
                (w0 * v[corner] + w1 * v[second] + w2 * v[third] + least * v[fourth] + half) >>> 15;
        result[1] =
                (w0 * v[corner + 1]
                                + w1 * v[second + 1]
                                + w2 * v[third + 1]
                                + least * v[fourth + 1]
                                + half)
                        >>> 15;
        result[2] =
                (w0 * v[corner + 2]
                                + w1 * v[second + 2]
                                + w2 * v[third + 2]
                                + least * v[fourth + 2]
                                + half)
                        >>> 15;
        result[3] =
                (w0 * v[corner + 3]
                                + w1 * v[second + 3]
                                + w2 * v[third + 3]
                                + least * v[fourth + 3]
                                + half)
                        >>> 15;
    }
}
