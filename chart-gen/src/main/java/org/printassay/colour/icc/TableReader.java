package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.printassay.colour.Lab;
import org.printassay.colour.Xyz;

/** Reads device-to-PCS table elements: lut8, lut16, lutAToB (ISO 15076-1, 10.10 to 10.12). */
final class TableReader {
    private static final int MAX_CHANNELS = 4;

    /** Largest XYZ of the 16-bit encoding, 1 + 32767/32768. */
    private static final double XYZ_RANGE = 65535.0 / 32768;

    private TableReader() {}

    static TableModel read(IccBytes in, int channels, boolean labPcs) throws IccException {
        String type = in.ascii(0, 4);
        int inputs = in.u8(8);
        int outputs = in.u8(9);
        if (inputs != channels) {
            throw in.fault(8, "a table of " + inputs + " inputs for " + channels + " channels");
        }
        if (inputs < 1 || inputs > MAX_CHANNELS) {
            throw in.fault(8, "a table of " + inputs + " inputs; 1 to 4 are understood");
        }
        if (outputs != 3) {
            throw in.fault(9, "a table of " + outputs + " outputs; 3 are needed");
        }
        List<UnaryOperator<double[]>> steps = new ArrayList<>();
        Function<double[], Xyz> decode;
        switch (type) {
            case "mft1" -> {
                if (!labPcs) {
                    throw in.fault(0, "an 8-bit table to XYZ, which the standard does not define");
                }
                readLut(in, inputs, 1, steps);
                decode = v -> fromLab(100 * v[0], 255 * v[1] - 128, 255 * v[2] - 128);
            }
            case "mft2" -> {
                readLut(in, inputs, 2, steps);
                // lut16 keeps the older CIELAB encoding in version 4 too: 0xFF00 is L* 100.
                decode =
                        labPcs
                                ? v ->
                                        fromLab(
                                                v[0] * 65535 / 652.8,
                                                v[1] * 65535 / 256 - 128,
                                                v[2] * 65535 / 256 - 128)
                                : TableReader::fromXyz;
            }
            case "mAB " -> {
                readLutAToB(in, inputs, steps);
                decode =
                        labPcs
                                ? v -> fromLab(100 * v[0], 255 * v[1] - 128, 255 * v[2] - 128)
                                : TableReader::fromXyz;
            }
            default -> throw in.fault(0, "colour table of type '" + type + "', which is not known");
        }
        return new TableModel(inputs, steps, decode);
    }

    private static void readLut(
            IccBytes in, int inputs, int width, List<UnaryOperator<double[]>> steps)
            throws IccException {
        int points = in.u8(10);
        // The matrix (bytes 12-47) only applies to XYZ input, which device tables do not have.
        int inputEntries = width == 1 ? 256 : in.u16(48);
        int outputEntries = width == 1 ? 256 : in.u16(50);
        if (inputEntries < 2 || outputEntries < 2) {
            throw in.fault(48, "a table curve of fewer than 2 points");
        }
        long at = width == 1 ? 48 : 52;
        steps.add(curves(tables(in, at, inputs, inputEntries, width)));
        at += (long) inputs * inputEntries * width;
        int[] grid = new int[inputs];
        Arrays.fill(grid, points);
        Clut clut = Clut.parse(in.from(at), grid, 3, width);
        steps.add(clut::at);
        at += 3L * width * (long) Math.pow(points, inputs);
        steps.add(curves(tables(in, at, 3, outputEntries, width)));
    }

    private static List<IccCurve> tables(IccBytes in, long at, int count, int entries, int width)
            throws IccException {
        List<IccCurve> curves = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            IccBytes data = in.part(at + (long) c * entries * width, (long) entries * width);
            double[] points = new double[entries];
            for (int i = 0; i < entries; i++) {
                points[i] = width == 1 ? data.u8(i) / 255.0 : data.u16(2L * i) / 65535.0;
            }
            curves.add(IccCurve.of(points));
        }
        return curves;
    }

    private static void readLutAToB(IccBytes in, int inputs, List<UnaryOperator<double[]>> steps)
            throws IccException {
        long bCurves = in.u32(12);
        long matrix = in.u32(16);
        long mCurves = in.u32(20);
        long clut = in.u32(24);
        long aCurves = in.u32(28);
        if (bCurves == 0) {
            throw in.fault(12, "a table without its last curves");
        }
        if (clut == 0 && inputs != 3) {
            throw in.fault(24, "no colour table between " + inputs + " inputs and 3 outputs");
        }
        if (aCurves != 0 && clut != 0) {
            steps.add(curves(chain(in, aCurves, inputs)));
        }
        if (clut != 0) {
            int[] grid = new int[inputs];
            for (int i = 0; i < inputs; i++) {
                grid[i] = in.u8(clut + i);
            }
            int width = in.u8(clut + 16);
            if (width != 1 && width != 2) {
                throw in.fault(clut + 16, "table values of " + width + " bytes; 1 or 2 are known");
            }
            steps.add(Clut.parse(in.from(clut + 20), grid, 3, width)::at);
        }
        if (mCurves != 0 && matrix != 0) {
            steps.add(curves(chain(in, mCurves, 3)));
            double[] m = new double[12];
            for (int i = 0; i < 12; i++) {
                m[i] = in.fixed(matrix + 4L * i);
            }
            steps.add(v -> affine(m, v));
        }
        steps.add(curves(chain(in, bCurves, 3)));
    }

    /** Curves one after the other, each padded to four bytes. */
    private static List<IccCurve> chain(IccBytes in, long start, int count) throws IccException {
        List<IccCurve> curves = new ArrayList<>();
        long at = start;
        for (int i = 0; i < count; i++) {
            IccCurve.Parsed parsed = IccCurve.parse(in.from(at));
            curves.add(parsed.curve());
            at += (parsed.length() + 3) / 4 * 4;
        }
        return curves;
    }

    private static UnaryOperator<double[]> curves(List<IccCurve> curves) {
        return v -> {
            double[] result = new double[v.length];
            for (int i = 0; i < v.length; i++) {
                result[i] = curves.get(i).at(v[i]);
            }
            return result;
        };
    }

    private static double[] affine(double[] m, double[] v) {
        double[] result = new double[3];
        for (int i = 0; i < 3; i++) {
            result[i] = m[3 * i] * v[0] + m[3 * i + 1] * v[1] + m[3 * i + 2] * v[2] + m[9 + i];
        }
        return result;
    }

    private static Xyz fromLab(double l, double a, double b) {
        return new Lab(l, a, b).toXyz(Xyz.PCS_WHITE);
    }

    private static Xyz fromXyz(double[] v) {
        return new Xyz(v[0], v[1], v[2]).times(100 * XYZ_RANGE);
    }
}
