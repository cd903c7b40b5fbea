package org.printassay.colour.icc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.printassay.colour.icc.IccProfile.Space;

/**
 * Reads table elements: lut8, lut16, lutAToB, lutBToA (ISO 15076-1, 10.10 to 10.13) as steps
 * between device values and the profile's connection space ({@link PcsCode}).
 */
final class TableReader {
    private final IccBytes in;
    private final Space device;
    private final boolean labPcs;
    private final boolean toPcs;
    private final boolean inWords;
    private final int inputs;
    private final int outputs;
    private final List<Step> steps = new ArrayList<>();

    private TableReader(IccBytes in, Space device, boolean labPcs, boolean toPcs, boolean inWords) {
        this.in = in;
        this.device = device;
        this.labPcs = labPcs;
        this.toPcs = toPcs;
        this.inWords = inWords;
        this.inputs = toPcs ? device.channels : 3;
        this.outputs = toPcs ? 3 : device.channels;
    }

    /** Steps from device values, 0-1 a channel; curves and table in {@link Words}. */
    static List<Step> toPcs(IccBytes in, Space device, boolean labPcs) throws IccException {
        return new TableReader(in, device, labPcs, true, true).read();
    }

    /** As {@link #toPcs}, but not rounded anywhere. */
    static List<Step> exactToPcs(IccBytes in, Space device, boolean labPcs) throws IccException {
        return new TableReader(in, device, labPcs, true, false).read();
    }

    /** Steps to device values; curves and table in {@link Words}. */
    static List<Step> fromPcs(IccBytes in, Space device, boolean labPcs) throws IccException {
        return new TableReader(in, device, labPcs, false, true).read();
    }

    private List<Step> read() throws IccException {
        String type = in.ascii(0, 4);
        int hasInputs = in.u8(8);
        int hasOutputs = in.u8(9);
        if (hasInputs != inputs) {
            throw in.fault(8, "a table of " + hasInputs + " inputs where " + inputs + " belong");
        }
        if (hasOutputs != outputs) {
            throw in.fault(9, "a table of " + hasOutputs + " outputs where " + outputs + " belong");
        }
        boolean lut16 = type.equals("mft2");
        // Lab is coded as the table's kind codes it, as device space too; callers use the newer
        // way.
        boolean olderPcs = lut16 && labPcs;
        boolean olderDevice = lut16 && device == Space.LAB;
        if (toPcs ? olderDevice : olderPcs) {
            steps.add(PcsCode.TO_LUT16);
        }
        switch (type) {
            case "mft1" -> {
                if (!labPcs || device == Space.XYZ) {
                    throw in.fault(0, "an 8-bit table of XYZ, which the standard does not define");
                }
                readLut(1);
            }
            case "mft2" -> readLut(2);
            case "mAB ", "mBA " -> {
                if (type.equals("mAB ") != toPcs) {
                    throw in.fault(0, "colour table of type '" + type + "' in the wrong direction");
                }
                readLutAToB();
            }
            default -> throw in.fault(0, "colour table of type '" + type + "', which is not known");
        }
        if (toPcs ? olderPcs : olderDevice) {
            steps.add(PcsCode.FROM_LUT16);
        }
        return List.copyOf(steps);
    }

    private boolean tetrahedral() {
        return toPcs || !labPcs;
    }

    private Step step(Clut table) {
        return inWords ? table::inWords : table::exact;
    }

    private void readLut(int width) throws IccException {
        // The matrix applies to XYZ input alone (10.10.2); elsewhere it should be the identity.
        if (toPcs ? device == Space.XYZ : !labPcs) {
            double[] m = matrix(12, 9);
            steps.add(v -> affine(m, v));
        }
        int points = in.u8(10);
        int inputEntries = width == 1 ? 256 : in.u16(48);
        int outputEntries = width == 1 ? 256 : in.u16(50);
        if (inputEntries < 2 || outputEntries < 2) {
            throw in.fault(48, "a table curve of fewer than 2 points");
        }
        long at = width == 1 ? 48 : 52;
        steps.add(curves(tables(at, inputs, inputEntries, width)));
        at += (long) inputs * inputEntries * width;
        int[] grid = new int[inputs];
        Arrays.fill(grid, points);
        steps.add(step(Clut.parse(in.from(at), grid, outputs, width, tetrahedral())));
        at += Clut.count(grid, outputs) * width;
        steps.add(curves(tables(at, outputs, outputEntries, width)));
    }

