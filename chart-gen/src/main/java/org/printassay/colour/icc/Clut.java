package org.printassay.colour.icc;

import java.util.Arrays;

/**
 * A colour table of one to four inputs. Device values are interpolated tetrahedrally in three
 * inputs; with four the first is interpolated linearly between two such results, as common colour
 * engines do (measured: other schemes differ by up to 0.44 dE*ab on printing profiles). On the way
 * to a device CIELAB is interpolated trilinearly, because its neutral axis does not run along the
 * diagonal.
 */
final class Clut {
    private final int[] grid;
    private final int outputs;
    private final boolean tetrahedral;
    private final char[] values;
    private final int[] stride;

    private Clut(int[] grid, int outputs, boolean tetrahedral, char[] values) {
        this.grid = grid;
        this.outputs = outputs;
        this.tetrahedral = tetrahedral && grid.length >= 3;
        this.values = values;
        this.stride = new int[grid.length];
        int step = outputs;
        for (int i = grid.length - 1; i >= 0; i--) {
            stride[i] = step;
            step *= grid[i];
        }
    }

    /** Numbers in a table. */
    static long count(int[] grid, int outputs) {
        long count = outputs;
        for (int points : grid) {
            // At most 16 outputs and 255 points an input: four inputs stay far below overflow.
            count *= points;
        }
        return count;
    }

    /**
     * Reads table values, first input slowest.
     *
     * @param grid points along each input, at least 2
     * @param width bytes a value, 1 or 2
     * @param tetrahedral false for CIELAB on the way to a device
     */
    static Clut parse(IccBytes in, int[] grid, int outputs, int width, boolean tetrahedral)
            throws IccException {
        for (int points : grid) {
            if (points < 2) {
                throw in.fault(0, "a colour table with " + points + " point along one input");
            }
        }
        long count = count(grid, outputs);
        IccBytes data = in.part(0, count * width); // fails before anything is allocated
        char[] values = new char[(int) count];
        for (int i = 0; i < values.length; i++) {
            values[i] = (char) (width == 1 ? data.u8(i) * 257 : data.u16(2L * i));
        }
        return new Clut(grid.clone(), outputs, tetrahedral, values);
    }

    /** Results at a place, exact; inputs are held within 0-1. */
    void exact(double[] v) {
        int inputs = grid.length;
        double[] share = new double[inputs];
        int corner = 0;
        for (int i = 0; i < inputs; i++) {
            double along = IccCurve.clamp(v[i]) * (grid[i] - 1);
            int low = Math.min((int) along, grid[i] - 2);
            share[i] = along - low;
            corner += low * stride[i];
        }
        Arrays.fill(v, 0, outputs, 0);
        if (!tetrahedral) {
            linear(v, corner, share, 0, 1);
        } else if (inputs == 3) {
            tetrahedron(v, corner, share, 0, 1);
        } else {
            tetrahedron(v, corner, share, 1, 1 - share[0]);
            tetrahedron(v, corner + stride[0], share, 1, share[0]);
        }
    }

    /** Both ends of one input, then of the next. */
    private void linear(double[] v, int corner, double[] share, int input, double weight) {
        if (weight == 0) {
            return;
        }
        if (input == share.length) {
            add(v, corner, weight);
            return;
        }
        linear(v, corner, share, input + 1, weight * (1 - share[input]));
        linear(v, corner + stride[input], share, input + 1, weight * share[input]);
    }

    /** Walks from the cell's low corner along three inputs, largest fraction first. */
    private void tetrahedron(double[] v, int corner, double[] share, int first, double weight) {
        int[] order = largestFirst(first, share[first], share[first + 1], share[first + 2]);
        int one = order[0];
        int two = order[1];
        int three = order[2];
        int at = corner;
        add(v, at, weight * (1 - share[one]));
        at += stride[one];
        add(v, at, weight * (share[one] - share[two]));
        at += stride[two];
        add(v, at, weight * (share[two] - share[three]));
        at += stride[three];
        add(v, at, weight * share[three]);
    }

    private static int[] largestFirst(int first, double a, double b, double c) {
        int x = first;
        int y = first + 1;
        int z = first + 2;
        if (a >= b) {
            return b >= c
                    ? new int[] {x, y, z}
                    : a >= c ? new int[] {x, z, y} : new int[] {z, x, y};
        }
        return a >= c ? new int[] {y, x, z} : b >= c ? new int[] {y, z, x} : new int[] {z, y, x};
    }

    private void add(double[] v, int corner, double weight) {
        for (int i = 0; i < outputs; i++) {
            v[i] += weight * values[corner + i] / Words.ONE;
        }
    }

    /** Results at a place in {@link Words}; inputs are held within 0-1. */
    void inWords(double[] v) {
        int inputs = grid.length;
        int[] share = new int[inputs];
        int[] step = stride.clone();
        int corner = 0;
        for (int i = 0; i < inputs; i++) {
            int word = Words.of(v[i]);
            int place = (int) Words.place(word, grid[i] - 1);
            corner += (place >> 16) * stride[i];
            share[i] = place & 0xFFFF;
            step[i] = word == Words.ONE ? 0 : stride[i]; // nothing lies behind the last point
        }
        for (int i = 0; i < outputs; i++) {
            v[i] = Words.fraction(result(corner + i, share, step));
        }
    }

    private int result(int corner, int[] share, int[] step) {
        if (!tetrahedral) {
            return linear(corner, share, step, share.length - 1);
        }
        if (share.length == 3) {
            // Rounded once, by the engine's short cut for three inputs.
            int sum = tetrahedron(corner, share, step, 0) + 0x8001;
            return (values[corner] + ((sum + (sum >> 16)) >> 16)) & Words.ONE;
        }
        return Words.between(
                rounded(corner, share, step), rounded(corner + step[0], share, step), share[0]);
    }

    private int rounded(int corner, int[] share, int[] step) {
        int sum = tetrahedron(corner, share, step, 1);
        sum += (sum + 0x7FFF) / Words.ONE;
        return (values[corner] + ((sum + 0x8000) >> 16)) & Words.ONE;
    }

    /** The first input's ends first: the engine rounds after each input. */
    private int linear(int corner, int[] share, int[] step, int input) {
        if (input < 0) {
            return values[corner];
        }
        return Words.between(
                linear(corner, share, step, input - 1),
                linear(corner + step[input], share, step, input - 1),
                share[input]);
    }

    /**
     * What the walk through three inputs, largest share first, adds to the corner's value, times
     * 65535. Beyond 31 bits it goes round, as in the engine, which loses one word.
     */
    private int tetrahedron(int corner, int[] share, int[] step, int first) {
        int[] order = largestFirst(first, share[first], share[first + 1], share[first + 2]);
        int one = order[0];
        int two = order[1];
        int three = order[2];
        int second = corner + step[one];
        int third = second + step[two];
        int fourth = third + step[three];
        return (values[second] - values[corner]) * share[one]
                + (values[third] - values[second]) * share[two]
                + (values[fourth] - values[third]) * share[three];
    }

    @Override
    public String toString() {
        return "Clut" + Arrays.toString(grid) + " to " + outputs;
    }
}
