package org.printassay.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.printassay.colour.DeltaE;
import org.printassay.colour.Lab;
import org.printassay.colour.Rgb8;
import org.printassay.colour.Spectrum;
import org.printassay.colour.Xyz;
import org.printassay.problem.Problem;

/** Numbers of a table to patches: finds the scales, computes CIELAB, notes what it did. */
final class PatchReader {
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][+-]?\\d{1,3})?");

    /** Paper with brightener stays below 1.6 as a fraction; paper in percent is far above. */
    private static final double FRACTION_LIMIT = 2.5;

    /** A code this far from a whole number was not printed as 8 bits. */
    private static final double CODE_SLACK = 0.25;

    /** CIELAB in the file that is this far from what its own data give used other conditions. */
    private static final double LAB_SLACK = 1;

    private final String name;
    private final TextTables.Table table;
    private final Columns columns;
    private final List<String> notes;

    PatchReader(String name, TextTables.Table table, List<String> notes) {
        this.name = name;
        this.table = table;
        this.columns = Columns.of(table.fields());
        this.notes = notes;
    }

    List<MeasuredPatch> read() throws Problem {
        List<double[]> rgb = numbers(columns.rgb());
        List<double[]> labs = numbers(columns.lab());
        List<double[]> xyzs = numbers(columns.xyz());
        List<Integer> bandColumns = List.copyOf(columns.bands().values());
        List<double[]> spectra = numbers(bandColumns);
        double codeScale = codeScale(rgb);
        double xyzScale = xyzScale(xyzs);
        double spectralScale = spectralScale(spectra);
        noteSource();

        List<MeasuredPatch> patches = new ArrayList<>();
        int rounded = 0;
        double difference = 0;
        for (int i = 0; i < table.rows().size(); i++) {
            TextTables.Row row = table.rows().get(i);
            double[] codes = rgb.get(i);
            rounded += isFractional(codes, codeScale) ? 1 : 0;
            Spectrum spectrum = spectrum(spectra.get(i), spectralScale);
            Xyz xyz = null;
            if (spectrum != null) {
                xyz = spectrum.toXyz();
            } else if (xyzs.get(i).length > 0) {
                double[] v = xyzs.get(i);
                xyz = new Xyz(v[0], v[1], v[2]).times(xyzScale);
            }
            double[] stated = labs.get(i);
            Lab fromFile = stated.length > 0 ? new Lab(stated[0], stated[1], stated[2]) : null;
            Lab lab = lab(spectrum, xyz, fromFile);
            difference += fromFile == null ? 0 : DeltaE.cie1976(lab, fromFile);
            patches.add(
                    new MeasuredPatch(
                            id(row, i),
                            rgb8(row, codes, codeScale),
                            lab,
                            xyz,
                            spectrum,
                            row.line()));
        }
        if (rounded > 0) {
            notes.add(
                    "RGB codes between whole numbers were rounded to 8 bits in patches: "
                            + rounded
                            + ".");
        }
        double mean = difference / patches.size();
        if (mean > LAB_SLACK) {
            notes.add(
                    String.format(
                            Locale.ROOT,
                            "The file's own CIELAB differs by %.1f on average: it was probably"
                                    + " computed for another light or observer and was not used.",
                            mean));
        }
        return patches;
    }

    private static Lab lab(@Nullable Spectrum spectrum, @Nullable Xyz xyz, @Nullable Lab stated) {
        if (spectrum != null) {
            return spectrum.toLab();
        }
        if (xyz != null) {
            return Lab.of(xyz, Xyz.PCS_WHITE);
        }
        if (stated == null) {
            throw new IllegalStateException("a table without colour was let through");
        }
        return stated;
    }

    private void noteSource() {
        if (!columns.bands().isEmpty()) {
            notes.add(
                    "CIELAB (D50, 2 degree) computed from the spectral columns, "
                            + columns.bands().firstKey()
                            + " to "
                            + columns.bands().lastKey()
                            + " nm.");
        } else if (!columns.xyz().isEmpty()) {
            notes.add("CIELAB computed from the XYZ columns with white 96.42 100 82.49.");
        } else {
            notes.add("CIELAB taken from the LAB columns; D50 and 2 degree are assumed.");
        }
    }

    /** Numbers of some columns, row by row; empty arrays when there are no such columns. */
    private List<double[]> numbers(List<Integer> which) throws Problem {
        List<double[]> all = new ArrayList<>();
        for (TextTables.Row row : table.rows()) {
            double[] values = new double[which.size()];
            for (int i = 0; i < which.size(); i++) {
                String cell = row.cells().get(which.get(i));
                if (!NUMBER.matcher(cell).matches()) {
                    throw bad(row, which.get(i), "is not a number");
                }
                values[i] = Double.parseDouble(cell.replace(',', '.'));
                if (Math.abs(values[i]) > 1e6) {
                    throw bad(row, which.get(i), "is out of any sensible range");
                }
            }
            all.add(values);
        }
        return all;
    }

    /** Factor from the file's RGB to 0-255. */
    private double codeScale(List<double[]> rgb) {
        double max = max(rgb);
        boolean whole =
                rgb.stream().flatMapToDouble(Arrays::stream).allMatch(v -> v == Math.rint(v));
        if (max > 100) {
            return 1;
        }
        if (max == 100 || (max > 1 && !whole)) {
            notes.add("RGB runs from 0 to 100 in the file and was taken as percent of 255.");
            return 2.55;
        }
        if (max > 0 && (max < 1 || !whole || max == 1)) {
            notes.add("RGB runs from 0 to 1 in the file and was taken as a fraction of 255.");
            return 255;
        }
        notes.add("No RGB value is above 100; they were taken as codes 0 to 255.");
        return 1;
    }

    private double xyzScale(List<double[]> xyzs) {
        if (columns.xyz().isEmpty() || max(xyzs) > FRACTION_LIMIT) {
            return 1;
        }
        notes.add("XYZ runs from 0 to 1 in the file and was multiplied by 100.");
        return 100;
    }

    private double spectralScale(List<double[]> spectra) {
        if (columns.bands().isEmpty() || max(spectra) <= FRACTION_LIMIT) {
            return 1;
        }
        notes.add("Spectral values are percent in the file.");
        return 0.01;
    }

    private @Nullable Spectrum spectrum(double[] values, double scale) throws Problem {
        if (values.length == 0) {
            return null;
        }
        int start = columns.bands().firstKey();
        int step = smallestStep();
        int expected = start;
        for (int nm : columns.bands().keySet()) {
            if (nm != expected) {
                throw Problem.input(
                        name,
                        "the spectral columns are not evenly spaced: "
                                + expected
                                + " nm is missing.");
            }
            expected += step;
        }
        String why = Spectrum.whyNot(start, step, values.length);
        if (!why.isEmpty()) {
            throw Problem.input(name, why + ".");
        }
        List<Double> factors = new ArrayList<>();
        for (double value : values) {
            factors.add(value * scale);
        }
        return new Spectrum(start, step, factors);
    }

    private int smallestStep() {
        int step = Integer.MAX_VALUE;
        int last = -1;
        for (int nm : columns.bands().keySet()) {
            step = last < 0 ? step : Math.min(step, nm - last);
            last = nm;
        }
        return step;
    }

    private String id(TextTables.Row row, int index) {
        return columns.id() >= 0 ? row.cells().get(columns.id()) : String.valueOf(index + 1);
    }

    private static boolean isFractional(double[] codes, double scale) {
        boolean fractional = false;
        for (double code : codes) {
            double scaled = code * scale;
            fractional |= Math.abs(scaled - Math.rint(scaled)) > CODE_SLACK;
        }
        return fractional;
    }

    private Rgb8 rgb8(TextTables.Row row, double[] codes, double scale) throws Problem {
        int[] whole = new int[3];
        for (int i = 0; i < 3; i++) {
            whole[i] = (int) Math.round(codes[i] * scale);
            if (whole[i] < 0 || whole[i] > 255) {
                throw bad(row, columns.rgb().get(i), "is outside 0 to 255");
            }
        }
        return new Rgb8(whole[0], whole[1], whole[2]);
    }

    private Problem bad(TextTables.Row row, int column, String what) {
        return Problem.input(
                name + ", line " + row.line(),
                "'"
                        + row.cells().get(column)
                        + "' in column "
                        + table.fields().get(column)
                        + " "
                        + what
                        + ".");
    }

    private static double max(List<double[]> rows) {
        double max = 0;
        for (double[] row : rows) {
            for (double value : row) {
                max = Math.max(max, value);
            }
        }
        return max;
    }
}