    private List<IccCurve> tables(long at, int count, int entries, int width) throws IccException {
        List<IccCurve> curves = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            IccBytes data = in.part(at + (long) c * entries * width, (long) entries * width);
            char[] points = new char[entries];
            for (int i = 0; i < entries; i++) {
                points[i] = (char) (width == 1 ? data.u8(i) * 257 : data.u16(2L * i));
            }
            curves.add(new TableCurve(points));
        }
        return curves;
    }

    private void readLutAToB() throws IccException {
        long bCurves = in.u32(12);
        long clut = in.u32(24);
        if (bCurves == 0) {
            throw in.fault(12, "a table without the curves next to the connection space");
        }
        if (clut == 0 && device.channels != 3) {
            throw in.fault(24, "no colour table between " + inputs + " and " + outputs + " values");
        }
        if (toPcs) {
            addClut(clut);
            addMatrix();
            steps.add(curves(chain(bCurves, 3)));
        } else {
            steps.add(curves(chain(bCurves, 3)));
            addMatrix();
            addClut(clut);
        }
    }

    /** The colour table and its curves on the device side, which exist only together. */
    private void addClut(long clut) throws IccException {
        long aCurves = in.u32(28);
        if (clut == 0) {
            return;
        }
        Step curves = aCurves == 0 ? v -> {} : curves(chain(aCurves, device.channels));
        int[] grid = new int[inputs];
        for (int i = 0; i < inputs; i++) {
            grid[i] = in.u8(clut + i);
        }
        int width = in.u8(clut + 16);
        if (width != 1 && width != 2) {
            throw in.fault(clut + 16, "table values of " + width + " bytes; 1 or 2 are known");
        }
        Step table = step(Clut.parse(in.from(clut + 20), grid, outputs, width, tetrahedral()));
        steps.add(toPcs ? curves : table);
        steps.add(toPcs ? table : curves);
    }

    private void addMatrix() throws IccException {
        long matrix = in.u32(16);
        long mCurves = in.u32(20);
        if (mCurves == 0 || matrix == 0) {
            return;
        }
        double[] m = matrix(matrix, 12);
        Step curves = curves(chain(mCurves, 3));
        steps.add(toPcs ? curves : v -> affine(m, v));
        steps.add(toPcs ? v -> affine(m, v) : curves);
    }

    private double[] matrix(long at, int count) throws IccException {
        double[] m = new double[12];
        for (int i = 0; i < count; i++) {
            m[i] = in.fixed(at + 4L * i);
        }
        return m;
    }

    /** Curves one after the other, each padded to four bytes. */
    private List<IccCurve> chain(long start, int count) throws IccException {
        List<IccCurve> curves = new ArrayList<>();
        long at = start;
        for (int i = 0; i < count; i++) {
            IccCurve.Parsed parsed = IccCurve.parse(in.from(at));
            curves.add(parsed.curve());
            at += (parsed.length() + 3) / 4 * 4;
        }
        return curves;
    }

    private Step curves(List<IccCurve> curves) {
        return inWords ? IccCurve.inWords(curves) : IccCurve.exact(curves);
    }

    /** Three rows of a matrix, then three numbers to add. */
    private static void affine(double[] m, double[] v) {
        double x = v[0];
        double y = v[1];
        double z = v[2];
        for (int i = 0; i < 3; i++) {
            v[i] = m[3 * i] * x + m[3 * i + 1] * y + m[3 * i + 2] * z + m[9 + i];
        }
    }
}
